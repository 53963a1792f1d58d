/** Which parts can be sawn from which blocks, each alone; and why one can not. */
import { emptyFace, hasRoom } from './fill.js';
import type { Block, NestObstacle, NestPart, NestRules } from './nest.js';
import type { ShapeSet } from './nofit.js';
import { SAME_MM } from './room.js';
import { isThick, layersUnderGuide } from './stack.js';

/** What a part's outline measures, and what a face offers between its margins. */
const sizeOf = (set: ShapeSet, part: number): { lengthMm: number; heightMm: number } => {
  const [minX, minY, maxX, maxY] = set.shapes[2 * part].box;
  return { lengthMm: maxX - minX, heightMm: maxY - minY };
};
/** Negative where the margins meet. */
export const clearOf = ({
  lengthMm,
  widthMm,
  marginMm,
}: Pick<Block, 'lengthMm' | 'widthMm' | 'marginMm'>): {
  readonly clearLengthMm: number;
  readonly clearWidthMm: number;
} => ({
  clearLengthMm: lengthMm - 2 * marginMm,
  clearWidthMm: widthMm - 2 * marginMm,
});

/** By how much a part is larger than a block's clear face, mm; not above 0 if it fits by size. */
function excessMm(set: ShapeSet, part: number, block: Block): number {
  const size = sizeOf(set, part);
  const clear = clearOf(block);
  return Math.max(size.lengthMm - clear.clearLengthMm, size.heightMm - clear.clearWidthMm);
}

/** True if the part has the block's thickness and fits its face by size, knots left aside. */
export const fitsBySize = (set: ShapeSet, part: NestPart, index: number, block: Block): boolean =>
  isThick(part.thicknessMm, block) && excessMm(set, index, block) <= SAME_MM;

/** Why parts can be sawn from none of the blocks, and which blocks can not be sawn at all. */
export function fitObstacles(
  set: ShapeSet,
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
): NestObstacle[] {
  const tooHigh = blocks.filter((b) => layersUnderGuide(b.thicknessMm, rules) < 1);
  return [
    ...tooHigh.map(
      (b): NestObstacle => ({
        kind: 'too-high',
        block: b.name,
        thicknessMm: b.thicknessMm,
        largestHeightMm: rules.largestHeightMm,
      }),
    ),
    ...parts.map((part, i) => partObstacle(set, part, i, blocks)).filter((o) => o !== null),
  ];
}

function partObstacle(
  set: ShapeSet,
  part: NestPart,
  index: number,
  blocks: readonly Block[],
): NestObstacle | null {
  const thick = blocks.filter((b) => isThick(part.thicknessMm, b));
  if (thick.length === 0) {
    return { kind: 'no-thickness', part: part.id, thicknessMm: part.thicknessMm };
  }
  const large = thick.filter((b) => fitsBySize(set, part, index, b));
  if (large.length === 0) {
    const nearest = thick.reduce((a, b) =>
      excessMm(set, index, b) < excessMm(set, index, a) ? b : a,
    );
    return {
      kind: 'too-large',
      part: part.id,
      ...sizeOf(set, index),
      block: nearest.name,
      ...clearOf(nearest),
    };
  }
  const open = large.some((b) => {
    const face = emptyFace(b, set);
    return hasRoom(face, 2 * index) || hasRoom(face, 2 * index + 1);
  });
  return open ? null : { kind: 'knots', part: part.id, blocks: large.map((b) => b.name) };
}
