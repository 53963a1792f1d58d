/** The sawn edge of a blank unrolled: along the back and along the belly, from nose to tail. */
import {
  type ArcPath,
  arcOf,
  partOf,
  pointOn,
  type Segment,
  segmentLength,
  segmentsOf,
} from '../geometry/arcpath.js';
import { type Point2, quarterLeft, sub, times, unit } from '../geometry/vec.js';
import { Fault } from '../problem.js';

export type Side = 'back' | 'belly';

/** From nose to tail, with the length of the edge before each segment. */
export type Edge = {
  readonly side: Side;
  readonly lengthMm: number;
  readonly segments: readonly { readonly segment: Segment; readonly beforeMm: number }[];
};

/** Nose and tail are where the outline crosses the datum line. */
export function edgesOf(outline: ArcPath): Readonly<Record<Side, Edge>> {
  const segments = segmentsOf(outline).flatMap(splitAtDatum);
  const n = segments.length;
  const nose = segments.findIndex((s, i) => isUnder(s) && !isUnder(segments[(i + n - 1) % n]));
  const turned = [...segments.slice(nose), ...segments.slice(0, nose)];
  const count = turned.findIndex((s) => !isUnder(s));
  if (nose < 0 || count < 0) throw new Fault('outline beside the datum line');
  const back = turned
    .slice(count)
    .reverse()
    .map(({ from, to, bulge }): Segment => ({ from: to, to: from, bulge: 0 - bulge }));
  return { belly: edgeOf('belly', turned.slice(0, count)), back: edgeOf('back', back) };
}

const isUnder = (s: Segment): boolean => s.from[1] + s.to[1] < 0;

const HALVINGS = 40;

function splitAtDatum(s: Segment): Segment[] {
  if (s.from[1] * s.to[1] >= 0) return [s];
  let [a, b] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (a + b) / 2;
    if (pointOn(s, middle)[1] * s.from[1] > 0) a = middle;
    else b = middle;
  }
  const at: Point2 = [pointOn(s, a)[0], 0];
  return [partOf(s, s.from, at), partOf(s, at, s.to)];
}

function edgeOf(side: Side, segments: readonly Segment[]): Edge {
  let lengthMm = 0;
  const measured = segments.map((segment) => {
    const beforeMm = lengthMm;
    lengthMm += segmentLength(segment);
    return { segment, beforeMm };
  });
  return { side, lengthMm, segments: measured };
}

/** The point so far along the edge, and the unit normal into the wood. */
export function placeOn(
  { side, segments }: Edge,
  alongMm: number,
): { readonly point: Point2; readonly inward: Point2 } {
  const after = segments.findIndex((s) => s.beforeMm > alongMm);
  const { segment, beforeMm } = segments[after < 0 ? segments.length - 1 : Math.max(0, after - 1)];
  const share = Math.min(1, (alongMm - beforeMm) / segmentLength(segment));
  const point = pointOn(segment, share);
  const left = quarterLeft(directionAt(segment, point));
  return { point, inward: side === 'belly' ? left : times(left, -1) };
}

function directionAt(s: Segment, at: Point2): Point2 {
  if (s.bulge === 0) return unit(sub(s.to, s.from));
  const { center, radius } = arcOf(s);
  return times(quarterLeft(sub(at, center)), Math.sign(s.bulge) / radius);
}

/** How far along the edge its station is first reached from the nose. */
export function alongAt(edge: Edge, stationMm: number): number {
  const found = edge.segments.find(({ segment }) => segment.to[0] >= stationMm);
  if (!found) return edge.lengthMm;
  let [a, b] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (a + b) / 2;
    if (pointOn(found.segment, middle)[0] < stationMm) a = middle;
    else b = middle;
  }
  return found.beforeMm + a * segmentLength(found.segment);
}
