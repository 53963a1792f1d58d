/** What a nest may be asked for: whoever reads files has seen to it, so anything else is our fault. */
import { asRegion, union } from '../geometry/clip.js';
import { areaOf, ringArea } from '../geometry/ring.js';
import { distance } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import type { Block, NestPart, NestRules } from './nest.js';

/**
 * @throws Fault on a name given twice, and on a number no order can have: a gap or margin below 0
 * (which would let outlines overlap or leave the block), a size or knot of nothing, a count that is not whole;
 * and on an outline that covers no area or crosses itself in a corner, which a ring alone does not show.
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
  for (const part of parts) {
    const { thicknessMm, orderedCount } = part;
    assertAll(isSize, { thicknessMm });
    assertAll(isCount, { orderedCount });
    assertOutline(part);
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

/** Clipping keeps coordinates to this, mm. */
const PRECISION_MM = 1e-6;

/** What an outline encloses once is its area; lobes wound the other way, or twice, tell of a crossing. */
function assertOutline({ id, outline }: NestPart): void {
  const coveredMm2 = areaOf(union([asRegion(outline)]));
  const perimeterMm = outline.reduce(
    (sum, p, i) => sum + distance(p, outline[(i + 1) % outline.length]),
    0,
  );
  const sameMm2 = PRECISION_MM * perimeterMm;
  if (coveredMm2 <= sameMm2) throw new Fault(`the outline of ${id} covers no area`);
  if (Math.abs(coveredMm2 - ringArea(outline)) > sameMm2)
    throw new Fault(`the outline of ${id} crosses itself`);
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
