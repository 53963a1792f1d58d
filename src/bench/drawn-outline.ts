/** Outlines drawn by chance, of the kind that is nested here: for soaks and ratios, invented. */
import { asRegion, subtract } from '../geometry/clip.js';
import { type Ring, ring, ringArea } from '../geometry/ring.js';
import { moved, type Point2 } from '../geometry/vec.js';

export type Draw = () => number;

/** Least and greatest length of an outline, mm. */
export type LengthRange = readonly [leastMm: number, mostMm: number];

/** Decimals kept of a drawn coordinate, mm: powers and sines differ between machines in the last digits. */
const DECIMALS = 4;
const POINTS = 60;

/**
 * A lure-like outline: nose at the left, full belly, thin tail, straight or bent; two in five with a
 * hollow in belly or back, one in three with the notch of a lip under the nose.
 */
export function drawnOutline(draw: Draw, [leastMm, mostMm]: LengthRange): Ring {
  const lengthMm = leastMm + (mostMm - leastMm) * draw();
  const heightMm = lengthMm * (0.14 + 0.2 * draw());
  const smooth = ring(sides(draw, lengthMm, heightMm).map(rounded));
  return draw() < 1 / 3 ? notched(smooth, draw, heightMm) : smooth;
}

const rounded = ([x, y]: Point2): Point2 => [
  Number(x.toFixed(DECIMALS)),
  Number(y.toFixed(DECIMALS)),
];

/** Half-height ξ^nose·(1−ξ)^tail about a bent middle line, less a hollow on one side. */
function sides(draw: Draw, lengthMm: number, heightMm: number): Point2[] {
  const [nose, tail] = [0.35 + 0.5 * draw(), 0.5 + 0.7 * draw()];
  const bendMm = 0.1 * lengthMm * (draw() - 0.4);
  const hollowMm = draw() < 0.4 ? 0.3 * heightMm * draw() : 0;
  const isBelly = draw() < 0.7;
  const [hollowAt, hollowSpan] = [0.35 + 0.3 * draw(), 0.2 + 0.2 * draw()];
  const widest = nose / (nose + tail);
  const full = widest ** nose * (1 - widest) ** tail;
  const at = (i: number) => {
    const share = (1 - Math.cos((Math.PI * i) / POINTS)) / 2;
    const half = ((heightMm / 2) * share ** nose * (1 - share) ** tail) / full;
    const near = Math.max(0, 1 - ((share - hollowAt) / hollowSpan) ** 2);
    const dent = hollowMm * near ** 2;
    const middle = bendMm * Math.sin(Math.PI * share);
    const [below, above] = isBelly ? [half - dent, half] : [half, half - dent];
    // A hollow never cuts through to the other side: a tenth of the height stays.
    const least = Math.min(half, heightMm / 20);
    return {
      x: lengthMm * share,
      low: Math.max(below, least),
      high: Math.max(above, least),
      middle,
    };
  };
  const stations = Array.from({ length: POINTS + 1 }, (_, i) => at(i));
  const low = stations.map((s): Point2 => [s.x, s.middle - s.low]);
  const high = stations.slice(1, -1).map((s): Point2 => [s.x, s.middle + s.high]);
  return [...low, ...high.reverse()];
}

/** A parallel notch into the lower side behind the nose, leaning as a lip does. */
function notched(outline: Ring, draw: Draw, heightMm: number): Ring {
  const share = 0.08 + 0.12 * draw();
  const widthMm = 1 + 1.5 * draw();
  const depthMm = heightMm * (0.15 + 0.25 * draw());
  const turnDeg = 20 + 70 * draw();
  const entry = outline[Math.round(share * POINTS * 2)];
  const corners: readonly Point2[] = [
    [-depthMm, -widthMm / 2],
    [depthMm, -widthMm / 2],
    [depthMm, widthMm / 2],
    [-depthMm, widthMm / 2],
  ];
  const notch = ring(corners.map((p) => moved({ turnDeg, move: entry }, p)));
  const pieces = subtract([asRegion(outline)], [asRegion(notch)]);
  const [largest] = pieces.map((p) => p.outer).sort((a, b) => ringArea(b) - ringArea(a));
  return ring(largest.map(rounded));
}
