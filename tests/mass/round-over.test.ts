import { describe, expect, test } from 'vitest';
import { nominal } from '../../src/blank/nominal.js';
import { halves } from '../../src/body/properties.js';
import { pathPoints, polyline } from '../../src/geometry/arcpath.js';
import { distanceToPiece, type Point2 } from '../../src/geometry/vec.js';
import { distanceTo, roundOver } from '../../src/mass/round-over.js';
import { bar, designOf, MATERIALS, patternOf } from './lures.js';

const RADII = MATERIALS.bits.roundOverMm;

/** A bar in a block that stands over it by an allowance above, below and beyond its ends. */
const inBlock = (half: number, allowanceMm: number, n: number, thicknessMm: number) => {
  const reach = half + allowanceMm;
  const profile = nominal(
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
  return roundOver(
    bar({ b: half, back: half, belly: half, n }),
    { profile, thicknessMm },
    MATERIALS,
  );
};

describe('closed forms: a bar in a square block touches the quarter round on the diagonal', () => {
  // There u = g = s − r·2^(−1/n), half the block less the diagonal’s share, so R = (2 + √2)(s − r·2^(−1/n)).
  test.each([
    [4, 0.2],
    [6, 0.5],
    [12, 1],
  ])('exponent %d, allowance %d mm', (n, allowance) => {
    const s = 10 + allowance;
    const { limitMm } = inBlock(10, allowance, n, 2 * s);
    expect(limitMm).toBeCloseTo((2 + Math.SQRT2) * (s - 10 * 2 ** (-1 / n)), 6);
    expect(limitMm).toBeLessThan(s);
  });

  test('a round rod without allowance takes the whole quarter round: its own radius', () => {
    const { limitMm, bitMm } = inBlock(10, 0, 2, 20);
    expect(limitMm).toBeCloseTo(10, 6);
    expect(bitMm).toBe(10);
  });

  test('half the thickness is the most there is', () => {
    expect(inBlock(10, 3, 2, 26).limitMm).toBe(13);
  });

  test('no bit is small enough: 0', () => {
    const { limitMm, bitMm } = inBlock(10, 0, 12, 20);
    expect(limitMm).toBeCloseTo((2 + Math.SQRT2) * 10 * (1 - 2 ** (-1 / 12)), 6);
    expect(bitMm).toBe(1.5875);
    expect(
      roundOver(
        bar({ b: 10, back: 10, belly: 10, n: 12 }),
        {
          profile: nominal(
            polyline(
              [
                [-50, -10],
                [150, -10],
                [150, 10],
                [-50, 10],
              ],
              true,
            ),
          ),
          thicknessMm: 20,
        },
        { bits: { drillMm: [], roundOverMm: [4, 6] } },
      ).bitMm,
    ).toBe(0);
  });
});

describe.each(['diver', 'slim', 'plain'])('%s', (name) => {
  const { body, blank } = designOf(patternOf(name));
  const found = roundOver(body.shape, blank, MATERIALS);
  const outline = pathPoints(blank.profile.path, 0.001);
  const toOutline = (p: Point2) =>
    Math.min(...outline.map((a, i) => distanceToPiece(p, a, outline[(i + 1) % outline.length])));

  /** How deep a round-over of radius R bites anywhere, by the circle itself, on a coarse grid of the surface. */
  const deepest = (R: number): number => {
    let most = -Infinity;
    for (let i = 1; i < 50; i++) {
      const x = (body.shape.lengthMm * i) / 50;
      for (const [half, sign] of [
        [0, 1],
        [1, -1],
      ] as const) {
        const { b, h, n } = halves(body.shape, x)[half];
        for (let k = 1; k < 40; k++) {
          const y = (b * k) / 40;
          const g = blank.thicknessMm / 2 - y;
          if (g >= R) continue;
          const u = toOutline([x, sign * h * (1 - (y / b) ** n) ** (1 / n)]);
          if (u >= R) continue;
          most = Math.max(most, Math.hypot(R - u, R - g) - R);
        }
      }
    }
    return most;
  };

  test('by brute force: nothing is bitten into at the limit, something a little beyond it', () => {
    expect(found.limitMm).toBeGreaterThan(1);
    expect(deepest(found.limitMm)).toBeLessThan(1e-3); // chords of the outline
    if (found.limitMm < blank.thicknessMm / 2) {
      expect(deepest(1.1 * found.limitMm)).toBeGreaterThan(0);
    }
  });

  test('the bit is the largest that is no larger', () => {
    expect(RADII).toContain(found.bitMm);
    const next = RADII.find((r) => r > found.bitMm) ?? Number.POSITIVE_INFINITY;
    expect(found.bitMm).toBeLessThanOrEqual(found.limitMm);
    expect(next).toBeGreaterThan(found.limitMm);
    expect(found.stationMm).toBeGreaterThan(0);
    expect(found.stationMm).toBeLessThan(body.shape.lengthMm);
  });

  test('distances to arcs and lines, against chords', () => {
    const exact = distanceTo(blank.profile.path);
    for (let i = 0; i < 40; i++) {
      const p: Point2 = [2.5 * i, 10 * Math.sin(i)];
      expect(Math.abs(exact(p) - toOutline(p))).toBeLessThan(2e-3); // chord error 0.001 mm
    }
  });
});
