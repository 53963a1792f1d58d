/**
 * The judge of a plan of cuts. It shares no method with the planning: no grid, no tracks, every
 * piece of every line against every edge of every outline, and pieces told by which lines part
 * their outlines.
 */
import { type Box, boxOf, distance, distanceToPiece, type Point2 } from '../geometry/vec.js';
import type { NestFace } from '../nest/nest.js';
import type { CutPlan } from './cutplan.js';
import type { SawCutter } from './plan.js';

/** What is wrong with a plan, as facts. Indices into the face's placements and the plan's own lists. */
export type CutPlanComplaint =
  /** `cutOrder` does not hold each placement once. */
  | { readonly kind: 'order'; readonly order: readonly number[] }
  | { readonly kind: 'entries'; readonly count: number }
  /** An entry that does not begin on the block's edge (steered) or in the waste (following). */
  | { readonly kind: 'start'; readonly entry: number; readonly offMm: number }
  /** An entry that does not end at its outline. */
  | { readonly kind: 'end'; readonly entry: number; readonly offMm: number }
  /** A line that comes nearer to an outline than half the kerf. */
  | {
      readonly kind: 'near';
      readonly line: 'entry' | 'parting' | 'relief';
      readonly index: number;
      readonly placement: number;
      readonly distanceMm: number;
    }
  | { readonly kind: 'parting'; readonly index: number; readonly what: string }
  /** Pieces that are not what the parting cuts leave. */
  | { readonly kind: 'pieces'; readonly pieces: readonly (readonly number[])[] };

/** Chords, rounding, and the slack the planning keeps. */
const NEAR_MM = 0.01;
const ON_MM = 1e-3;

/** Complaints about a plan of a face whose outlines can all be reached; empty when there are none. */
export function checkCutPlan(
  face: NestFace,
  plan: CutPlan,
  { guidance, kerfMm }: SawCutter,
): CutPlanComplaint[] {
  const outlines = face.placements.map(
    ({ outline }): Traced => ({ points: outline, box: boxOf(outline) }),
  );
  const { cutOrder, entryPaths } = plan;
  const sorted = [...cutOrder].sort((a, b) => a - b);
  const out: CutPlanComplaint[] = [];
  if (sorted.length !== outlines.length || sorted.some((i, k) => i !== k))
    out.push({ kind: 'order', order: cutOrder });
  if (entryPaths.length !== outlines.length)
    return [...out, { kind: 'entries', count: entryPaths.length }];
  const least = kerfMm / 2 - NEAR_MM;
  const near = (
    line: 'entry' | 'parting' | 'relief',
    index: number,
    path: readonly Point2[],
    own: number,
  ) => {
    const pieces = pairs(path);
    outlines.forEach((outline, placement) => {
      if (placement === own) return;
      const distanceMm = lineToOutline(pieces, outline, least);
      if (distanceMm < least) out.push({ kind: 'near', line, index, placement, distanceMm });
    });
  };
  entryPaths.forEach((path, i) => {
    const offMm = path.length < 2 ? Infinity : toEdge(face, path[0]);
    if (guidance === 'steered' ? !(offMm <= ON_MM) : path.length < 2)
      out.push({ kind: 'start', entry: i, offMm });
    if (path.length < 2) return;
    const [from, end] = [path[0], path[path.length - 1]];
    const gapMm = lineToOutline([[end, end]], outlines[i], Infinity);
    // A following tool's contour is half a kerf off; outlines are chords.
    if (
      Math.abs(gapMm - (guidance === 'follows' ? kerfMm / 2 : 0)) >
      (guidance === 'follows' ? 0.03 : ON_MM)
    )
      out.push({ kind: 'end', entry: i, offMm: gapMm });
    if (outlines.some((o) => holds(o, from))) out.push({ kind: 'start', entry: i, offMm: 0 });
    // Of its own outline only the last piece may come nearer.
    if (guidance === 'steered') near('entry', i, path.slice(0, -1), -1);
    near('entry', i, path, i);
  });
  plan.reliefCuts.forEach(({ path, placement }, k) => {
    near('relief', k, path, placement);
    const end = path[path.length - 1];
    const offMm = lineToOutline([[end, end]], outlines[placement], Infinity);
    if (offMm > 0.03 || holds(outlines[placement], path[0]))
      out.push({ kind: 'near', line: 'relief', index: k, placement, distanceMm: offMm });
  });
  for (const [k, path] of plan.partingCuts.entries()) near('parting', k, path, -1);
  return [...out, ...partingFlaws(face, plan), ...pieceFlaws(face, plan)];
}

function partingFlaws(
  { widthMm, lengthMm }: NestFace,
  { partingCuts }: CutPlan,
): CutPlanComplaint[] {
  return partingCuts.flatMap((path, index): CutPlanComplaint[] => {
    const [from, to] = [path[0], path[path.length - 1]];
    const inside = path.every(([x, y]) => x >= 0 && x <= lengthMm && y >= 0 && y <= widthMm);
    const across = from[1] === 0 && to[1] === widthMm && inside;
    const crossing = partingCuts.slice(0, index).some((other) => lineToLine(path, other) === 0);
    return [
      ...(across ? [] : [{ kind: 'parting', index, what: 'not from edge to edge' } as const]),
      ...(crossing ? [{ kind: 'parting', index, what: 'crosses another' } as const] : []),
    ];
  });
}

/** Two outlines lie in one piece when the straight line between a point of each meets every cut an even number of times. */
function pieceFlaws(
  { placements }: NestFace,
  { partingCuts, pieces }: CutPlan,
): CutPlanComplaint[] {
  if (partingCuts.length === 0 && pieces.length === 0) return [];
  const wrong = (): CutPlanComplaint[] => [
    { kind: 'pieces', pieces: pieces.map((p) => p.placements) },
  ];
  const all = pieces.flatMap((p) => p.placements);
  if (pieces.length !== partingCuts.length + 1 || all.length !== placements.length) return wrong();
  const pieceOf = new Map(pieces.flatMap((p, k) => p.placements.map((i) => [i, k] as const)));
  const first = placements[0].outline[0];
  const flaw = placements.some(({ outline }, i) => {
    const parted = partingCuts.some((cut) => meetings([outline[0], first], cut) % 2 === 1);
    return parted !== (pieceOf.get(i) !== pieceOf.get(0));
  });
  return flaw ? wrong() : [];
}

const toEdge = ({ lengthMm, widthMm }: NestFace, [x, y]: Point2): number =>
  x < -ON_MM || y < -ON_MM || x > lengthMm + ON_MM || y > widthMm + ON_MM
    ? Infinity
    : Math.min(Math.abs(x), Math.abs(y), Math.abs(lengthMm - x), Math.abs(widthMm - y));

type Pair = readonly [Point2, Point2];

const pairs = (line: readonly Point2[]): Pair[] => line.slice(1).map((p, i) => [line[i], p]);

/** An outline and the box around it. */
type Traced = { readonly points: readonly Point2[]; readonly box: Box };

/** Distance between a line and an outline if below `limit`, else `limit`; 0 when the line crosses it or lies inside. */
function lineToOutline(line: readonly Pair[], outline: Traced, limit: number): number {
  const { points, box } = outline;
  const diagonal: Pair = [
    [box[0], box[1]],
    [box[2], box[3]],
  ];
  let least = limit;
  for (const piece of line) {
    if (beyond(piece, diagonal, limit)) continue;
    if (
      distance(...piece) > 0 &&
      holds(outline, [(piece[0][0] + piece[1][0]) / 2, (piece[0][1] + piece[1][1]) / 2])
    )
      return 0;
    for (let i = 0; i < points.length; i++) {
      const edge: Pair = [points[i], points[(i + 1) % points.length]];
      if (!beyond(piece, edge, least)) least = Math.min(least, pieceToPiece(piece, edge));
    }
  }
  return least;
}

/** True when the boxes of two pieces lie further apart than a distance, along x or along y. */
const beyond = ([a, b]: Pair, [c, d]: Pair, mm: number): boolean =>
  Math.min(a[0], b[0]) > Math.max(c[0], d[0]) + mm ||
  Math.max(a[0], b[0]) < Math.min(c[0], d[0]) - mm ||
  Math.min(a[1], b[1]) > Math.max(c[1], d[1]) + mm ||
  Math.max(a[1], b[1]) < Math.min(c[1], d[1]) - mm;

const lineToLine = (a: readonly Point2[], b: readonly Point2[]): number =>
  Math.min(...pairs(a).flatMap((p) => pairs(b).map((q) => pieceToPiece(p, q))));

const meetings = (a: readonly Point2[], b: readonly Point2[]): number =>
  pairs(a).reduce((n, p) => n + pairs(b).filter((q) => crosses(p, q)).length, 0);

function pieceToPiece(p: Pair, q: Pair): number {
  if (crosses(p, q)) return 0;
  return Math.min(
    distanceToPiece(p[0], ...q),
    distanceToPiece(p[1], ...q),
    distanceToPiece(q[0], ...p),
    distanceToPiece(q[1], ...p),
  );
}

/** True when each piece has its ends on both sides of the other. */
function crosses([a, b]: Pair, [c, d]: Pair): boolean {
  const side = (p: Point2, q: Point2, r: Point2): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Even-odd rule. */
function holds({ points, box }: Traced, [x, y]: Point2): boolean {
  if (x < box[0] || x > box[2] || y < box[1] || y > box[3]) return false;
  let inside = false;
  for (let i = 0; i < points.length; i++) {
    const [p, q] = [points[i], points[(i + 1) % points.length]];
    if (p[1] > y === q[1] > y) continue;
    const side = (q[0] - p[0]) * (y - p[1]) - (x - p[0]) * (q[1] - p[1]);
    if (side > 0 === q[1] > p[1]) inside = !inside;
  }
  return inside;
}
