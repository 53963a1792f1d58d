import { describe, expect, test } from 'vitest';
import { penned } from '../../src/geometry/clip.js';
import { lettering } from '../../src/geometry/lettering.js';
import { regionArea } from '../../src/geometry/ring.js';
import { type Csg, movedBy } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { jscadBooleans, jscadEvaluate } from '../../src/solid/jscad.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { measure } from '../../src/solid/measure.js';
import { placement, translation } from '../../src/solid/placement.js';
import { box, through } from './shapes.js';

const kernel = await loadKernel();
const plate = movedBy(translation(-10, -10, 0), box(20, 20, 10));
const across = movedBy(placement([0, 1, 0], [0, 0, 1], [1, 0, 0], [0, 0, 5]), through(2, -11, 11));
const cases: Record<string, Csg> = {
  drilled: { kind: 'subtract', from: plate, parts: [through(3)] },
  crossed: { kind: 'subtract', from: plate, parts: [through(3), across] },
  joined: { kind: 'union', parts: [plate, movedBy(translation(3, 4, 8), box(20, 5, 5))] },
  common: { kind: 'intersect', parts: [plate, movedBy(translation(5, 5, 5), box(20, 20, 20))] },
};

test('two kernels with nothing in common agree on volume', () => {
  expect(Object.keys(cases).length).toBe(4);
  for (const [name, csg] of Object.entries(cases)) {
    // That library snaps corners to 1e-5 mm, on faces of 400 mm²: 4e-3 mm³ at most.
    const { volumeMm3 } = jscadEvaluate(csg);
    expect(Math.abs(volumeMm3 - measure(kernel, csg).volumeMm3), name).toBeLessThan(4e-3);
  }
});

test('it also reads meshes, and counts what it builds', () => {
  const mesh: Csg = { kind: 'mesh', mesh: evaluate(kernel, cases.drilled) };
  const straight = measure(kernel, cases.drilled).volumeMm3;
  expect(Math.abs(jscadEvaluate(mesh).volumeMm3 - straight)).toBeLessThan(4e-3);
  expect(jscadBooleans(cases.drilled)).toBeGreaterThan(10);
});

test('its own edge count sees that a plain box is closed and its drilled plate may not be', () => {
  expect(jscadEvaluate(plate).openEdges).toBe(0);
  expect(jscadEvaluate(cases.crossed).triangles).toBeGreaterThan(100);
});

describe('pen strokes', () => {
  const lines = lettering('BW 6.0', { heightMm: 5 });

  test('are areas about as large as length times width', () => {
    const length = lines.reduce(
      (sum, line) =>
        sum +
        line.slice(1).reduce((s, p, i) => s + Math.hypot(p[0] - line[i][0], p[1] - line[i][1]), 0),
      0,
    );
    const area = penned(lines, 0.8).reduce((sum, r) => sum + regionArea(r), 0);
    // Overlaps at corners take away, round ends add: within a fifth for letters.
    expect(area / (0.8 * length)).toBeGreaterThan(0.8);
    expect(area / (0.8 * length)).toBeLessThan(1.2);
  });

  test('agree with the same strokes by the other library to the flattening of edges', () => {
    const strokes: Csg = { kind: 'strokes', lines, width: 0.8, fromZ: 0, toZ: 1 };
    const ratio = jscadEvaluate(strokes).volumeMm3 / measure(kernel, strokes).volumeMm3;
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05);
  });

  test('a loop keeps its island open, a dot is a dot', () => {
    const [letter] = penned(lettering('O', { heightMm: 5 }), 0.8);
    expect(letter.holes.length).toBe(1);
    const [dot] = penned([[[0, 0]]], 2);
    // Chords 0.005 mm inside a circle of radius 1: a little less than π.
    expect(regionArea(dot)).toBeGreaterThan(Math.PI - 0.005 * 2 * Math.PI);
    expect(regionArea(dot)).toBeLessThan(Math.PI);
    expect(penned([], 1)).toEqual([]);
  });

  test('numbers that are not are refused', () => {
    expect(() => penned(lines, Number.NaN)).toThrow(/NaN wide/);
    expect(() => penned([[[0, Number.NaN]]], 1)).toThrow(/not finite/);
  });
});
