/** Nearest distances and first hits against brute force, closed forms and the mesh kernel's own search. */
import { describe, expect, test } from 'vitest';
import { type FacetTree, facetTree, search } from '../../src/geometry/facet-tree.js';
import { distanceBetween, distanceToFacets } from '../../src/geometry/nearness.js';
import { seededDraws } from '../../src/geometry/random.js';
import { firstHit } from '../../src/geometry/ray.js';
import { facetArea, surfaceSamples } from '../../src/geometry/surface-samples.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { unit3 } from '../../src/geometry/vec3.js';
import { type Csg, movedBy } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { gapBetween } from '../../src/solid/measure.js';
import { placement, translation } from '../../src/solid/placement.js';
import { box, through } from '../solid/shapes.js';

const kernel = await loadKernel();
const treeOf = (csg: Csg) => facetTree(evaluate(kernel, csg));
const bored: Csg = { kind: 'subtract', from: box(20, 14, 10), parts: [through(3)] };
const draw = seededDraws(7);
const point = (size: number): Point3 => [
  size * (draw() - 0.5),
  size * (draw() - 0.5),
  size * (draw() - 0.5),
];

/** The same facets in one box: nothing is left out. */
const flat = (tree: FacetTree): FacetTree => ({
  ...tree,
  parts: Int32Array.from([~0, tree.order.length]),
});

test('every facet is in one box, and inside it', () => {
  const tree = treeOf(bored);
  expect([...tree.order].sort((a, b) => a - b)).toEqual([...tree.order.keys()]);
  const seen: number[] = [];
  search(
    tree,
    1,
    () => 0,
    (f) => seen.push(f) * 0 + 1,
  );
  expect(seen.length).toBe(tree.order.length);
});

describe('from points', () => {
  test('a box has its closed form', () => {
    const tree = treeOf(box(10, 10, 10));
    expect(distanceToFacets(tree, [15, 5, 5], 99)).toBeCloseTo(5, 9);
    expect(distanceToFacets(tree, [13, 14, 5], 99)).toBeCloseTo(5, 9);
    expect(distanceToFacets(tree, [12, 13, 16], 99)).toBeCloseTo(7, 9);
    expect(distanceToFacets(tree, [5, 5, 8], 99)).toBeCloseTo(2, 9);
    expect(distanceToFacets(tree, [99, 0, 0], 4)).toBe(4);
  });

  test('300 points: nearest and first hit as by trying every facet', () => {
    const tree = treeOf(bored);
    let hits = 0;
    for (let i = 0; i < 300; i++) {
      const [at, way] = [point(30), unit3(point(1))];
      expect(distanceToFacets(tree, at, 99)).toBe(distanceToFacets(flat(tree), at, 99));
      for (const sides of ['in', 'out', 'both'] as const) {
        const hit = firstHit(tree, at, way, { upTo: 60, sides });
        expect(hit?.distance).toBe(firstHit(flat(tree), at, way, { upTo: 60, sides })?.distance);
        if (hit) hits++;
      }
    }
    expect(hits).toBeGreaterThan(60);
  });

  test('lines along the axes, from a face and through a bore', () => {
    const tree = treeOf(bored);
    expect(firstHit(tree, [12, 7, -5], [0, 0, 1], { upTo: 99, sides: 'in' })?.distance).toBeCloseTo(
      5,
      9,
    );
    const inside = { from: 1e-4, upTo: 99, sides: 'out' } as const;
    expect(firstHit(tree, [12, 7, 0], [0, 0, 1], inside)?.distance).toBeCloseTo(10, 9);
    expect(firstHit(tree, [0.5, 0.5, -5], [0, 0, 1], { upTo: 99 })).toBeNull();
  });
});

describe('between meshes', () => {
  test('boxes apart by a face, an edge and a corner', () => {
    const tree = treeOf(box(10, 10, 10));
    const to = (at: Point3) => distanceBetween(tree, treeOf(box(4, 4, 4, [...at])), { upTo: 99 });
    expect(to([12, 3, 3])).toBeCloseTo(2, 3);
    expect(to([13, 14, 3])).toBeCloseTo(5, 3);
    expect(to([12, 13, 16])).toBeCloseTo(7, 3);
  });

  test('as the kernel’s own search finds it, anyhow turned', () => {
    let apart = 0;
    for (let i = 0; i < 25; i++) {
      const x = unit3(point(1));
      const y = unit3([x[1], -x[0], 0]);
      const z: Point3 = [
        x[1] * y[2] - x[2] * y[1],
        x[2] * y[0] - x[0] * y[2],
        x[0] * y[1] - x[1] * y[0],
      ];
      const [dx, dy, dz] = unit3(point(1));
      const other = movedBy(placement(x, y, z, [30 * dx, 30 * dy, 30 * dz]), bored);
      const upTo = 40;
      const theirs = gapBetween(kernel, bored, other, upTo);
      if (theirs === 0) continue;
      apart++;
      const ours = distanceBetween(treeOf(bored), treeOf(other), { upTo });
      expect(Math.abs(ours - theirs)).toBeLessThan(3e-3);
    }
    expect(apart).toBeGreaterThan(15);
  });

  test('moved, by the facets that face the way', () => {
    const tree = treeOf(box(10, 10, 10));
    const other = treeOf(box(4, 4, 4, [15, 3, 3]));
    expect(distanceBetween(tree, other, { upTo: 99, move: [-3, 0, 0] })).toBeCloseTo(2, 3);
    const there = movedBy(translation(-3, 2, 1), box(4, 4, 4, [15, 3, 3]));
    expect(distanceBetween(tree, other, { upTo: 99, move: [-3, 2, 1] })).toBeCloseTo(
      gapBetween(kernel, box(10, 10, 10), there, 99),
      3,
    );
  });
});

test('samples: one for each step², each on its facet', () => {
  const tree = treeOf(bored);
  const area = [...tree.order].reduce((sum, f) => sum + facetArea(tree.corners, 9 * f), 0);
  const samples = surfaceSamples(tree, 1.5);
  expect(Math.abs(samples.length - area / 2.25)).toBeLessThanOrEqual(1);
  for (const { at } of samples) expect(distanceToFacets(tree, at, 1)).toBeLessThan(1e-6);
  const each = new Set(surfaceSamples(tree, 50, 0).map((s) => s.facet));
  expect(each.size).toBe(tree.order.length);
});
