/** The way out, facet by facet. */
import { describe, expect, test } from 'vitest';
import { facetTree } from '../../../src/geometry/facet-tree.js';
import { seededDraws } from '../../../src/geometry/random.js';
import type { Point3 } from '../../../src/geometry/vec.js';
import { along3, unit3 } from '../../../src/geometry/vec3.js';
import { blockedMm } from '../../../src/jig/proof/passage.js';
import { type Csg, movedBy } from '../../../src/solid/csg.js';
import { evaluate } from '../../../src/solid/evaluate.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { sharedVolume } from '../../../src/solid/measure.js';
import { translation } from '../../../src/solid/placement.js';
import { box, through } from '../../solid/shapes.js';

const kernel = await loadKernel();
const facets = (csg: Csg) => facetTree(evaluate(kernel, csg));
const blocked = (jig: Csg, work: Csg, way: Point3) => blockedMm(facets(jig), facets(work), way);
const UP: Point3 = [0, 0, 1];
const trough: Csg = {
  kind: 'subtract',
  from: box(40, 20, 15),
  parts: [box(32, 12, 12, [4, 4, 4])],
};
const block = box(31.9, 11.9, 14, [4.05, 4.05, 4.05]);

test('out of a trough upward, and no other way', () => {
  expect(blocked(trough, block, UP)).toBe(0);
  expect(blocked(trough, block, [0, 0, -1])).toBeGreaterThan(4);
  expect(blocked(trough, block, [1, 0, 0])).toBeGreaterThan(4);
  expect(blocked(trough, block, unit3([0.02, 0, 1]))).toBeGreaterThan(0);
});

describe('what stands in the way', () => {
  const withPart = (part: Csg): Csg => ({ kind: 'union', parts: [trough, part] });

  test('a beam high over it: from its top to the block’s underside', () => {
    const beam = box(3, 20, 5, [20, 0, 30]);
    expect(blocked(withPart(beam), block, UP)).toBeCloseTo(35 - 4.05, 5);
  });

  test('a lip that hangs a fifth of a millimeter over the edge', () => {
    const lip = box(10, 0.2, 1, [12, 3.84, 14]);
    expect(blocked(withPart(lip), block, UP)).toBe(0);
    const over = box(10, 0.41, 1, [12, 3.84, 18.5]);
    expect(blocked(withPart(over), block, UP)).toBeGreaterThan(0);
  });
});

test('bored blocks anyhow beside each other: clear if and only if the kernel finds no overlap on the way', () => {
  const one: Csg = { kind: 'subtract', from: box(20, 14, 10), parts: [through(3)] };
  const draw = seededDraws(5);
  const counts = { clear: 0, blocked: 0, grazed: 0 };
  const steps = 45;
  for (let i = 0; i < 50; i++) {
    const at: Point3 = [70 * draw() - 25, 54 * draw() - 20, 50 * draw() - 20];
    const way = unit3([draw() - 0.5, draw() - 0.5, draw() - 0.5]);
    const moving = (k: number) => {
      const [x, y, z] = along3(at, (90 * k) / steps, way);
      return movedBy(translation(x, y, z), box(8, 8, 8));
    };
    if (sharedVolume(kernel, one, moving(0)) > 0) continue;
    const meets = Array.from({ length: steps + 1 }, (_, k) => k).some(
      (k) => sharedVolume(kernel, one, moving(k)) > 1e-3,
    );
    const isBlocked = blocked(one, moving(0), way) > 0;
    if (meets) expect(isBlocked, `draw ${i}`).toBe(true);
    // Between two steps of 2 mm the kernel can miss a corner.
    counts[meets ? 'blocked' : isBlocked ? 'grazed' : 'clear']++;
  }
  expect(counts.clear).toBeGreaterThan(5);
  expect(counts.blocked).toBeGreaterThan(5);
  expect(counts.grazed).toBeLessThan(3);
});
