import { expect, test } from 'vitest';
import { meshVolume, outset } from '../../src/geometry/mesh.js';
import { checkJig } from '../../src/jig/check.js';
import { checkCradle } from '../../src/jig/sanding-cradle/check.js';
import { type SandingCradle, sandingCradle } from '../../src/jig/sanding-cradle/make.js';
import type { SandingCradleSetup } from '../../src/jig/sanding-cradle/setup.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { box } from '../solid/shapes.js';
import { drawnWorks, setups, shippedWork } from './works.js';

const kernel = await loadKernel();
const setup = setups.byKind['sanding-cradle'] as SandingCradleSetup;
const skerry = shippedWork('skerry');
const made = (work = skerry, changed: Partial<SandingCradleSetup> = {}): SandingCradle => {
  const { jigs, problems } = sandingCradle(kernel, work, { ...setup, ...changed });
  if (jigs.length === 0) throw new Error(JSON.stringify(problems));
  return jigs[0];
};
const flaws = (jig: SandingCradle, work = skerry, asked = setup) => [
  ...checkJig(kernel, jig, work).flaws,
  ...checkCradle(kernel, jig, work, asked).flaws,
];

test('drawn patterns: the cradle passes every check', () => {
  const works = drawnWorks(6, 12);
  expect(works.length).toBe(12);
  for (const work of works) expect(flaws(made(work), work), work.blank.name).toEqual([]);
});

test('the body lies as deep as asked, to the centerline at most', () => {
  const half = 9.5; // mm, the widest half-breadth in the pattern's table
  expect(made().depthMm).toBeCloseTo(0.75 * half, 2);
  const deep = made(skerry, { depthRatio: 1 });
  expect(deep.sizeMm[2]).toBeCloseTo(setup.floorMm + setup.liningMm + half, 2);
  expect(flaws(deep, skerry, { ...setup, depthRatio: 1 })).toEqual([]);
});

test('a thicker lining than there is room for, and a body of another size, are seen', () => {
  const codes = flaws(made(), skerry, { ...setup, liningMm: 1.5 }).map((f) => f.code);
  expect(codes).toContain('cradle-tight');
  expect(codes).toContain('cradle-floor');
  const larger = shippedWork('skerry', { scaleRatio: 1.3 });
  expect(flaws(made(), larger).map((f) => f.code)).toContain('blank-cannot-move');
});

test('facets moved out by a distance: those of a box by no less and at most three times it, a body grows by area times distance', () => {
  const cube = outset(evaluate(kernel, box(10, 10, 10, [0, 0, 0])), 0.5);
  expect(cube.positions.length).toBe(24);
  for (const v of cube.positions) {
    const out = v < 5 ? 0 - v : v - 10;
    expect(out).toBeGreaterThan(0.5 - 1e-9);
    expect(out).toBeLessThanOrEqual(1.5);
  }
  const { mesh, properties } = skerry.body;
  const grown = meshVolume(outset(mesh, 0.01)) - meshVolume(mesh);
  expect(grown / (0.01 * properties.areaMm2)).toBeCloseTo(1, 2);
});
