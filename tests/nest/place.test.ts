import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { ringArea } from '../../src/geometry/ring.js';
import { boxOf } from '../../src/geometry/vec.js';
import { kitFor } from '../../src/nest/kit.js';
import type { Block, NestPart } from '../../src/nest/nest.js';
import { countsOf, packFace } from '../../src/nest/place.js';
import { block, drawnOutline, lure, part, RULES } from './outlines.js';

const SEED = 20240;

/** Outlines of a plain grid of bounding boxes on a face without knots. */
function gridCount({ outline }: NestPart, face: Block, gapMm: number): number {
  const [minX, minY, maxX, maxY] = boxOf(outline);
  const along = (clear: number, size: number) =>
    Math.max(0, Math.floor((clear - size + 1e-9) / (size + gapMm)) + 1);
  return (
    along(face.lengthMm - 2 * face.marginMm, maxX - minX) *
    along(face.widthMm - 2 * face.marginMm, maxY - minY)
  );
}

describe('one face', () => {
  it('never holds fewer than a grid of bounding boxes', () => {
    const draw = seededDraws(SEED + 1);
    let more = 0;
    for (let k = 0; k < 60; k++) {
      const p = part('p', drawnOutline(draw), 1000);
      const face = block('b', [150 + 400 * draw(), 50 + 100 * draw()], 1);
      const layout = packFace(kitFor([p], RULES), { face, wanted: [1000], tries: 1, seed: k });
      const grid = gridCount(p, face, 3);
      expect(layout.spots.length).toBeGreaterThanOrEqual(grid);
      if (layout.spots.length > grid) more++;
    }
    expect(more).toBeGreaterThan(20);
  });

  it('holds a grid that fits to the last micrometer, and an outline as large as the face', () => {
    const p = part('p', lure(100, 25), 99);
    const [minX, minY, maxX, maxY] = boxOf(p.outline);
    const [length, height] = [maxX - minX, maxY - minY];
    const exact = block('b', [8 + 3 * length + 2 * 3, 8 + 2 * height + 3], 1);
    const kit = kitFor([p], RULES);
    const grid = packFace(kit, { face: exact, wanted: [99], tries: 0, seed: 1 });
    expect(grid.spots.length).toBeGreaterThanOrEqual(6);
    const single = block('b', [8 + length, 8 + height], 1);
    expect(packFace(kit, { face: single, wanted: [99], tries: 0, seed: 1 }).spots.length).toBe(1);
    const small = block('b', [8 + length - 1e-3, 8 + height], 1);
    expect(packFace(kit, { face: small, wanted: [99], tries: 0, seed: 1 }).spots.length).toBe(0);
  });

  it('interlocks a full belly with a thin tail on a large face', () => {
    const p = part('p', lure(120, 30), 1000);
    const face = block('b', [2000, 600], 1);
    const kit = kitFor([p], RULES);
    const { spots } = packFace(kit, { face, wanted: [1000], tries: 2, seed: 1 });
    const grid = gridCount(p, face, RULES.gapMm);
    expect(grid).toBe(288); // 16 × 18
    // Without edges: two outlines a lattice cell against one a box.
    const cellMm2 = kit.lattices(0)[0].cellMm2;
    const possibleGain = (2 * 123 * 33) / cellMm2;
    expect(possibleGain).toBeGreaterThan(1.15);
    const gain = spots.length / grid;
    expect(gain).toBeGreaterThan(0.945 * possibleGain);
    // The lattice itself against the published limit of the outline without gap (0.91879 ± 2e-4,
    // shared/references.md §10) with the gap grown in (Steiner): the grown outline is rounder, so
    // its own limit lies near, not at, 0.91879.
    const perimeter = p.outline.reduce((sum, [x, y], i) => {
      const [nx, ny] = p.outline[(i + 1) % p.outline.length];
      return sum + Math.hypot(nx - x, ny - y);
    }, 0);
    const grown = ringArea(p.outline) + perimeter * 1.5 + Math.PI * 1.5 ** 2;
    const latticeDensity = (2 * grown) / cellMm2;
    expect(latticeDensity).toBeGreaterThan(0.905);
    expect(latticeDensity).toBeLessThan(0.925);
  });

  it('uses least length when fewer are wanted than fit', () => {
    const p = part('p', lure(100, 25), 99);
    const face = block('b', [600, 100], 1);
    const kit = kitFor([p], RULES);
    const layout = packFace(kit, { face, wanted: [3], tries: 4, seed: 1 });
    expect(countsOf(kit, layout)).toEqual([3]);
    // Three outlines, one above the other: margin and the length of one, or little more interlocked.
    expect(layout.usedLengthMm).toBeLessThan(4 + 100 + 10);
  });

  it('gives the same layout for the same input', () => {
    const parts = [part('a', lure(90, 24, 3), 9), part('b', lure(70, 20), 9)];
    const face = block('b', [350, 90], 1);
    const pack = (seed: number) =>
      packFace(kitFor(parts, RULES), { face, wanted: [9, 9], tries: 8, seed });
    expect(pack(7)).toEqual(pack(7));
    expect(pack(7).areaMm2).toBeGreaterThan(0);
  });

  it('finds more on the whole with more tries', () => {
    const parts = [part('a', lure(150, 38), 40), part('c', lure(140, 34, 8), 40)];
    const face = block('b', [600, 160], 1);
    const kit = kitFor(parts, RULES);
    const area = (tries: number): number =>
      [1, 2, 3].reduce(
        (sum, seed) => sum + packFace(kit, { face, wanted: [40, 40], tries, seed }).areaMm2,
        0,
      );
    expect(area(16)).toBeGreaterThan(area(0));
  });
});
