/** What a nest may be asked for: whoever reads files has seen to it, so anything else is our fault. */
import { Fault } from '../problem.js';
import type { Block, NestPart, NestRules } from './nest.js';

/**
 * @throws Fault on a name given twice, and on a number no order can have: a gap or margin below 0
 * (which would let outlines overlap or leave the block), a size or knot of nothing, a count that is not whole.
 */
export function assertAsked(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
): void {
  assertUnique(
    'parts of one id',
    parts.map((p) => p.id),
  );
  assertUnique(
    'blocks of one name',
    blocks.map((b) => b.name),
  );
  const { gapMm, layers, tapeThicknessMm, largestHeightMm, tries } = rules;
  assertAll(isMeasure, { gapMm, tapeThicknessMm, tries });
  assertAll(isSize, { largestHeightMm });
  assertAll(isCount, { layers });
  if (layers < 1) throw new Fault('a stack of no layers');
  for (const { thicknessMm, orderedCount } of parts) {
    assertAll(isSize, { thicknessMm });
    assertAll(isCount, { orderedCount });
  }
  for (const { lengthMm, widthMm, thicknessMm, marginMm, count, knots } of blocks) {
    assertAll(isSize, { lengthMm, widthMm, thicknessMm });
    assertAll(isMeasure, { marginMm });
    assertAll(isCount, { count });
    for (const { xMm, yMm, radiusMm } of knots) {
      assertAll(Number.isFinite, { xMm, yMm });
      assertAll(isSize, { radiusMm });
    }
  }
}

const isMeasure = (value: number): boolean => value >= 0 && value < Infinity;
const isSize = (value: number): boolean => value > 0 && value < Infinity;
const isCount = (value: number): boolean => Number.isSafeInteger(value) && value >= 0;

function assertAll(
  isRight: (value: number) => boolean,
  numbers: Readonly<Record<string, number>>,
): void {
  for (const [name, value] of Object.entries(numbers)) {
    if (!isRight(value)) throw new Fault(`a nest with ${name} ${value}`);
  }
}

function assertUnique(what: string, names: readonly string[]): void {
  if (new Set(names).size < names.length) throw new Fault(`two ${what}`);
}
