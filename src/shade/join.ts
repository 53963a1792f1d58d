/** Pieces of edges → polylines, so that a pen goes on where a line goes on. */
import { distanceToPiece, dot, type Point2, sub, unit } from '../geometry/vec.js';

/** A straight piece; a key is the vertex it ends in, null where it ends between vertices. */
export type Piece = {
  readonly from: Point2;
  readonly to: Point2;
  readonly fromKey: number | null;
  readonly toKey: number | null;
};

/** Lines that turn more sharply than this at a vertex are two lines. */
const GOES_ON_COS = 0.5;

/** Polylines through the pieces, each in one; points that lie within `tolerance` of the line without them are left out. */
export function joined(pieces: readonly Piece[], tolerance: number): (readonly Point2[])[] {
  const next = continuations(pieces);
  const isUsed = new Uint8Array(pieces.length);
  // Open lines from their ends first; what is left goes round.
  const ends = pieces.flatMap((_, i) => [2 * i, 2 * i + 1]).filter((end) => next[end] < 0);
  const starts = [...ends, ...pieces.map((_, i) => 2 * i)];
  return starts.flatMap((start) =>
    isUsed[start >> 1] ? [] : [thinned(walked(pieces, next, start, isUsed), tolerance)],
  );
}

/** End 2i is piece i's `from`, 2i + 1 its `to`; for each end the end of another piece that goes on there, or −1. */
function continuations(pieces: readonly Piece[]): Int32Array {
  const next = new Int32Array(2 * pieces.length).fill(-1);
  const meeting = new Map<number, number[]>();
  pieces.forEach(({ fromKey, toKey }, i) => {
    for (const [key, end] of [
      [fromKey, 2 * i],
      [toKey, 2 * i + 1],
    ] as const) {
      if (key === null) continue;
      const there = meeting.get(key);
      if (there) there.push(end);
      else meeting.set(key, [end]);
    }
  });
  for (const there of meeting.values()) {
    const pairs = there.flatMap((a, i) =>
      there.slice(i + 1).map((b) => ({ a, b, cos: -dot(wayFrom(pieces, a), wayFrom(pieces, b)) })),
    );
    for (const { a, b, cos } of pairs.sort((p, q) => q.cos - p.cos)) {
      if (!(cos > GOES_ON_COS) || next[a] >= 0 || next[b] >= 0) continue;
      next[a] = b;
      next[b] = a;
    }
  }
  return next;
}

/** Direction from an end into its piece; a piece seen end-on has none (NaN) and goes on nowhere. */
const wayFrom = (pieces: readonly Piece[], end: number): Point2 => {
  const { from, to } = pieces[end >> 1];
  return unit(end & 1 ? sub(from, to) : sub(to, from));
};

function walked(
  pieces: readonly Piece[],
  next: Int32Array,
  start: number,
  isUsed: Uint8Array,
): Point2[] {
  const at = (end: number) => (end & 1 ? pieces[end >> 1].to : pieces[end >> 1].from);
  const points = [at(start)];
  for (let end = start; end >= 0 && !isUsed[end >> 1]; end = next[end ^ 1]) {
    isUsed[end >> 1] = 1;
    points.push(at(end ^ 1));
  }
  return points;
}

/** The line through fewer of its points (D. Douglas and T. Peucker, 1973). */
function thinned(points: readonly Point2[], tolerance: number): readonly Point2[] {
  const keep = new Uint8Array(points.length);
  keep[0] = keep[points.length - 1] = 1;
  const open: (readonly [number, number])[] = [[0, points.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [a, b] = span;
    let [most, far] = [tolerance, -1];
    for (let i = a + 1; i < b; i++) {
      const off = distanceToPiece(points[i], points[a], points[b]);
      if (off > most) [most, far] = [off, i];
    }
    if (far < 0) continue;
    keep[far] = 1;
    open.push([a, far], [far, b]);
  }
  return points.filter((_, i) => keep[i]);
}
