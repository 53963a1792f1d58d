import { expect, test } from 'vitest';
import { boxOf, type Point2, type Point3 } from '../../src/geometry/vec.js';
import { dot3 } from '../../src/geometry/vec3.js';
import { depthsOf, type Grid } from '../../src/shade/depth.js';
import type { Seen } from '../../src/shade/model.js';
import type { Scene } from '../../src/shade/scene.js';
import { axesOf, type View } from '../../src/shade/view.js';
import { turned } from '../geometry/prism.js';
import { body, box, ISOMETRIC, movedTo, scene, seen, sphere, TOP } from './shapes.js';

const PITCH = 0.05;

function gridOver({ corners }: Seen): Grid {
  const points = Array.from(
    { length: corners.length / 3 },
    (_, v): Point2 => [corners[3 * v], corners[3 * v + 1]],
  );
  const [minX, minY, maxX, maxY] = boxOf(points);
  return {
    minX: minX - 3 * PITCH,
    maxY: maxY + 3 * PITCH,
    pitch: PITCH,
    columns: Math.ceil((maxX - minX) / PITCH) + 6,
    rows: Math.ceil((maxY - minY) / PITCH) + 6,
  };
}

function depths(of: Scene, view: View) {
  const from = seen(of, view);
  return depthsOf(from, gridOver(from));
}

const areaOf = (of: Scene, view: View): number =>
  depths(of, view).facet.filter((f) => f >= 0).length * PITCH ** 2;

/** Samples are right but for those along the edge of the area: half a sample over its length, if all erred to one side. */
const areaError = (perimeter: number): number => (perimeter * PITCH) / 2;

const VIEWS: readonly View[] = [
  ISOMETRIC,
  { toward: [-1, 2, 0.5], up: [0, 0, 1] },
  { toward: [0.3, -0.2, -1], up: [0, 1, 0] },
  TOP,
];

test.each(VIEWS)(
  'a box seen from $toward covers half the sum of |n·v| A over its faces (Cauchy)',
  (view) => {
    const [x, y, z] = [12, 7, 4];
    const v = axesOf(view).toward.map(Math.abs);
    const want = y * z * v[0] + x * z * v[1] + x * y * v[2];
    expect(Math.abs(areaOf(scene(body(box(x, y, z))), view) - want)).toBeLessThan(
      areaError(2 * (x + y + z)),
    );
  },
);

test.each([0, 20, 45, 70, 90])('a disc tilted by %s° covers an ellipse and its rim', (deg) => {
  const [r, h, n] = [8, 1.5, 720];
  const disc = turned(
    [
      [0, 0],
      [r, 0],
      [r, h],
      [0, h],
    ],
    n,
  );
  const a = (deg * Math.PI) / 180;
  const view: View = { toward: [0, -Math.sin(a), Math.cos(a)], up: [0, Math.cos(a), Math.sin(a)] };
  // Projection of a right circular cylinder: the ellipse of one end, and the rectangle between both.
  const want = Math.PI * r * r * Math.cos(a) + 2 * r * h * Math.sin(a);
  expect(Math.abs(areaOf(scene(body(disc)), view) - want)).toBeLessThan(areaError(2 * Math.PI * r));
});

test('a sphere is as deep as x² + y² + z² = r² says', () => {
  const [r, rings] = [6, 90];
  const { grid, depth } = depths(scene(body(sphere(r, rings))), VIEWS[1]);
  // Chords of two degrees lie at most r(1 − cos 1°) inside along a radius, twice for two directions.
  const inside = 2 * r * (1 - Math.cos(Math.PI / (2 * rings)));
  let [looked, wrong] = [0, 0];
  for (let i = 0; i < depth.length; i++) {
    const x = grid.minX + ((i % grid.columns) + 0.5) * PITCH;
    const y = grid.maxY - (Math.floor(i / grid.columns) + 0.5) * PITCH;
    if (Math.hypot(x, y) > 0.95 * r) continue;
    looked++;
    const radius = Math.hypot(x, y, depth[i]);
    if (!(radius < r + 1e-5 && radius > r - inside - 1e-5)) wrong++;
  }
  expect(wrong).toBe(0);
  expect(looked).toBeGreaterThan(10_000);
});

test('no sample between two facets is left out, and none outside is taken', () => {
  // Corners on the very samples, in numbers that are exact: whoever owns an edge, the whole is 160 by 80.
  const pitch = 1 / 16;
  const flat = seen(scene(body(box(10, 5, 1))), TOP);
  const grid: Grid = {
    minX: -3.5 * pitch,
    maxY: 5 + 3.5 * pitch,
    pitch,
    columns: 180,
    rows: 100,
  };
  const count = depthsOf(flat, grid).facet.filter((f) => f >= 0).length;
  expect(count).toBe(160 * 80);
});

test('the nearer body is seen, whatever their order; a ghost is not', () => {
  const [low, high] = [body(box(4, 4, 1)), body(box(4, 4, 1), 'wood', movedTo(0, 0, 3))];
  const middle = (of: Scene) => {
    const { depth, grid } = depths(of, TOP);
    return depth[Math.floor(grid.rows / 2) * grid.columns + Math.floor(grid.columns / 2)];
  };
  expect(middle(scene(low, high))).toBe(4);
  expect(middle(scene(high, low))).toBe(4);
  expect(middle(scene(low, { ...high, tone: 'ghost' }))).toBe(1);
});

test('axes are unit, square and right-handed', () => {
  for (const view of VIEWS) {
    const { right, up, toward } = axesOf(view);
    const all: readonly Point3[] = [right, up, toward];
    for (const [i, a] of all.entries())
      for (const [j, b] of all.entries()) expect(dot3(a, b)).toBeCloseTo(i === j ? 1 : 0, 12);
    expect(dot3(up, view.up)).toBeGreaterThan(0);
  }
  expect(() => axesOf({ toward: [0, 0, 2], up: [0, 0, -1] })).toThrow();
  expect(() => axesOf({ toward: [0, 0, 0], up: [0, 0, 1] })).toThrow();
});
