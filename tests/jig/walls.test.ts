import { expect, test } from 'vitest';
import { asRegion } from '../../src/geometry/clip.js';
import { facetTree } from '../../src/geometry/facet-tree.js';
import { ring } from '../../src/geometry/ring.js';
import type { Sunk } from '../../src/jig/letters.js';
import { thinnestWall } from '../../src/jig/walls.js';
import { type Csg, extruded } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { box } from '../solid/shapes.js';

const kernel = await loadKernel();
const trough = (wall: number): Csg => ({
  kind: 'subtract',
  from: box(30, 20, 10),
  parts: [box(30, 20 - 2 * wall, 10, [-5, wall, 4])],
});
const wallOf = (csg: Csg, letters: readonly Sunk[] = []) =>
  thinnestWall(facetTree(evaluate(kernel, csg)), letters, 5);

test('the thinnest wall is found, thicker ones are not told apart', () => {
  expect(wallOf(trough(3))).toBeCloseTo(3, 5);
  expect(wallOf(trough(4.5))).toBeCloseTo(4, 5);
  expect(wallOf(box(30, 20, 10))).toBe(5);
});

test('a sharp edge is not a wall', () => {
  const ramp = ring([
    [0, 0],
    [20, 0],
    [20, 10],
  ]);
  expect(wallOf(extruded([asRegion(ramp)], 0, 30))).toBe(5);
});

test('the bottom of a groove counts, its sides do not', () => {
  const face = {
    name: 'side',
    origin: [0, 0, 0],
    right: [1, 0, 0],
    up: [0, 0, 1],
    out: [0, -1, 0],
  } as const;
  const grooved: Csg = {
    kind: 'subtract',
    from: trough(3),
    // Two grooves 0.6 deep with 0.8 mm of plastic between them.
    parts: [box(2, 1.6, 3, [10, -1, 5]), box(2, 1.6, 3, [12.8, -1, 5])],
  };
  const letters: Sunk[] = [
    {
      face,
      lines: ['II'],
      text: 'II',
      heightMm: 3,
      depthMm: 0.6,
      box: { left: 10, bottom: 5, right: 14.8, top: 8 },
    },
  ];
  expect(wallOf(grooved, letters)).toBeCloseTo(2.4, 5);
  expect(wallOf(grooved)).toBeCloseTo(0.8, 5);
});
