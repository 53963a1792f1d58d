/** Where lines and arcs meet: the one door to makerjs, whose path intersections know arcs as arcs. */
import makerjs from 'makerjs';
import { arcOf, type Segment, sweep } from './arcpath.js';
import type { Point2 } from './vec.js';

/**
 * Points two segments have in common, along neither in particular order; ends count (to about
 * 1e-6). Overlapping segments (the same line or circle) give none.
 */
export function meetings(a: Segment, b: Segment): Point2[] {
  const found = makerjs.path.intersection(makerPath(a), makerPath(b), { excludeTangents: false });
  return (found?.intersectionPoints ?? []).map((p): Point2 => [p[0], p[1]]);
}

function makerPath(s: Segment): makerjs.IPath {
  if (s.bulge === 0) return new makerjs.paths.Line([...s.from], [...s.to]);
  const { center, radius } = arcOf(s);
  const degAt = ([x, y]: Point2) => (Math.atan2(y - center[1], x - center[0]) * 180) / Math.PI;
  // makerjs arcs run counter-clockwise from startAngle to endAngle, in degrees.
  const startDeg = degAt(s.bulge > 0 ? s.from : s.to);
  const sweepDeg = (Math.abs(sweep(s.bulge)) * 180) / Math.PI;
  return new makerjs.paths.Arc([...center], radius, startDeg, startDeg + sweepDeg);
}
