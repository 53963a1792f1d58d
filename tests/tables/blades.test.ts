import { describe, expect, test } from 'vitest';
import { bladeFor, narrowestOf, turningRadiusMm } from '../../src/tables/blades.js';
import { MATERIALS } from '../mass/lures.js';

const { blades } = MATERIALS;
const INCH = 25.4;

describe('blades', () => {
  // Published charts (shared/references.md 9.1): a blade radius guide and two manuals, inches.
  test.each([
    [1 / 8, [3 / 16, 1 / 8]],
    [3 / 16, [5 / 16, 3 / 8]],
    [1 / 4, [5 / 8, 5 / 8, 5 / 8]],
    [3 / 8, [1.5, 1.25, 1.375]],
    [1 / 2, [2.5, 2.5, 2.5]],
    [5 / 8, [3.75, 4]],
    [3 / 4, [5.5, 5.5, 5.5]],
    [1, [7, 7.625]],
    [1.25, [9.875]],
  ])('%f in turns within what the charts say', (width, radii) => {
    const radius = turningRadiusMm(blades, width * INCH) / INCH;
    expect(radius).toBeGreaterThanOrEqual(Math.min(...radii) - 1e-3);
    expect(radius).toBeLessThanOrEqual(Math.max(...radii) + 1e-3);
  });

  test('from 1/4 to 3/4 in they keep the law 0.39·w² within 3 %, between the rows too', () => {
    for (let w = 6.35; w <= 19.05; w += 0.37)
      expect(Math.abs(turningRadiusMm(blades, w) / (0.39 * w * w) - 1)).toBeLessThan(0.03);
  });

  test('a wider blade never turns tighter', () => {
    let last = 0;
    for (let w = 1; w < 45; w += 0.25) {
      expect(turningRadiusMm(blades, w)).toBeGreaterThan(last);
      last = turningRadiusMm(blades, w);
    }
  });

  test('the widest that turns so tightly', () => {
    expect(bladeFor(blades, 16)?.widthMm).toBe(6.35);
    expect(bladeFor(blades, 15.8)?.widthMm).toBe(4.7625);
    expect(bladeFor(blades, 3)).toBeNull();
    expect(narrowestOf(blades).widthMm).toBe(3.175);
    for (const row of Object.values(blades)) expect(row.source.length).toBeGreaterThan(20);
  });
});
