import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { type Ring, rectRing, ringArea, ringBox } from '../../src/geometry/ring.js';
import { boxOf, distance } from '../../src/geometry/vec.js';
import { densestLattice } from '../../src/lattice/densest.js';
import { densityOf, type LatticeCopy } from '../../src/lattice/double.js';
import { latticeLayouts } from '../../src/lattice/face.js';
import { withGap } from '../../src/lattice/grow.js';
import { latticeStrip } from '../../src/lattice/strip.js';
import { drawnOutline } from '../nest/outlines.js';
import { distanceToRing, placed, worstDepth } from './overlap.js';
import { shippedOutlines } from './shipped.js';

const GAP_MM = 3;
const shipped = shippedOutlines();
const boxSize = (r: Ring): [number, number] => {
  const [minX, minY, maxX, maxY] = ringBox(r);
  return [maxX - minX, maxY - minY];
};

/** True outlines lie in the rectangle, grown ones do not meet. */
function expectSound(outline: Ring, grown: Ring, copies: readonly LatticeCopy[], size: number[]) {
  const [minX, minY, maxX, maxY] = boxOf(copies.flatMap((c) => placed(outline, c)));
  expect(Math.min(minX, minY)).toBeGreaterThan(-1e-6);
  expect(maxX).toBeLessThan(size[0] + 1e-6);
  expect(maxY).toBeLessThan(size[1] + 1e-6);
  expect(
    worstDepth(
      copies.map((c) => placed(grown, c)),
      2,
    ),
  ).toBeLessThan(1e-5);
}

it('there are shipped outlines', () => {
  expect(shipped.map((s) => s.name)).toEqual(['ghyll', 'holm', 'skerry']);
});

describe('layouts on a face', () => {
  const faces = [
    [130, 40],
    [300, 100],
    [420, 180],
  ] as const;
  it.each(shipped)('$name: at least as many as boxes in a grid', ({ outline }) => {
    const shape = withGap(outline, GAP_MM);
    const [w, h] = boxSize(outline);
    for (const [lengthMm, widthMm] of faces) {
      const layouts = latticeLayouts(shape, { lengthMm, widthMm });
      const along = (side: number, size: number): number =>
        Math.floor((side + GAP_MM) / (size + GAP_MM));
      const boxes = along(lengthMm, w) * along(widthMm, h);
      expect(layouts[0].copies.length).toBeGreaterThanOrEqual(boxes);
      for (const { copies } of layouts.slice(0, 3)) {
        expectSound(outline, shape.grown, copies, [lengthMm, widthMm]);
      }
    }
  });

  it('tiles a rectangle with rectangles, and gives nothing where none fits', () => {
    const outline = rectRing(-10, -5, 10, 5);
    const shape = { outline, grown: outline };
    const [best] = latticeLayouts(shape, { lengthMm: 200, widthMm: 50 });
    expect(best.copies.length).toBe(50);
    expectSound(outline, outline, best.copies, [200, 50]);
    expect(latticeLayouts(shape, { lengthMm: 19, widthMm: 9 })).toEqual([]);
  });

  it('leaves out copies that are not free', () => {
    const { outline } = shipped[0];
    const shape = withGap(outline, GAP_MM);
    const isFree = (c: LatticeCopy): boolean =>
      placed(outline, c).every((p) => distance(p, [200, 60]) > 20) &&
      distanceToRing([200, 60], placed(outline, c)) > 20;
    const [open] = latticeLayouts(shape, { lengthMm: 420, widthMm: 180 });
    const [best] = latticeLayouts(shape, { lengthMm: 420, widthMm: 180, isFree });
    expect(best.copies.every(isFree)).toBe(true);
    expect(best.copies.length).toBeLessThan(open.copies.length);
    expect(best.copies.length).toBeGreaterThan(open.copies.length / 2);
  });
});

describe('equal outlines in a strip', () => {
  const draw = seededDraws(31);
  const drawn = [0, 1].map((i) => ({ name: `drawn ${i}`, outline: drawnOutline(draw) }));
  it.each([...shipped, ...drawn])('$name: sound, dense, the same each time', ({ outline }) => {
    const shape = withGap(outline, GAP_MM);
    const limit = densityOf(densestLattice(shape.grown), ringArea(shape.grown));
    const [w, h] = boxSize(outline);
    for (const heightMm of [6 * h, 3 * w]) {
      const strip = latticeStrip(shape, 60, heightMm);
      if (!strip) throw new Error('no layout');
      expect(strip.copies.length).toBe(60);
      expectSound(outline, shape.grown, strip.copies, [strip.lengthMm, heightMm]);
      const reached = (60 * ringArea(shape.grown)) / (strip.lengthMm * heightMm);
      const rows = Math.floor((heightMm + GAP_MM) / (h + GAP_MM));
      const boxesMm = Math.ceil(60 / rows) * (w + GAP_MM) - GAP_MM;
      expect(strip.lengthMm).toBeLessThan(boxesMm);
      // Edges take up to a seventh of a strip of 60.
      expect(reached / limit).toBeGreaterThan(0.8);
      expect(reached / limit).toBeLessThan(1);
      expect(latticeStrip(shape, 60, heightMm)).toEqual(strip);
    }
  });

  it('comes near the limit where edges count for little: 1000 copies', () => {
    const { outline } = shipped[0];
    const shape = withGap(outline, GAP_MM);
    const limit = densityOf(densestLattice(shape.grown), ringArea(shape.grown));
    const heightMm = 3 * boxSize(outline)[0];
    const { lengthMm = Infinity } = latticeStrip(shape, 1000, heightMm) ?? {};
    const reached = (1000 * ringArea(shape.grown)) / (lengthMm * heightMm);
    expect(reached / limit).toBeGreaterThan(0.975);
  });

  it('is null where the strip is lower than the outline', () => {
    const { outline } = shipped[0];
    const [, h] = boxSize(outline);
    expect(latticeStrip(withGap(outline, GAP_MM), 5, h - 0.1)).toBeNull();
    expect(latticeStrip(withGap(outline, GAP_MM), 5, h + 0.1)?.copies.length).toBe(5);
  });
});
