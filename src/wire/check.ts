/** Judges a bent wire by points along its center line alone, as one would who lays it on paper. */
import { pathPoints } from '../geometry/arcpath.js';
import { cross, distance, distanceToPiece, dot, type Point2, sub } from '../geometry/vec.js';
import type { BentWire } from './bent.js';

// How near the points' chords keep to the arcs, in diameters: for what turns, and for what comes near.
const [CHORD, COARSE] = [1e-5, 5e-4];
const SHARE = 1e-3; // what lengths, radii and clearances may differ by

/**
 * What is wrong with it; empty when nothing is. Its points must add up to its length, turn nowhere
 * tighter than its bends may, and keep a wire's breadth from each other but where an eye at an end
 * crosses itself.
 */
export function checkBentWire(wire: BentWire): string[] {
  const { spec, bendRadiusMm } = wire;
  const points = pathPoints(wire.path, CHORD * spec.diameterMm);
  const wound = wire.twists.reduce((sum, t) => sum + t.lengthMm, 0);
  const along = points.slice(1).reduce((sum, p, i) => sum + distance(points[i], p), 0);
  const widest = Math.max(bendRadiusMm, wire.loopRadiusMm);
  const tightest = tightestMm(points, 2 * Math.sqrt(2 * CHORD * spec.diameterMm * widest));
  const nearest = nearestMm(wire);
  return [
    ...(Math.abs(along + wound - wire.lengthMm) <= SHARE * wire.lengthMm
      ? []
      : [`wire: ${along + wound} mm along its points, ${wire.lengthMm} mm told`]),
    ...(tightest >= bendRadiusMm * (1 - SHARE)
      ? []
      : [`wire: bent to ${tightest} mm, ${bendRadiusMm} mm asked`]),
    ...(nearest >= spec.diameterMm * (1 - SHARE)
      ? []
      : [`wire: passes itself at ${nearest} mm between center lines`]),
  ];
}

/**
 * Least radius at any corner of the polyline: half its two neighbors over the turn, of a straight
 * neighbor no more than a chord of the widest arc. Where arcs and straight lengths join tangent none
 * comes out below its own radius; a corner of half a degree does.
 */
function tightestMm(points: readonly Point2[], chordMm: number): number {
  let least = Infinity;
  for (let i = 1; i < points.length - 1; i++) {
    const [u, w] = [sub(points[i], points[i - 1]), sub(points[i + 1], points[i])];
    const turn = Math.abs(Math.atan2(cross(u, w), dot(u, w)));
    const [before, after] = [u, w].map((v) => Math.min(Math.hypot(...v), chordMm));
    if (turn > 1e-7) least = Math.min(least, (before + after) / 2 / turn);
  }
  return least;
}

/**
 * Least way between straight bits of the wire that lie further apart along it than across it; not
 * within an eye at an end. Bits that cross are no way apart.
 */
function nearestMm({ pieces, spec, bendRadiusMm }: BentWire): number {
  const bits: Bit[] = [];
  let along = 0;
  for (const piece of pieces) {
    const path = { closed: false, vertices: verticesOf(piece) };
    const end = piece.eye === 'tow' || piece.eye === 'tail' ? piece.eye : null;
    const points = pathPoints(path, COARSE * spec.diameterMm);
    points.slice(1).forEach((to, i) => {
      const start = along;
      along += distance(points[i], to);
      bits.push({ from: points[i], to, start, stop: along, end });
    });
  }
  // Half round a bend, its ends are two radii apart.
  const apart = Math.PI * bendRadiusMm;
  let least = Infinity;
  for (let i = 0; i < bits.length; i++) {
    for (let j = bits.length - 1; j > i && bits[j].start - bits[i].stop >= apart; j--) {
      const [a, b] = [bits[i], bits[j]];
      if (a.end !== null && a.end === b.end) continue;
      const reach = a.stop - a.start + (b.stop - b.start) + least;
      const far = [0, 1].some((k) => Math.abs(a.from[k] - b.from[k]) > reach);
      if (!far) least = Math.min(least, between(a, b));
    }
  }
  return least;
}

type Bit = {
  readonly from: Point2;
  readonly to: Point2;
  /** Along the wire. */
  readonly start: number;
  readonly stop: number;
  /** The eye at an end that it belongs to. */
  readonly end: 'tow' | 'tail' | null;
};

function between(a: Bit, b: Bit): number {
  const side = (p: Point2, { from, to }: Bit) => Math.sign(cross(sub(to, from), sub(p, from)));
  const crosses = side(a.from, b) * side(a.to, b) < 0 && side(b.from, a) * side(b.to, a) < 0;
  if (crosses) return 0;
  return Math.min(
    distanceToPiece(a.from, b.from, b.to),
    distanceToPiece(a.to, b.from, b.to),
    distanceToPiece(b.from, a.from, a.to),
    distanceToPiece(b.to, a.from, a.to),
  );
}

const verticesOf = ({ from, to, bulge }: BentWire['pieces'][number]) => [
  { x: from[0], y: from[1], bulge },
  { x: to[0], y: to[1], bulge: 0 },
];
