/** Where bands moved about on a face contain a point, and where their edges cross. */
import { type Band, heightAt, type Line, onSegment, segmentAt } from './band.js';

/** A band moved by (dx, dy). */
export type MovedBand = { readonly band: Band; readonly dx: number; readonly dy: number };

/**
 * Points nearer to an edge than this count as touching, not as inside, mm (measured along x and y).
 * Crossing points carry rounding of some 1e-12; this leaves room for it and costs nothing, since
 * outlines are grown by more (see `shape.ts`).
 */
const TOUCH = 1e-7;

/** True if (x, y) lies inside the moved band and does not merely touch it. */
export function isInside({ band, dx, dy }: MovedBand, x: number, y: number): boolean {
  const px = x - dx;
  const py = y - dy;
  return (
    px > band.minX + TOUCH &&
    px < band.maxX - TOUCH &&
    py > band.minY + TOUCH &&
    py < band.maxY - TOUCH &&
    py > heightAt(band.low, px) + TOUCH &&
    py < heightAt(band.high, px) - TOUCH
  );
}

/** Calls `found` with every point where the edges of two moved bands cross (or touch at a corner). */
export function crossings(a: MovedBand, b: MovedBand, found: (x: number, y: number) => void): void {
  const shiftX = b.dx - a.dx;
  const shiftY = b.dy - a.dy;
  const [p, q] = [a.band, b.band];
  if (p.maxX < q.minX + shiftX || q.maxX + shiftX < p.minX) return;
  if (p.maxY < q.minY + shiftY || q.maxY + shiftY < p.minY) return;
  const report = (x: number, y: number): void => found(x + a.dx, y + a.dy);
  lineCrossings(p.low, q.low, shiftX, shiftY, report);
  lineCrossings(p.low, q.high, shiftX, shiftY, report);
  lineCrossings(p.high, q.low, shiftX, shiftY, report);
  lineCrossings(p.high, q.high, shiftX, shiftY, report);
  uprightCrossings(p, q, shiftX, shiftY, report);
  uprightCrossings(q, p, -shiftX, -shiftY, (x, y) => report(x + shiftX, y + shiftY));
}

/** Where the upright ends of p meet the lines of q, which is moved by (sx, sy). */
function uprightCrossings(
  p: Band,
  q: Band,
  sx: number,
  sy: number,
  found: (x: number, y: number) => void,
): void {
  for (const end of [0, 1]) {
    const x = end === 0 ? p.minX : p.maxX;
    const below = p.low.y[end * (p.low.y.length - 1)];
    const above = p.high.y[end * (p.high.y.length - 1)];
    if (above <= below || x < q.minX + sx || x > q.maxX + sx) continue;
    for (const side of [q.low, q.high]) {
      const y = heightAt(side, x - sx) + sy;
      if (y >= below && y <= above) found(x, y);
    }
  }
}

/** Where line f meets line g moved by (sx, sy): both are walked from left to right at once. */
function lineCrossings(
  f: Line,
  g: Line,
  sx: number,
  sy: number,
  found: (x: number, y: number) => void,
): void {
  const end = Math.min(f.x[f.x.length - 1], g.x[g.x.length - 1] + sx);
  let x = Math.max(f.x[0], g.x[0] + sx);
  let i = segmentAt(f, x);
  let j = segmentAt(g, x - sx);
  let fy = onSegment(f, i, x);
  let gap = fy - onSegment(g, j, x - sx) - sy;
  if (gap === 0) found(x, fy);
  while (x < end) {
    const nextF = f.x[i + 1];
    const nextG = g.x[j + 1] + sx;
    const nextX = Math.min(nextF, nextG, end);
    const nextFy = onSegment(f, i, nextX);
    const nextGap = nextFy - onSegment(g, j, nextX - sx) - sy;
    if (nextGap === 0) found(nextX, nextFy);
    else if (gap * nextGap < 0) {
      const t = gap / (gap - nextGap);
      found(x + (nextX - x) * t, fy + (nextFy - fy) * t);
    }
    if (nextX >= end) return;
    if (nextF <= nextX) i++;
    if (nextG <= nextX) j++;
    x = nextX;
    fy = nextFy;
    gap = nextGap;
  }
}
