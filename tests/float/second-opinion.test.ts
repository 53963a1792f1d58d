import { expect, test } from 'vitest';
import { immerse } from '../../src/float/immerse.js';
import { immersible } from '../../src/float/immersible.js';
import { spiral } from '../../src/float/tilt.js';
import { dot3 } from '../../src/geometry/vec3.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { type Plane, partsBelow } from '../../src/solid/split.js';
import { box, dice, lureLike } from './solids.js';

test('the mesh kernel cuts off the same volume with the same center', async () => {
  const kernel = await loadKernel();
  const roll = dice(31);
  let checked = 0;
  for (const mesh of [box(40, 20, 10), lureLike(roll, 16).mesh, lureLike(roll, 16).mesh]) {
    const solid = immersible([mesh]);
    const planes = spiral(15).map(
      (up): Plane => ({ up, offset: dot3(up, solid.centroidMm) + 6 * (roll() - 0.5) }),
    );
    const parts = partsBelow(kernel, mesh, planes);
    for (const [i, { up, offset }] of planes.entries()) {
      const cut = immerse(solid, up, offset);
      // The kernel's corners are 32-bit floats: 4e-6 mm at 100 mm.
      expect(Math.abs(cut.volumeMm3 - parts[i].volumeMm3) / solid.volumeMm3).toBeLessThan(1e-6);
      for (let k = 0; k < 3; k++) expect(cut.cbMm[k]).toBeCloseTo(parts[i].centerMm[k], 4);
      checked++;
    }
  }
  expect(checked).toBe(45);
  const [nothing] = partsBelow(kernel, box(10, 10, 10), [{ up: [0, 0, 1], offset: -6 }]);
  expect(nothing.volumeMm3).toBe(0);
});
