/** A nest in words: the block of a face, the timber it takes, what is left of it. */
import { trimmed } from '../formats/number.js';
import type { Nest, NestFace } from '../nest/nest.js';

/** Columns of a table of faces, and what stands in them. */
export const FACE_COLUMNS = ['face', 'block', 'outlines', 'layers', 'stacks', 'blanks'] as const;

export const faceCells = (face: NestFace): string[] => [
  String(face.id),
  blockWords(face),
  String(face.placements.length),
  String(face.layers),
  String(face.copies),
  String(blanksOf(face)),
];

/** Size of a face's blocks and the piles they are taken from. */
function blockWords({ lengthMm, widthMm, thicknessMm, stacks }: NestFace): string {
  const piles = new Set(stacks.flatMap((s) => s.blocks.map((b) => b.block)));
  return `${size([lengthMm, widthMm, thicknessMm])}, ${[...piles].join(' and ')}`;
}

const size = (sides: readonly number[]): string =>
  `${sides.map((v) => trimmed(v, 1)).join(' × ')} mm`;

export const blanksOf = ({ placements, layers, copies }: NestFace): number =>
  placements.length * layers * copies;

/** Timber used, the least there is to be known of, how far the plan is from it, and how the search ended. */
export function timberWords(nest: Nest): string {
  const { timberUsedMm3, timberBoundMm3, timberBoundKind, timberAreaBoundMm3 } = nest;
  const liters = (mm3: number): string => `${trimmed(mm3 / 1e6, 2)} l`;
  const least = (boundMm3: number): string => {
    const below = (100 * (timberUsedMm3 - boundMm3)) / Math.max(timberUsedMm3, 1);
    return below < 0.05
      ? 'no less'
      : `no less than ${liters(boundMm3)}, ${trimmed(below, 1)} % below`;
  };
  const found =
    timberBoundKind === 'every-plan'
      ? []
      : [`with the face layouts that were found, ${least(timberBoundMm3)} is possible`];
  const bound = [...found, `with any layouts, ${least(timberAreaBoundMm3)}`].join('; ');
  const ended = nest.interrupted
    ? ' The search was stopped early; this is the best it had.'
    : nest.limitReached
      ? ' The search ended at its limit; --seconds gives it longer.'
      : '';
  return `Timber: ${liters(timberUsedMm3)} in whole blocks; ${bound}.${ended}`;
}

/** Offcuts in which the shortest blank would still find its length. */
export function offcutWords({ faces }: Nest, shortestMm: number): string {
  const kept = faces.filter(({ offcut, marginMm }) => offcut.lengthMm - marginMm >= shortestMm);
  if (kept.length === 0) return 'Offcuts: none is as long as the shortest blank.';
  const each = kept.map(
    ({ id, offcut, widthMm, thicknessMm, layers, copies }) =>
      `${layers * copies} of ${size([offcut.lengthMm, widthMm, thicknessMm])} from face ${id}`,
  );
  return `Offcuts kept whole, as long as a blank: ${each.join('; ')}.`;
}
