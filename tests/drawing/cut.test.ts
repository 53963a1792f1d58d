import { describe, expect, test } from 'vitest';
import { nominal } from '../../src/blank/nominal.js';
import { checkCuts, cutPart, gapMm, type NominalPart } from '../../src/drawing/cut.js';
import type { ReadyCut } from '../../src/drawing/drawing.js';
import { arcOf, pathArea, pathLength, polyline, segmentsOf } from '../../src/geometry/arcpath.js';
import type { Cutter } from '../../src/pattern/run.js';

const saw: Cutter = {
  guidance: 'steered',
  kerfMm: 1.2,
  wanderMm: 0.8,
  bladeWidthMm: null,
  cutsLipSlot: false,
};
const laser: Cutter = {
  guidance: 'follows',
  kerfMm: 0.2,
  wanderMm: 0,
  bladeWidthMm: null,
  cutsLipSlot: true,
};

/** 40 × 20 with a notch 2 wide and 8 deep and a hole of 4. */
const plate: NominalPart = {
  name: 'plate',
  outline: nominal(
    polyline(
      [
        [0, 0],
        [18, 0],
        [18, 8],
        [20, 8],
        [20, 0],
        [40, 0],
        [40, 20],
        [0, 20],
      ],
      true,
    ),
  ),
  slotMm: 2,
  openings: [{ center: [30, 10], radius: 2 }],
};
const outlineOf = (cuts: readonly ReadyCut[]) => {
  const [path] = cuts.flatMap((c) => (c.shape.kind === 'path' ? [c.shape.path] : []));
  return path;
};

describe('what lies between outlines', () => {
  test('steered: kerf and wander; with a web each outline has its own cut', () => {
    expect(gapMm(saw, 0)).toBe(2);
    expect(gapMm(saw, 3)).toBe(7);
  });
  test('follows: kerf alone, no wander', () => {
    expect(gapMm(laser, 0)).toBe(0.2);
    expect(gapMm({ ...laser, wanderMm: 9 }, 1)).toBeCloseTo(1.4, 12);
  });
});

describe('compensation', () => {
  test('a steered cut is the line itself', () => {
    const { cuts, problems } = cutPart(plate, saw, ['saw']);
    expect(problems).toEqual([]);
    expect(outlineOf(cuts)).toEqual(plate.outline.path);
  });

  // A published kerf exercise: a part of 2.0 × 4.0 comes out 1.8 × 3.8 on a 0.2 mm kerf unless it
  // is drawn 2.2 × 4.2 (a laser service's page on kerf width).
  test('2.0 × 4.0 becomes 2.2 × 4.2 for a kerf of 0.2', () => {
    const part = {
      name: 'p',
      outline: nominal(
        polyline(
          [
            [0, 0],
            [2, 0],
            [2, 4],
            [0, 4],
          ],
          true,
        ),
      ),
      slotMm: null,
      openings: [],
    };
    const path = outlineOf(cutPart(part, laser, ['saw']).cuts);
    const xs = path.vertices.map((v) => v.x);
    const ys = path.vertices.map((v) => v.y);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(2.2, 12);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(4.2, 12);
  });

  test('outline grows by Steiner at convex corners, as arcs; the notch and the hole shrink', () => {
    const { cuts } = cutPart(plate, laser, ['saw']);
    const path = outlineOf(cuts);
    // A + P·d + 6 corners of πd²/4 − 2 reflex corners of d².
    const d = 0.1;
    const grown =
      pathArea(plate.outline.path) +
      pathLength(plate.outline.path) * d +
      (6 / 4) * Math.PI * d * d -
      2 * d * d;
    expect(pathArea(path)).toBeCloseTo(grown, 9);
    const arcs = segmentsOf(path).filter((s) => s.bulge !== 0);
    expect(arcs).toHaveLength(6);
    for (const a of arcs) expect(arcOf(a).radius).toBeCloseTo(d, 9);
    expect(cuts.map((c) => c.layer)).toEqual(['CUT_INSIDE', 'CUT_OUTSIDE']);
    const [hole] = cuts;
    expect(hole.shape.kind === 'circle' && hole.shape.circle.radius).toBeCloseTo(1.9, 12);
  });

  test('a cut path cannot be compensated again: the types differ', () => {
    const { cuts } = cutPart(plate, laser, ['saw']);
    // @ts-expect-error a ready cut is not nominal geometry
    const again: NominalPart = { ...plate, outline: cuts[1] };
    expect(again).toBeDefined();
  });
});

describe('what cannot be cut', () => {
  test('a slot no wider than the kerf, an opening no larger: with numbers', () => {
    const wide = { ...laser, kerfMm: 2 };
    expect(cutPart(plate, wide, ['saw']).problems).toEqual([
      expect.objectContaining({
        code: 'slot-narrower-than-kerf',
        path: ['saw', 'kerfMm'],
        facts: expect.objectContaining({ slotMm: 2, kerfMm: 2 }),
      }),
    ]);
    const small = {
      ...plate,
      slotMm: null,
      openings: [{ center: [30, 10] as const, radius: 0.05 }],
    };
    expect(cutPart(small, laser, ['saw']).problems.map((p) => p.code)).toEqual([
      'opening-vanishes',
    ]);
  });
});

describe('the check', () => {
  const { cuts } = cutPart(plate, laser, ['saw']);
  test('is content with what was made', () => expect(checkCuts(plate, laser, cuts)).toEqual([]));
  test('complains of a path that was compensated to the wrong side, twice, or not at all', () => {
    for (const by of [-1, 0, 2]) {
      const wrong = cutPart(
        plate,
        { ...laser, guidance: by === 0 ? 'steered' : 'follows', kerfMm: Math.abs(by) * 0.2 || 0.2 },
        ['saw'],
      ).cuts;
      const used =
        by === -1
          ? wrong.map((c) =>
              c.shape.kind === 'path'
                ? {
                    ...c,
                    shape: {
                      kind: 'path' as const,
                      path: polyline(
                        [
                          [0.1, 0.1],
                          [39.9, 0.1],
                          [39.9, 19.9],
                          [0.1, 19.9],
                        ],
                        true,
                      ),
                    },
                  }
                : c,
            )
          : wrong;
      expect(checkCuts(plate, laser, used).length).toBeGreaterThan(0);
    }
  });
  test('complains of a hole that was left as it is, and of a missing outline', () => {
    const whole = cuts.map(
      (c): ReadyCut =>
        c.shape.kind === 'circle'
          ? { ...c, shape: { kind: 'circle', circle: plate.openings[0] } }
          : c,
    );
    expect(checkCuts(plate, laser, whole).join()).toContain('openings');
    expect(checkCuts(plate, laser, cuts.slice(0, 1)).join()).toContain('0 outlines');
  });
});
