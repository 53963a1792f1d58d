/** Settling: layouts whose tight form is known. */
import { describe, expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { circleRing, type Ring, rectRing, ringArea } from '../../src/geometry/ring.js';
import { loadSolver } from '../../src/linear/solver.js';
import { depthOfOverlap, outside } from '../../src/pack/check.js';
import { settled } from '../../src/pack/settle.js';
import { type StripLayout, type StripProblem, stripSearch } from '../../src/pack/strip.js';
import { tableOf } from '../../src/pack/table.js';
import { laidOut } from './second-opinion.js';
import { outlineOf, star } from './stars.js';

const solver = await loadSolver();

const problemOf = (rings: readonly Ring[], items: readonly number[], height: number) => ({
  table: tableOf(rings.map((r) => outlineOf(r))),
  areas: rings.map(ringArea),
  items,
  height,
  start: null,
});
const layoutAt = (
  { table }: StripProblem,
  rings: readonly Ring[],
  items: readonly number[],
  at: readonly (readonly [number, number])[],
): StripLayout => {
  const places = {
    turned: Int32Array.from(items, (o) => table.turned.findIndex((t) => t.outline === o)),
    x: Float64Array.from(at, ([x]) => x),
    y: Float64Array.from(at, ([, y]) => y),
  };
  const laid = laidOut(table, rings, places);
  return { length: Math.max(...laid.flatMap((r) => r.map(([x]) => x))), places };
};
const greatestDepth = (laid: readonly Ring[]): number =>
  Math.max(...laid.flatMap((a, i) => laid.slice(i + 1).map((b) => depthOfOverlap(a, b))), 0);

/** Rows of the program are kept to 1e-10 of the height; a few of them add up along a chain. */
const KEPT = 1e-8;

describe('closed forms', () => {
  test('squares with gaps between them are pushed together, and to the start', () => {
    const rings = [rectRing(-1, -1, 1, 1)];
    const items = [0, 0, 0];
    const problem = problemOf(rings, items, 2);
    const layout = layoutAt(problem, rings, items, [
      [1.01, 1],
      [3.02, 1],
      [5.05, 1],
    ]);
    const { length, places } = settled(solver, problem, rings, layout);
    expect(length).toBeCloseTo(6, 7);
    expect([...places.x].map((x) => Math.round(1e7 * x) / 1e7)).toEqual([1, 3, 5]);
  });

  test('two disks in a strip of three radii touch slantwise', () => {
    // Disks of radius r, one on the floor, one under the top of a strip of height h = 3 r: middles r apart
    // along y, so √((2 r)² − r²) = √3 r along x once they touch; length (2 + √3) r.
    const segments = 360;
    const disk = circleRing([0, 0], 1, { segments });
    const items = [0, 0];
    const problem = problemOf([disk], items, 3);
    const layout = layoutAt(problem, [disk], items, [
      [1, 1],
      [1 + Math.sqrt(3) + 0.1, 2],
    ]);
    const found = settled(solver, problem, [disk], layout);
    // Polygons inside their circles touch nearer by at most two sagittas over the slant.
    const sagitta = 1 - Math.cos(Math.PI / segments);
    expect(found.length).toBeLessThanOrEqual(2 + Math.sqrt(3) + KEPT);
    expect(found.length).toBeGreaterThan(2 + Math.sqrt(3) - 5 * sagitta);
    const laid = laidOut(problem.table, [disk], found.places);
    expect(greatestDepth(laid)).toBeLessThan(KEPT);
  });

  test('a tight layout stays as it is', () => {
    const rings = [rectRing(-1, -1, 1, 1)];
    const items = [0, 0, 0, 0];
    const problem = problemOf(rings, items, 4);
    const layout = layoutAt(problem, rings, items, [
      [1, 1],
      [1, 3],
      [3, 1],
      [3, 3],
    ]);
    const { length, places } = settled(solver, problem, rings, layout);
    expect(length).toBeCloseTo(4, 8);
    places.x.forEach((x, i) => {
      expect(x).toBeCloseTo(layout.places.x[i], 7);
    });
    places.y.forEach((y, i) => {
      expect(y).toBeCloseTo(layout.places.y[i], 7);
    });
  });

  test('overlaps of 1e-6 end at none, at the price of the length they hid', () => {
    const rings = [rectRing(-1, -1, 1, 1)];
    const items = [0, 0, 0];
    const problem = problemOf(rings, items, 2);
    const hidden = 1e-6;
    const layout = layoutAt(problem, rings, items, [
      [1, 1],
      [3 - hidden, 1],
      [5 - 2 * hidden, 1],
    ]);
    const { length, places } = settled(solver, problem, rings, layout);
    expect(length).toBeCloseTo(6, 8);
    expect(greatestDepth(laidOut(problem.table, rings, places))).toBeLessThan(KEPT);
  });

  test('what is in the way stays on its side', () => {
    // A bar across the strip keeps two chips apart: they are pushed to it, never through it.
    const rings = [rectRing(-0.5, -0.5, 0.5, 0.5), rectRing(-0.5, -2, 0.5, 2)];
    const items = [0, 1, 0];
    const problem = problemOf(rings, items, 4);
    const layout = layoutAt(problem, rings, items, [
      [0.52, 2],
      [1.54, 2],
      [2.6, 3],
    ]);
    const { length, places } = settled(solver, problem, rings, layout);
    expect(length).toBeCloseTo(3, 7);
    expect(places.x[0]).toBeLessThan(places.x[1]);
    expect(places.x[1]).toBeLessThan(places.x[2]);
  });
});

describe('layouts of a search', () => {
  test('never get longer, and end without overlap', () => {
    const draw = seededDraws(41);
    let gained = 0;
    for (let n = 0; n < 4; n++) {
      const rings = [star(draw, 5, 3), star(draw, 8, 4), star(draw, 6, 3)];
      const items = Array.from({ length: 12 }, (_, i) => i % 3);
      const problem = problemOf(rings, items, 14);
      const search = stripSearch(problem, { spent: 0, other: null }, seededDraws(n));
      search.run(15_000);
      const layout = search.best();
      if (!layout) throw new Error('no layout');
      const found = settled(solver, problem, rings, layout);
      // What the search called free may overlap by clipping's 1e-6.
      expect(found.length).toBeLessThan(layout.length + 1e-5);
      if (found.length < layout.length - 1e-4) gained++;
      const laid = laidOut(problem.table, rings, found.places);
      expect(greatestDepth(laid)).toBeLessThan(KEPT);
      for (const r of laid) expect(outside(r, [0, 0, found.length, 14])).toBeLessThan(KEPT);
      const again = settled(solver, problem, rings, found);
      expect(again.length).toBeLessThan(found.length + KEPT);
    }
    expect(gained).toBeGreaterThan(1);
  });

  test('a layout that can not be kept within the strip comes back as it was', () => {
    const rings = [rectRing(-1, -1, 1, 1)];
    const problem = problemOf(rings, [0], 2);
    const layout = layoutAt(problem, rings, [0], [[-5, 1]]);
    expect(settled(solver, problem, rings, layout)).toBe(layout);
  });
});
