import { describe, expect, test } from 'vitest';
import { nominal } from '../../src/blank/nominal.js';
import { alongAt, edgesOf } from '../../src/gauge/edge.js';
import { roundOverMap } from '../../src/gauge/round-over-map.js';
import { pathLength, polyline } from '../../src/geometry/arcpath.js';
import { roundOver } from '../../src/mass/round-over.js';
import { bar, designOf, MATERIALS, patternOf } from '../mass/lures.js';

describe.each(['diver', 'slim', 'plain'])('%s', (name) => {
  const { pattern, body, blank } = designOf(patternOf(name));
  const map = roundOverMap(body.shape, blank, pattern.sandingAllowanceMm);

  // The limit is searched over the whole surface by its distance to the outline, the map edge place by edge place.
  test('the least of the map is the limit of the whole lure', () => {
    const { limitMm } = roundOver(body.shape, blank, MATERIALS);
    const least = Math.min(map.back.least.radiusMm, map.belly.least.radiusMm);
    expect(Math.abs(least - limitMm)).toBeLessThan(2e-3);
    for (const edge of [map.back, map.belly])
      for (const { radiusMm } of edge.places) expect(radiusMm).toBeGreaterThan(limitMm - 1e-4);
  });

  test('both edges together are the outline, nose to tail', () => {
    const whole = pathLength(blank.profile.path);
    expect(map.back.lengthMm + map.belly.lengthMm).toBeCloseTo(whole, 6);
    for (const { places } of [map.back, map.belly]) {
      expect(places[0].stationMm).toBeCloseTo(-pattern.sandingAllowanceMm, 2);
      expect(places[places.length - 1].stationMm).toBeCloseTo(
        pattern.lengthMm + pattern.sandingAllowanceMm,
        2,
      );
    }
  });

  test('stations are found again along the edge', () => {
    const edges = edgesOf(blank.profile.path);
    for (const { alongMm, stationMm } of map.belly.places.slice(10, 80))
      expect(alongAt(edges.belly, stationMm)).toBeCloseTo(alongMm, 4);
  });
});

describe('closed forms: a bar in a square block', () => {
  const block = (reach: number) =>
    nominal(
      polyline(
        [
          [-50, -reach],
          [150, -reach],
          [150, reach],
          [-50, reach],
        ],
        true,
      ),
    );

  // On the diagonal u = g = s − r·2^(−1/n), so R = (2 + √2)(s − r·2^(−1/n)).
  test.each([
    [4, 0.2],
    [6, 0.5],
    [12, 1],
  ])('exponent %d, allowance %d mm', (n, allowance) => {
    const s = 10 + allowance;
    const shape = bar({ b: 10, back: 10, belly: 10, n });
    const map = roundOverMap(shape, { profile: block(s), thicknessMm: 2 * s }, allowance);
    const want = (2 + Math.SQRT2) * (s - 10 * 2 ** (-1 / n));
    const inner = map.back.places.filter((p) => p.stationMm > 1 && p.stationMm < 99);
    expect(inner.length).toBeGreaterThan(90);
    for (const { radiusMm, flatMm, sideMm } of inner) {
      expect(flatMm).toBeCloseTo(2 * (s - 10 * 2 ** (-1 / n)), 5);
      expect(radiusMm).toBeCloseTo(want, 5);
      expect(sideMm).toBeCloseTo(allowance, 9);
    }
  });

  test('half the thickness is the most there is', () => {
    const shape = bar({ b: 10, back: 10, belly: 10 });
    const map = roundOverMap(shape, { profile: block(13), thicknessMm: 26 }, 3);
    expect(map.belly.least.radiusMm).toBe(13);
  });
});
