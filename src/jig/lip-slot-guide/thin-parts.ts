/** Feather edges and thin walls that a seat and a saw slot leave between them: too weak to be printed, so they are left out. */
import { offset, subtract } from '../../geometry/clip.js';
import type { Region } from '../../geometry/ring.js';
import { thinned } from '../../geometry/thin.js';
import {
  cross,
  distance,
  distanceToPiece,
  dot,
  mix,
  type Point2,
  sub,
  unit,
} from '../../geometry/vec.js';

/** Sides that face away from each other within this make a wall; else it is an edge. */
const OPPOSITE = Math.cos((16 * Math.PI) / 180);
const SLACK_MM = 0.02; // chords of the round ends that stay
const OVER_MM = 0.05; // a part is left out with so much more all round, so that no skin stays
const ON_EDGE = 1e-3; // mm
const LEAST_EDGE = 0.03; // mm: a shorter piece of outline is not looked at

/**
 * The parts of a section thinner than `leastMm` between sides that run nearly alongside: what a disc
 * of that diameter cannot reach (an opening, in the words of mathematical morphology; J. Serra,
 * 1982), without the corners that any outline has.
 */
export function thinParts(section: readonly Region[], leastMm: number): Region[] {
  // A wall of just this thickness is no thin one.
  const enough = leastMm - SLACK_MM;
  const reached = offset(offset(section, -enough / 2), enough / 2 + SLACK_MM);
  const edges = section.flatMap(edgesOf);
  return subtract(section, reached)
    .filter((part) => edgesOf(part).some((e) => bounds(e, edges) && facesWall(e, edges, enough)))
    .flatMap((part) => offset([part], OVER_MM))
    .map(({ outer, holes }) => ({ outer: thinned(outer, SLACK_MM), holes }));
}

type Edge = readonly [Point2, Point2];

/** Edges with the material on their left. */
const edgesOf = ({ outer, holes }: Region): Edge[] =>
  [outer, ...holes.map((hole) => [...hole].reverse())].flatMap((loop) =>
    loop.map((a, i): Edge => [a, loop[(i + 1) % loop.length]]),
  );

/** True if the edge of a part is long enough and part of an edge of the section. */
function bounds([a, b]: Edge, edges: readonly Edge[]): boolean {
  if (distance(a, b) < LEAST_EDGE) return false;
  const middle = mix(a, b, 0.5);
  return edges.some(
    ([p, q]) =>
      distanceToPiece(middle, p, q) < ON_EDGE && dot(unit(sub(b, a)), unit(sub(q, p))) > OPPOSITE,
  );
}

/** Straight in from the middle of an edge, the section's nearest edge faces away. */
function facesWall([a, b]: Edge, edges: readonly Edge[], leastMm: number): boolean {
  const along = unit(sub(b, a));
  const inward: Point2 = [-along[1], along[0]];
  const start = mix(a, b, 0.5);
  let nearest = leastMm;
  let faces = false;
  for (const [p, q] of edges) {
    const way = sub(q, p);
    const turn = cross(inward, way);
    if (turn <= 0) continue;
    const far = cross(sub(p, start), way) / turn;
    const share = cross(sub(p, start), inward) / turn;
    if (far < ON_EDGE || far >= nearest || share < 0 || share > 1) continue;
    nearest = far;
    faces = dot(unit(way), along) < -OPPOSITE;
  }
  return faces;
}
