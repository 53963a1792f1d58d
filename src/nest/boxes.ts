/**
 * Rows of bounding boxes: what a maker would lay out by rule and square. It is tried on every face,
 * so that a nest never holds fewer outlines of one pattern than the plain grid does.
 */
import { type EmptyFace, isFree, type Spot } from './fill.js';
import type { FaceSize } from './nest.js';
import { SAME_MM } from './room.js';

/**
 * Rows of boxes from the lower edge up, each row as high as its first outline, highest outlines
 * first; a box over a knot stays empty.
 */
export function boxRows(
  face: FaceSize,
  empty: EmptyFace,
  wanted: readonly number[],
  gapMm: number,
): Spot[] {
  const { shapes } = empty.set;
  const sizes = wanted.map((_, part) => {
    const [minX, minY, maxX, maxY] = shapes[2 * part].box;
    return { part, length: maxX - minX, height: maxY - minY };
  });
  sizes.sort((a, b) => b.height - a.height || b.length - a.length || a.part - b.part);
  const left = [...wanted];
  const spots: Spot[] = [];
  const right = face.lengthMm - face.marginMm + SAME_MM;
  const top = face.widthMm - face.marginMm + SAME_MM;
  for (let y = face.marginMm; ; ) {
    const fits = sizes.filter((s) => left[s.part] > 0 && y + s.height <= top);
    if (fits.length === 0) return spots;
    for (let x = face.marginMm; ; ) {
      const next = fits.find((s) => left[s.part] > 0 && x + s.length <= right);
      if (!next) break;
      const spot = freeInBox(empty, next.part, x, y);
      if (spot) {
        spots.push(spot);
        left[next.part]--;
      }
      x += next.length + gapMm;
    }
    y += fits[0].height + gapMm;
  }
}

function freeInBox(empty: EmptyFace, part: number, x: number, y: number): Spot | null {
  for (const shape of [2 * part, 2 * part + 1]) {
    const [minX, minY] = empty.set.shapes[shape].box;
    const spot = { shape, x: x - minX, y: y - minY };
    if (isFree(empty, spot)) return spot;
  }
  return null;
}
