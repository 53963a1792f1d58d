/** Lines to draw on a blank: datum line, hangers, ballast holes, lip slot. Frame of the blank, mm. */
import type { BallastHole, Blank } from '../blank/blank.js';
import { fromUpright, uprightMouth } from '../blank/hole.js';
import { type LipSlot, slotView } from '../blank/slot.js';
import { circleRing, type Ring } from '../geometry/ring.js';
import { boxOf, type Point2, turned } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { type Part, partsInside } from './parts.js';

/** What marks are kept inside of, and out of: the wood of a blank or the sheet of a template. */
export type Wood = {
  readonly outline: Ring;
  readonly openings: readonly (readonly Point2[])[];
};

/** A round opening as a polygon outside the circle; 64 sides are within 0.12 % of its radius. */
export const roundOpening = (center: Point2, radius: number): readonly Point2[] =>
  circleRing(center, radius, { segments: 64, circumscribed: true });

/**
 * The wood that marks are kept to, and the lines of a lip slot that the cuts do not go round. Marks
 * stop at such a slot, as they would once it is sawn.
 */
export function woodOf(
  blank: Blank,
  slotIsCut: boolean,
  openings: Wood['openings'] = [],
): { readonly wood: Wood; readonly slotLines: readonly Part[] } {
  if (slotIsCut || !blank.slot) {
    const outline = slotIsCut ? blank.outlineRing : blank.profileRing;
    return { wood: { outline, openings }, slotLines: [] };
  }
  const outline = blank.profileRing;
  return {
    wood: { outline, openings: [...openings, slotPolygon(blank.slot)] },
    slotLines: slotMarks(blank.slot, { outline, openings }),
  };
}

/** The datum line from nose to tail, broken where there is no wood. */
export function datumLine({ outline, openings }: Wood): Part[] {
  const [left, , right] = boxOf(outline);
  return partsInside(
    [
      [left, 0],
      [right, 0],
    ],
    outline,
    openings,
  );
}

/** Length of a hanger mark, mm. */
const HANGER_MARK_MM = 4;

/** A short line from the belly edge up at each hanger's station. */
export const hangerMarks = (blank: Blank, wood: Wood): Part[] =>
  blank.hangers.flatMap(({ stationMm }) => fromBelly(stationMm, HANGER_MARK_MM, wood));

/**
 * The side view of a hole drilled from the belly: its axis, its two walls and its end, so that the
 * bit can be laid against the mark.
 */
export function holeMarks(hole: BallastHole, wood: Wood): Part[] {
  const [place, mouth] = uprightMouth(hole);
  const [left, right, end] = [
    place - hole.diameterMm / 2,
    place + hole.diameterMm / 2,
    mouth + hole.depthMm,
  ];
  const [, bottom] = boxOf(wood.outline.map((p) => turned(p, hole.tiltDeg)));
  const below = bottom - 1;
  const lines: Part[] = [left, place, right].map((x) => [
    [x, below],
    [x, end],
  ]);
  const floor: Part = [
    [left, end],
    [right, end],
  ];
  return [...lines, floor]
    .map(([from, to]): Part => [fromUpright(hole, from), fromUpright(hole, to)])
    .flatMap((line) => partsInside(line, wood.outline, wood.openings));
}

/** Both walls and the inner end of a lip slot that is still to be sawn. */
function slotMarks(slot: LipSlot, { outline, openings }: Wood): Part[] {
  const [right, left, leftOut, rightOut] = slotPolygon(slot);
  const walls = [
    [right, rightOut],
    [left, leftOut],
  ] as const;
  return [
    // Only the part that starts at the inner end: a long line might enter the wood again.
    ...walls.flatMap((wall) => partsInside(wall, outline, openings).slice(0, 1)),
    ...partsInside([right, left], outline, openings),
  ];
}

/** The slot as a polygon, drawn out beyond its mouth by its own depth so that it leaves the wood. */
export const slotPolygon = (slot: LipSlot) => slotView(slot, 2 * slot.depthMm);

/** A line straight up from the lowest edge of the wood at a station. */
function fromBelly(stationMm: number, lengthMm: number, wood: Wood): Part[] {
  const [, bottom, , top] = boxOf(wood.outline);
  const upright = partsInside(
    [
      [stationMm, bottom - 1],
      [stationMm, top + 1],
    ],
    wood.outline,
    wood.openings,
  );
  if (upright.length === 0) throw new Fault(`no wood at station ${stationMm}`);
  const [[x, belly], [, upper]] = upright[0];
  return [
    [
      [x, belly],
      [x, Math.min(upper, belly + lengthMm)],
    ],
  ];
}
