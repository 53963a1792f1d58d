/** Equal outlines on a rectangle: as many as rows along it, rows across it, or a lattice give. */
import { ringArea } from '../geometry/ring.js';
import { add, type Box, cross, type Point2, sub, times } from '../geometry/vec.js';
import { goodLattices } from './densest.js';
import type { DoubleLattice, LatticeCopy } from './double.js';
import { exchanged, type Grown, type RowFrame, rowFrame } from './frame.js';
import { fittingPeriods } from './period.js';
import { lowestStack, stackedCopies } from './rows.js';
import { asCopy, extentOf } from './strip.js';

/** A clear rectangle from (0, 0): true outlines stay inside it, and where `isFree` says so. */
export type ClearFace = {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly isFree?: (copy: LatticeCopy) => boolean;
};

export type FaceLayout = {
  readonly copies: readonly LatticeCopy[];
  /** Where the last outline ends along x. */
  readonly usedLengthMm: number;
};

/** Lattices laid on a face at most, and shifts of each along both sides of its cell. */
const LATTICES = 32;
const SHIFTS = 6;
/** Steps and lengths (mm) that agree to this are equal: a copy may touch the edge. */
const SAME_MM = 1e-9;

/**
 * Layouts of as many copies as may be, most first; of equal counts those that end first along x. At
 * most `most` of them; none if the outline does not fit. Copies keep the gap grown into `grown`. The
 * outline's good lattices may be given where many faces are laid.
 */
export function latticeLayouts(
  shape: Grown,
  face: ClearFace,
  {
    most = 6,
    lattices = goodLattices(shape.grown),
  }: { readonly most?: number; readonly lattices?: readonly DoubleLattice[] } = {},
): FaceLayout[] {
  const frames = [rowFrame(shape), rowFrame(exchanged(shape))] as const;
  const [boxes] = frames.map((f) => f.boxes);
  const isFree = face.isFree ?? (() => true);
  const found = [
    ...stacks(frames[0], face.lengthMm, face.widthMm, shape).map((s) =>
      s.map(({ turn, x, y }) => asCopy(turn, x, y)),
    ),
    ...stacks(frames[1], face.widthMm, face.lengthMm, shape).map((s) =>
      s.map(({ turn, x, y }) => asCopy(turn, y, x)),
    ),
    ...lattices.slice(0, LATTICES).flatMap((lattice) => onFace(lattice, boxes, face)),
  ];
  return found
    .flatMap((copies) => [copies, turnedFace(copies, face)])
    .map((copies) => copies.filter(isFree))
    .filter((copies) => copies.length > 0)
    .map((copies) => ({ copies, usedLengthMm: endOf(copies, boxes) }))
    .sort((a, b) => b.copies.length - a.copies.length || a.usedLengthMm - b.usedLengthMm)
    .slice(0, most);
}

/** Stacks of rows of many distances in a rectangle as long as its rows. */
function stacks(frame: RowFrame, rowMm: number, stackMm: number, { outline }: Grown) {
  const count = Math.floor((rowMm * stackMm) / ringArea(outline));
  return fittingPeriods(frame, rowMm).flatMap((periodMm) => {
    const stack = lowestStack(
      frame,
      { lengthMm: rowMm, periodMm },
      { count, mostMm: stackMm, needsAll: false },
    );
    const copies = stack ? stackedCopies(frame, stack) : [];
    return copies.length > 0 && extentOf(frame, copies) <= stackMm + SAME_MM ? [copies] : [];
  });
}

/** The same layout seen from the other side of the bench: the whole face turned by 180°. */
const turnedFace = (copies: readonly LatticeCopy[], face: ClearFace): LatticeCopy[] =>
  copies.map(({ turnDeg, x, y }) => ({
    turnDeg: turnDeg === 0 ? 180 : 0,
    x: face.lengthMm - x,
    y: face.widthMm - y,
  }));

const endOf = (copies: readonly LatticeCopy[], boxes: readonly Box[]): number =>
  Math.max(...copies.map((c) => c.x + boxes[c.turnDeg / 180][2]));

/** A lattice cut to the face at many shifts: at its corners and spread over the cell. */
function onFace(lattice: DoubleLattice, boxes: readonly Box[], face: ClearFace): LatticeCopy[][] {
  const rooms = boxes.map(
    ([minX, minY, maxX, maxY]): Box => [-minX, -minY, face.lengthMm - maxX, face.widthMm - maxY],
  );
  if (rooms.some(([left, bottom, right, top]) => left > right || bottom > top)) return [];
  const corners = rooms.flatMap(([left, bottom, right, top], turn) =>
    [left, right].flatMap((x) =>
      [bottom, top].map((y): Point2 => (turn === 0 ? [x, y] : sub([x, y], lattice.w))),
    ),
  );
  const spread = Array.from({ length: SHIFTS * SHIFTS }, (_, k) =>
    add(times(lattice.u, Math.floor(k / SHIFTS) / SHIFTS), times(lattice.v, (k % SHIFTS) / SHIFTS)),
  );
  return [...corners, ...spread].map((shift) => [
    ...latticePoints(lattice, shift, rooms[0]).map(([x, y]) => asCopy(0, x, y)),
    ...latticePoints(lattice, add(shift, lattice.w), rooms[1]).map(([x, y]) => asCopy(1, x, y)),
  ]);
}

/** Points origin + i·u + j·v in a box. */
function latticePoints({ u, v }: DoubleLattice, origin: Point2, box: Box): Point2[] {
  const corners = [0, 1, 2, 3].map((k) => sub([box[k & 1 ? 2 : 0], box[k & 2 ? 3 : 1]], origin));
  const is = corners.map((c) => cross(c, v) / cross(u, v));
  const js = corners.map((c) => cross(u, c) / cross(u, v));
  const out: Point2[] = [];
  for (let j = Math.ceil(Math.min(...js) - SAME_MM); j <= Math.max(...js) + SAME_MM; j++) {
    for (let i = Math.ceil(Math.min(...is) - SAME_MM); i <= Math.max(...is) + SAME_MM; i++) {
      const [x, y] = add(origin, add(times(u, i), times(v, j)));
      if (x < box[0] - SAME_MM || x > box[2] + SAME_MM) continue;
      if (y >= box[1] - SAME_MM && y <= box[3] + SAME_MM) out.push([x, y]);
    }
  }
  return out;
}
