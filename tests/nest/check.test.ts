import { describe, expect, it } from 'vitest';
import { movedRing, rectRing } from '../../src/geometry/ring.js';
import { boxDistance, distanceBelow, distanceTo, extentOf } from '../../src/nest/apart.js';
import { checkNest } from '../../src/nest/check.js';
import type { NestComplaint } from '../../src/nest/complaint.js';
import type { Nest, NestFace, Placement } from '../../src/nest/nest.js';
import { planNest } from '../../src/nest/plan.js';
import { block, lure, part, RULES, SEARCH } from './outlines.js';

const parts = [part('a', lure(120, 30), 12), part('b', lure(80, 22), 9)];
const blocks = [block('pine', [450, 95], 4, { knots: [{ xMm: 430, yMm: 88, radiusMm: 6 }] })];
const good = planNest(parts, blocks, RULES, SEARCH);

const kinds = (nest: Nest, among = blocks, rules = RULES): NestComplaint['kind'][] => [
  ...new Set(checkNest(nest, parts, among, rules).complaints.map((c) => c.kind)),
];

/** The nest with its first face changed. */
const withFace = (change: (face: NestFace) => Partial<NestFace>): Nest => ({
  ...good,
  faces: good.faces.map((f, i) => (i === 0 ? { ...f, ...change(f) } : f)),
});

const withPlacement = (at: number, change: (p: Placement) => Partial<Placement>): Nest =>
  withFace((f) => ({
    placements: f.placements.map((p, i) => (i === at ? { ...p, ...change(p) } : p)),
  }));

const moved = (p: Placement, x: number, y: number): Placement => ({
  ...p,
  xMm: p.xMm + x,
  yMm: p.yMm + y,
  outline: movedRing({ turnDeg: 0, move: [x, y] }, p.outline),
});

describe('the checker', () => {
  it('is content with a good nest and has measured every pair', () => {
    const check = checkNest(good, parts, blocks, RULES);
    expect(check.complaints).toEqual([]);
    const counts = good.faces.map((f) => f.placements.length);
    expect(Math.max(...counts)).toBeGreaterThan(5);
    expect(check.pairs).toBe(counts.reduce((sum, n) => sum + (n * (n - 1)) / 2, 0));
    expect(check.leastGapMm).toBeGreaterThanOrEqual(RULES.gapMm - 1e-6);
    expect(check.leastGapMm).toBeLessThan(RULES.gapMm + 0.2);
  });

  it('sees an outline moved into the gap, and by how much', () => {
    // An outline in the middle of a nest has a neighbor within 2 mm of the gap on some side.
    const sides = [
      [2, 0],
      [-2, 0],
      [0, 2],
      [0, -2],
    ] as const;
    const gaps = sides
      .flatMap(([x, y]) => {
        const nest = withPlacement(3, (p) => moved(p, x, y));
        return checkNest(nest, parts, blocks, RULES).complaints;
      })
      .filter((c) => c.kind === 'gap');
    expect(gaps.length).toBeGreaterThan(0);
    for (const gap of gaps) {
      expect([gap.a, gap.b]).toContain(3);
      expect(gap.distanceMm).toBeLessThan(RULES.gapMm);
      // Moved by 2 mm, it can not be nearer than the gap less that.
      expect(gap.distanceMm).toBeGreaterThanOrEqual(RULES.gapMm - 2 - 1e-6);
    }
  });

  it('sees one outline wholly inside another', () => {
    const small = part('small', rectRing(0, -2, 20, 2), 2);
    const large = part('large', rectRing(0, -20, 100, 20), 2);
    const on = (p: typeof small, xMm: number, yMm: number): Placement => ({
      part: p.id,
      xMm,
      yMm,
      turnDeg: 0,
      outline: movedRing({ turnDeg: 0, move: [xMm, yMm] }, p.outline),
    });
    const nest: Nest = {
      ...good,
      faces: [
        {
          ...good.faces[0],
          placements: [on(large, 10, 40), on(small, 50, 40)],
        },
      ],
    };
    const { complaints } = checkNest(nest, [small, large], blocks, RULES);
    expect(complaints).toContainEqual(
      expect.objectContaining({ kind: 'gap', a: 0, b: 1, distanceMm: 0 }),
    );
  });

  it('sees a broken margin', () => {
    expect(kinds(withPlacement(0, (p) => moved(p, -1, 0)))).toContain('margin');
  });

  it('sees a knot touched, and one forgotten', () => {
    const { placements } = good.faces[0];
    const [xMm, yMm] = placements[0].outline[0];
    const knots = [{ xMm, yMm: yMm + 1, radiusMm: 3 }];
    const among = [{ ...blocks[0], knots }];
    expect(
      kinds(
        withFace(() => ({ knots })),
        among,
      ),
    ).toContain('knot');
    expect(kinds(withFace(() => ({ knots: [] })))).toContain('block');
  });

  it('sees an outline that is not its part, or not where it says', () => {
    expect(kinds(withPlacement(0, (p) => ({ xMm: p.xMm + 0.01 })))).toEqual(['outline']);
    expect(kinds(withPlacement(0, (p) => ({ turnDeg: p.turnDeg === 0 ? 180 : 0 })))).toEqual([
      'outline',
    ]);
    expect(kinds(withPlacement(0, () => ({ part: 'nobody' })))).toContain('outline');
  });

  it('sees wrong counts', () => {
    const told = (c: Partial<Nest>) => kinds({ ...good, ...c });
    expect(told({ made: { ...good.made, a: good.made.a + 1 } })).toEqual(['count']);
    expect(told({ ordered: { ...good.ordered, a: 1 } })).toEqual(['count']);
    expect(told({ missing: { a: 1 } })).toEqual(['count']);
    expect(told({ stacks: good.stacks + 1 })).toEqual(['count']);
    expect(told({ blocksUsed: { pine: 1 } })).toEqual(['count']);
    expect(kinds(withFace((f) => ({ placements: f.placements.slice(1) })))).toEqual(['count']);
  });

  it('sees timber wrongly told, and bounds that are none', () => {
    const told = (c: Partial<Nest>) => kinds({ ...good, ...c });
    const { timberUsedMm3: used, timberAreaBoundMm3: area } = good;
    expect(told({ timberUsedMm3: used + 1 })).toEqual(['timber']);
    expect(told({ timberBoundMm3: used + 1, timberBoundKind: 'layouts-found' })).toEqual([
      'timber',
    ]);
    expect(told({ timberAreaBoundMm3: good.timberBoundMm3 + 1 })).toEqual(['timber']);
    expect(told({ timberAreaBoundMm3: -1 })).toEqual(['timber']);
    expect(told({ timberBoundMm3: Number.NaN })).toEqual(['timber']);
    expect(told({ timberBoundMm3: area + 1, timberBoundKind: 'every-plan' })).toEqual(['timber']);
  });

  it('sees more blocks than there are, and a stack that is not what it says', () => {
    expect(kinds(good, [{ ...blocks[0], count: 1 }])).toEqual(['blocks']);
    expect(kinds(withFace((f) => ({ layers: f.layers + 1 })))).toContain('stack');
    expect(kinds(withFace((f) => ({ copies: f.copies + 1 })))).toContain('stack');
    expect(kinds(good, blocks, { ...RULES, largestHeightMm: 30 })).toEqual(['stack']);
    expect(kinds(withFace((f) => ({ widthMm: f.widthMm + 5 })))).toContain('block');
    expect(kinds(good, [{ ...blocks[0], thicknessMm: 21 }])).toContain('block');
    expect(kinds(withFace(() => ({ gapMm: 1 })))).toContain('stack');
  });

  it('sees a part sawn from blocks of another thickness', () => {
    const thick = parts.map((p) => ({ ...p, thicknessMm: 21 }));
    const { complaints } = checkNest(good, thick, blocks, RULES);
    expect(new Set(complaints.map((c) => c.kind))).toEqual(new Set(['thickness']));
  });
});

describe('distance by brute force', () => {
  const square = rectRing(0, 0, 10, 10);
  const at = (x: number, y: number) => movedRing({ turnDeg: 0, move: [x, y] }, square);

  it('is that between nearest points, from either side', () => {
    expect(distanceBelow(square, at(13, 14), 99)).toBeCloseTo(5, 12);
    expect(distanceBelow(at(13, 14), square, 99)).toBeCloseTo(5, 12);
    expect(distanceBelow(square, at(13, 2), 99)).toBe(3);
    expect(distanceBelow(square, at(13, 2), 2)).toBe(2);
    expect(distanceBelow(square, at(10, 0), 2)).toBe(0);
  });

  it('is 0 where edges cross without a corner inside, and where one lies inside the other', () => {
    expect(distanceBelow(rectRing(-5, 4, 15, 6), square, 99)).toBe(0);
    expect(distanceBelow(rectRing(4, 4, 6, 6), square, 99)).toBe(0);
    expect(distanceBelow(square, rectRing(4, 4, 6, 6), 99)).toBe(0);
    // Level with corners, the case that fools a careless test.
    expect(distanceBelow(rectRing(2, 0, 8, 10), square, 99)).toBe(0);
  });

  it('to a point, and between boxes', () => {
    expect(distanceTo([13, 14], square)).toBeCloseTo(5, 12);
    expect(distanceTo([5, 5], square)).toBe(0);
    expect(boxDistance(extentOf(square), extentOf(at(13, 14)))).toBeCloseTo(5, 12);
    expect(boxDistance(extentOf(square), extentOf(at(3, 4)))).toBe(0);
  });
});
