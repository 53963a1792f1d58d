/** The lines of a picture: what is seen of the edges that are drawn. */
import { distance, type Point2, type Point3 } from '../geometry/vec.js';
import { mixed3 } from '../geometry/vec3.js';
import type { Depths } from './depth.js';
import { type EdgeKind, featureEdges } from './edges.js';
import { hiddenBy, type IsHidden } from './hidden.js';
import { joined, type Piece } from './join.js';
import type { Seen } from './model.js';
import { seamPieces } from './seams.js';
import { isShallow } from './shallow.js';
import { asSeen } from './view.js';

/** `seam`: where one body goes into another. */
export type LineKind = EdgeKind | 'seam' | 'ghost' | 'way';

/** In mm of the scene, right and up as seen. */
export type SeenLine = { readonly kind: LineKind; readonly points: readonly Point2[] };

/** Seen pieces shorter than this many samples are not seen: the grid cannot tell them from a corner grazed. */
const LEAST_SAMPLES = 1.5;

export function linesOf(seen: Seen, depths: Depths): SeenLine[] {
  const isHidden = hiddenBy(seen, depths);
  const { pitch } = depths.grid;
  const kinds: Record<LineKind, Piece[]> = {
    outline: [],
    crease: [],
    seam: seamPieces(seen, depths),
    ghost: [],
    way: [],
  };
  for (const { kind, isGhost, ends, facets } of featureEdges(seen)) {
    const [from, to] = ends.map((v) => cornerOf(seen, v));
    const runs = seenRuns(from, to, facets, isHidden, pitch);
    const pieces = runs.map(
      ([start, end]): Piece => ({
        from: flat(mixed3(from, to, start)),
        to: flat(mixed3(from, to, end)),
        fromKey: start === 0 ? ends[0] : null,
        toKey: end === 1 ? ends[1] : null,
      }),
    );
    for (const [i, piece] of pieces.entries()) {
      const middle = mixed3(from, to, (runs[i][0] + runs[i][1]) / 2);
      const isInner =
        kind === 'outline' && !isGhost && isShallow(seen, depths, piece, middle, facets);
      kinds[isGhost ? 'ghost' : isInner ? 'crease' : kind].push(piece);
    }
  }
  for (const { from, to } of seen.ways) {
    const [a, b] = [asSeen(seen.axes, from), asSeen(seen.axes, to)];
    for (const [start, end] of seenRuns(a, b, NO_FACETS, isHidden, pitch))
      kinds.way.push({
        from: flat(mixed3(a, b, start)),
        to: flat(mixed3(a, b, end)),
        fromKey: null,
        toKey: null,
      });
  }
  return (['ghost', 'crease', 'seam', 'outline', 'way'] as const).flatMap((kind) =>
    joined(kinds[kind], pitch / 4)
      .filter((points) => kind !== 'seam' || lengthOf(points) > LEAST_SEAM_SAMPLES * pitch)
      .map((points) => ({ kind, points })),
  );
}

/** Shorter seams are where samples fell beside an edge. */
const LEAST_SEAM_SAMPLES = 6;

const lengthOf = (points: readonly Point2[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + distance(points[i], p), 0);

const NO_FACETS = [-1, -1] as const;

const cornerOf = ({ corners }: Seen, v: number): Point3 => [
  corners[3 * v],
  corners[3 * v + 1],
  corners[3 * v + 2],
];

const flat = ([x, y]: Point3): Point2 => [x, y];

/** Shares of the way between two points that are seen, from 0 to 1. */
function seenRuns(
  from: Point3,
  to: Point3,
  facets: readonly [number, number],
  isHidden: IsHidden,
  pitch: number,
): (readonly [number, number])[] {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const steps = Math.max(2, Math.ceil(lengthMm / pitch));
  const hides = (t: number) => {
    const [x, y, z] = mixed3(from, to, t);
    return isHidden(x, y, z, facets);
  };
  // At its ends an edge touches others, so that it is looked at just inside them.
  const at = (i: number) => Math.min(1 - 0.25 / steps, Math.max(0.25 / steps, i / steps));
  const runs: [number, number][] = [];
  let start: number | null = hides(at(0)) ? null : 0;
  for (let i = 1; i <= steps; i++) {
    const isNow = !hides(at(i));
    if (isNow === (start !== null)) continue;
    const turn = turnBetween(hides, at(i - 1), at(i));
    if (isNow) start = turn;
    else if (start !== null) {
      runs.push([start, turn]);
      start = null;
    }
  }
  if (start !== null) runs.push([start, 1]);
  const isWhole = runs.length === 1 && runs[0][0] === 0 && runs[0][1] === 1;
  return isWhole ? runs : runs.filter(([a, b]) => (b - a) * lengthMm > LEAST_SAMPLES * pitch);
}

/** Where seen and hidden meet, to a sixteenth of a sample. */
function turnBetween(hides: (t: number) => boolean, a: number, b: number): number {
  const first = hides(a);
  let [low, high] = [a, b];
  for (let k = 0; k < 4; k++) {
    const middle = (low + high) / 2;
    if (hides(middle) === first) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
