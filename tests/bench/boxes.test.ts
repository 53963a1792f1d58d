import { expect, it } from 'vitest';
import { boxedFace, boxOfPart, facesForBoxes } from '../../src/bench/boxes.js';
import { drawnOutline } from '../../src/bench/drawn-outline.js';
import { largeRows } from '../../src/bench/nest-boxes.js';
import { seededDraws } from '../../src/geometry/random.js';
import { rectRing, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { part, RULES } from '../nest/outlines.js';

it('lays as many like boxes as a grid has, which is the most there can be', () => {
  const draw = seededDraws(5);
  let laid = 0;
  for (let k = 0; k < 100; k++) {
    const box = boxOfPart(part('p', drawnOutline(draw, [50, 160]), 1), 0);
    const face = {
      lengthMm: 120 + 500 * draw(),
      widthMm: 40 + 200 * draw(),
      marginMm: 5 * draw(),
      knots: [],
      splits: [],
      poorZones: [],
    };
    const gapMm = 6 * draw();
    const along = (size: number, own: number): number =>
      Math.max(0, Math.floor((size - 2 * face.marginMm + gapMm) / (own + gapMm)));
    const grid = along(face.lengthMm, box.lengthMm) * along(face.widthMm, box.heightMm);
    const { count, areaMm2 } = boxedFace(Array(grid + 3).fill(box), face, gapMm);
    expect(count).toBe(grid);
    expect(areaMm2).toBeCloseTo(grid * box.areaMm2, 6);
    laid += count;
  }
  expect(laid).toBeGreaterThan(500);
});

it('counts the faces that boxes of several sizes fill', () => {
  const face = { lengthMm: 208, widthMm: 68, marginMm: 4, knots: [], splits: [], poorZones: [] };
  const [long, short] = [
    boxOfPart(part('long', rectRing(0, 0, 200, 28), 1), 0),
    boxOfPart(part('short', rectRing(0, 0, 98, 28), 1), 1),
  ];
  // 28 + 4 + 28 high, 98 + 4 + 98 long: one long and two short fill a face to the last millimeter.
  expect(facesForBoxes([long, short, short], face, 4)).toBe(1);
  expect(facesForBoxes([long, short, short, short], face, 4)).toBe(2);
  expect(facesForBoxes([], face, 4)).toBe(0);
  const wide = boxOfPart(part('wide', rectRing(0, 0, 201, 28), 1), 0);
  expect(facesForBoxes([wide, short], face, 4)).toBe(Infinity);
  expect(boxedFace([wide, short], face, 4).count).toBe(1);
});

it('knows what interlocking can give: an ellipse (π/√12) / (π/4) = 2/√3', () => {
  const points = Array.from({ length: 96 }, (_, i): Point2 => {
    const a = (2 * Math.PI * i) / 96;
    return [60 * Math.cos(a), 20 * Math.sin(a)];
  });
  const [wide, exact] = largeRows(part('ellipse', ring(points), 1), {
    ...RULES,
    gapMm: 0,
    tries: 1,
  });
  // The lattice keeps 0.027 mm round an outline of 20 mm: 0.3 % of its area.
  expect(Math.abs(exact.possible - 2 / Math.sqrt(3))).toBeLessThan(5e-3);
  expect(wide.boxes).toBe(16 * 14);
  expect(exact.boxes).toBe(16 * 14);
  expect(exact.ours).toBeLessThanOrEqual(wide.ours);
  expect(exact.ratio).toBe(exact.ours / exact.boxes);
  // Where boxes lose nothing at the edges, nothing exceeds what is possible on an endless plane.
  expect(exact['share of possible gain']).toBeGreaterThan(0);
  expect(exact['share of possible gain']).toBeLessThan(1);
});
