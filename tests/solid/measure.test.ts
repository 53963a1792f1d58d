import { describe, expect, test } from 'vitest';
import { regionArea } from '../../src/geometry/ring.js';
import { type Csg, movedBy, segmentsAround } from '../../src/solid/csg.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { measure, sectionsAt, shadow, sharedVolume } from '../../src/solid/measure.js';
import { inverse, placement, pointBy, translation } from '../../src/solid/placement.js';
import { aroundArea, box, through } from './shapes.js';

const kernel = await loadKernel();
const plate = movedBy(translation(-10, -10, 0), box(20, 20, 10));

test('pieces and openings are counted', () => {
  const two: Csg = { kind: 'union', parts: [box(1, 1, 1), box(1, 1, 1, [5, 0, 0])] };
  expect(measure(kernel, two)).toEqual({ volumeMm3: 2, pieces: 2, genus: 0 });
  const holes = [-5, 0, 5].map((x) => movedBy(translation(x, 0, 0), through(1)));
  const { pieces, genus } = measure(kernel, { kind: 'subtract', from: plate, parts: holes });
  expect({ pieces, genus }).toEqual({ pieces: 1, genus: 3 });
  // A blind hole opens nothing.
  const blind: Csg = { kind: 'subtract', from: plate, parts: [through(1, 5)] };
  expect(measure(kernel, blind).genus).toBe(0);
});

test('shared volume: overlap, touch, apart', () => {
  expect(sharedVolume(kernel, box(2, 2, 2), box(2, 2, 2, [1, 1, 1]))).toBeCloseTo(1, 12);
  expect(sharedVolume(kernel, box(2, 2, 2), box(2, 2, 2, [2, 0, 0]))).toBeLessThan(1e-9);
  expect(sharedVolume(kernel, box(2, 2, 2), box(2, 2, 2, [9, 0, 0]))).toBe(0);
});

describe('sections', () => {
  test('a drilled plate shows a square with a hole, above it nothing', () => {
    const drilled: Csg = { kind: 'subtract', from: plate, parts: [through(3)] };
    const [[region, ...others], above] = sectionsAt(kernel, drilled, [5, 11]);
    expect(others).toEqual([]);
    expect(region.holes.length).toBe(1);
    // The kernel slices in doubles.
    expect(regionArea(region)).toBeCloseTo(400 - aroundArea(3, segmentsAround(3, 0.01)), 8);
    expect(above).toEqual([]);
    expect(() => sectionsAt(kernel, drilled, [Number.NaN])).toThrow(/section at NaN/);
  });

  test('an island in a hole belongs to itself, its hole to the island', () => {
    const pipe = (outer: number, inner: number): Csg => ({
      kind: 'subtract',
      from: through(outer, 0, 4),
      parts: [through(inner)],
    });
    const pipes: Csg = { kind: 'union', parts: [pipe(9, 7), pipe(5, 3)] };
    const [regions] = sectionsAt(kernel, pipes, [2]);
    const areas = regions.map(regionArea).sort((a, b) => a - b);
    const ring = (outer: number, inner: number) =>
      aroundArea(outer, segmentsAround(outer, 0.01)) -
      aroundArea(inner, segmentsAround(inner, 0.01));
    expect(areas.length).toBe(2);
    expect(areas[0]).toBeCloseTo(ring(5, 3), 8);
    expect(areas[1]).toBeCloseTo(ring(9, 7), 8);
  });
});

describe('the shadow of a solid', () => {
  const areaOf = (csg: Csg) => shadow(kernel, csg).reduce((sum, r) => sum + regionArea(r), 0);

  // The kernel keeps outlines to about 1e-6 mm.
  test('has the holes that go right through, and no others', () => {
    const bored: Csg = { kind: 'subtract', from: plate, parts: [through(3), through(5, 6, 11)] };
    expect(areaOf(bored)).toBeCloseTo(400 - aroundArea(3, segmentsAround(3, 0.01)), 4);
  });

  test('counts what lies above one another once', () => {
    const steps: Csg = { kind: 'union', parts: [box(10, 10, 2), box(10, 10, 2, [5, 5, 5])] };
    expect(areaOf(steps)).toBeCloseTo(200 - 25, 4);
    expect(
      areaOf(
        movedBy(placement([0.6, 0, 0.8], [0, 1, 0], [-0.8, 0, 0.6], [0, 0, 0]), box(10, 4, 5)),
      ),
    ).toBeCloseTo(4 * (10 * 0.6 + 5 * 0.8), 4);
  });

  test('of what is open about a bore lying down, whose outlines run back on themselves', () => {
    const bar: Csg = {
      kind: 'subtract',
      from: box(200, 30, 20),
      parts: [movedBy(translation(100, 15, 0), through(10, -1, 21))],
    };
    const open: Csg = { kind: 'subtract', from: box(24, 32, 22, [99, -1, -1]), parts: [bar] };
    const lain = movedBy(placement([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, 0, 0]), open);
    // The bore is wider than 15 ± 9.99 where x is 100, and its prism stands out by 0.01 at most.
    const solid = 32 * 22 - areaOf(lain);
    expect(solid).toBeGreaterThan(2 * 20 * (15 - 10.01));
    expect(solid).toBeLessThan(2 * 20 * (15 - 9.99));
  });
});

test('a motion and its inverse cancel', () => {
  const m = placement([0, 0.6, 0.8], [1, 0, 0], [0, 0.8, -0.6], [3, -4, 5]);
  const back = pointBy(inverse(m), pointBy(m, [1, 2, 3]));
  back.forEach((v, i) => {
    expect(v).toBeCloseTo(i + 1, 12);
  });
  expect(() => placement([1, 0, 0], [0, 0, 1], [0, 1, 0], [0, 0, 0])).toThrow(/not a rigid/);
});
