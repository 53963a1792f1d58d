import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { insideRing, movedRing, ringBox } from '../../src/geometry/ring.js';
import { distanceToPiece, type Point2 } from '../../src/geometry/vec.js';
import { partLeftOf } from '../../src/nest/apart.js';
import { checkNest } from '../../src/nest/check.js';
import type { NestComplaint } from '../../src/nest/complaint.js';
import { roundFlaw, splitFlaw } from '../../src/nest/flaw.js';
import type { Block, Nest, NestRules, PoorZone, Split } from '../../src/nest/nest.js';
import { planNest } from '../../src/nest/plan.js';
import { flawKey, stackOptions } from '../../src/nest/stack.js';
import { block, drawnOutline, lure, part, RULES, SEARCH } from './outlines.js';

const SEED = 7131;

describe('flaws as polygons', () => {
  it('contain what they stand for, and little more', () => {
    const draw = seededDraws(SEED);
    for (let k = 0; k < 40; k++) {
      const upright = k % 4 === 0;
      const fromMm: Point2 = [100 * draw(), 100 * draw()];
      const toMm: Point2 = upright
        ? [fromMm[0], 100 * draw()]
        : k % 4 === 1
          ? fromMm
          : [100 * draw(), 100 * draw()];
      const split: Split = { fromMm, toMm, widthMm: 1 + 6 * draw() };
      const polygon = splitFlaw(split);
      for (let i = 0; i < 300; i++) {
        const p: Point2 = [120 * draw() - 10, 120 * draw() - 10];
        const off = distanceToPiece(p, fromMm, toMm) / (split.widthMm / 2);
        // A regular polygon of 32 sides stands off its circle by 1/cos(π/32) = 1.00484.
        if (off < 1 - 1e-9) expect(insideRing(p, polygon)).toBe(true);
        if (off > 1.0049) expect(insideRing(p, polygon)).toBe(false);
      }
    }
    const [minX, minY, maxX, maxY] = ringBox(roundFlaw({ xMm: 5, yMm: 6, radiusMm: 2 }));
    expect(minX).toBeLessThanOrEqual(3);
    expect(maxX).toBeGreaterThanOrEqual(7);
    expect(minY).toBeLessThanOrEqual(4);
    expect(maxY).toBeGreaterThanOrEqual(8);
  });
});

/** The nest of one part on blocks, found sound by the checker. */
function planned(blocks: readonly Block[], rules: NestRules = RULES, ordered = 8): Nest {
  const parts = [part('a', lure(120, 30), ordered)];
  const nest = planNest(parts, blocks, rules, SEARCH);
  expect(checkNest(nest, parts, blocks, rules).complaints).toEqual([]);
  return nest;
}

describe('splits', () => {
  it('are touched by nothing: one along the middle leaves the outlines on either side', () => {
    const splits = [{ fromMm: [0, 48], toMm: [300, 48], widthMm: 2 }] as const;
    const nest = planned([block('oak', [300, 96], 9, { splits })]);
    expect(nest.missing).toEqual({});
    for (const { placements } of nest.faces) {
      for (const { outline } of placements) {
        const [, low, , high] = ringBox(outline);
        expect(
          low > 48 + 1 + RULES.gapMm / 2 - 1e-6 || high < 48 - 1 - RULES.gapMm / 2 + 1e-6,
        ).toBe(true);
      }
    }
  });

  it('across a block from edge to edge part it in two: too short on either side, nothing fits', () => {
    const splits = [{ fromMm: [100, 0], toMm: [100, 96], widthMm: 1 }] as const;
    const nest = planned([block('oak', [200, 96], 9, { splits })]);
    expect(nest.faces).toEqual([]);
    expect(nest.obstacles).toContainEqual({ kind: 'knots', part: 'a', blocks: ['oak'] });
  });
});

describe('poor zones', () => {
  // A blank of 120 mm fills a block of 130 mm: its tail may lie on the poor end, its nose may not.
  const end = (xMm: number): PoorZone => ({ xMm, yMm: 20, radiusMm: 20 });
  const turns = (zone: PoorZone, ratio = 0.35): number[] =>
    planned(
      [block('ash', [130, 40], 1, { poorZones: [zone] })],
      { ...RULES, clearNoseRatio: ratio },
      1,
    ).faces.flatMap((f) => f.placements.map((p) => p.turnDeg));

  it('turn the nose to the clear end', () => {
    expect(turns(end(5))).toEqual([180]);
    expect(turns(end(125))).toEqual([0]);
  });

  it('count for nothing when no clear nose is asked for, and like knots when all of it must be clear', () => {
    expect(turns(end(65), 0)).toHaveLength(1);
    expect(turns(end(65))).toEqual([]);
    expect(turns(end(5), 1)).toEqual([]);
  });
});

describe('random faces with splits and poor zones', () => {
  it('keep off them by half the gap', () => {
    const draw = seededDraws(SEED);
    let [outlines, overPoor] = [0, 0];
    for (let k = 0; k < 60; k++) {
      const size = [170 + 180 * draw(), 60 + 60 * draw()] as const;
      const at = (): Point2 => [size[0] * draw(), size[1] * draw()];
      const splits = Array.from({ length: Math.floor(3 * draw()) }, (_, i): Split => {
        const [from, to] = [at(), at()];
        // Some along the grain, some square to it, and one of no length.
        const toMm: Point2 = i === 0 ? [to[0], from[1]] : k % 5 === 0 ? from : [from[0], to[1]];
        return { fromMm: from, toMm: k % 2 ? toMm : to, widthMm: 0.2 + 3 * draw() };
      });
      const poorZones = Array.from({ length: Math.floor(4 * draw()) }, (): PoorZone => {
        const [xMm, yMm] = at();
        return { xMm, yMm, radiusMm: 2 + 20 * draw() };
      });
      const blocks = [block('b', size, 9, { splits, poorZones, marginMm: 5 * draw() })];
      const parts = [part('p', drawnOutline(draw), 8)];
      const rules = { ...RULES, gapMm: 4 * draw(), clearNoseRatio: draw(), layers: 1, tries: 3 };
      const nest = planNest(parts, blocks, rules, SEARCH);
      expect(checkNest(nest, parts, blocks, rules).complaints).toEqual([]);
      for (const { placements } of nest.faces) {
        outlines += placements.length;
        for (const z of poorZones)
          overPoor += placements.filter((p) => insideRing([z.xMm, z.yMm], p.outline)).length;
      }
    }
    expect(outlines).toBeGreaterThan(150);
    // A zone is no knot: tails do lie on some.
    expect(overPoor).toBeGreaterThan(10);
  });
});

describe('the checker on flaws and turns', () => {
  const splits: readonly Split[] = [{ fromMm: [150, 4], toMm: [190, 4], widthMm: 2 }];
  const poorZones: readonly PoorZone[] = [{ xMm: 296, yMm: 90, radiusMm: 6 }];
  const parts = [part('a', lure(120, 30), 4)];
  const blocks = [block('oak', [300, 96], 4, { splits, poorZones })];
  const good = planNest(parts, blocks, RULES, SEARCH);
  const kinds = (nest: Nest, rules = RULES): NestComplaint['kind'][] => [
    ...new Set(checkNest(nest, parts, blocks, rules).complaints.map((c) => c.kind)),
  ];
  const changed = (change: (f: Nest['faces'][number]) => Partial<Nest['faces'][number]>): Nest => ({
    ...good,
    faces: good.faces.map((f) => ({ ...f, ...change(f) })),
  });

  it('is content as it is', () => expect(kinds(good)).toEqual([]));

  it('sees a split that crosses an outline without an end or a corner inside', () => {
    const [minX, minY, , maxY] = ringBox(good.faces[0].placements[0].outline);
    const across = {
      fromMm: [minX + 60, minY - 1],
      toMm: [minX + 60, maxY + 1],
      widthMm: 0.1,
    } as const;
    const nest = changed((f) => ({ splits: [...f.splits, across] }));
    const found = checkNest(nest, parts, blocks, RULES).complaints;
    expect(found).toContainEqual(
      expect.objectContaining({ kind: 'split', a: 0, split: 1, distanceMm: -0.05 }),
    );
  });

  it('sees a nose on a poor zone, and lets a tail lie there', () => {
    const { outline, turnDeg } = good.faces[0].placements[0];
    const [minX, minY, maxX, maxY] = ringBox(outline);
    const yMm = (minY + maxY) / 2;
    const [nose, tail] = turnDeg === 0 ? [minX, maxX] : [maxX, minX];
    const on = (xMm: number) =>
      changed((f) => ({ poorZones: [...f.poorZones, { xMm, yMm, radiusMm: 1 }] }));
    expect(kinds(on(nose))).toEqual(['poor-zone']);
    expect(kinds(on(tail))).toEqual([]);
    expect(kinds(on(nose), { ...RULES, clearNoseRatio: 0 })).toEqual([]);
  });

  it('sees a flaw of a block that its face forgot', () => {
    expect(kinds(changed(() => ({ splits: [] })))).toEqual(['block']);
    expect(kinds(changed(() => ({ poorZones: [] })))).toEqual(['block']);
  });

  it('accepts a tilt within the limit and no more', () => {
    const tilted = (by: number): Nest =>
      changed((f) => ({
        placements: f.placements.slice(0, 1).map((p) => {
          const turnDeg = p.turnDeg + by;
          const at: Point2 = [150, 48];
          const turned = movedRing({ turnDeg, move: [0, 0] }, parts[0].outline);
          const [a, b, c, d] = ringBox(turned);
          const move: Point2 = [at[0] - (a + c) / 2, at[1] - (b + d) / 2];
          return {
            ...p,
            turnDeg,
            xMm: move[0],
            yMm: move[1],
            outline: movedRing({ turnDeg: 0, move }, turned),
          };
        }),
      }));
    const turns = (by: number, largestTiltDeg: number) =>
      kinds(tilted(by), { ...RULES, largestTiltDeg }).filter((k) => k !== 'count');
    expect(turns(3, 3)).toEqual([]);
    expect(turns(-3, 3)).toEqual([]);
    expect(turns(3.01, 3)).toEqual(['turn']);
    expect(turns(90, 5)).toContain('turn');
    expect(turns(1, 0)).toEqual(['turn']);
  });

  it('cuts an outline at an upright line', () => {
    const square: Point2[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(partLeftOf(square, 4)).toEqual([
      [0, 0],
      [4, 0],
      [4, 10],
      [0, 10],
    ]);
    expect(partLeftOf(square, 10)).toEqual(square);
    expect(partLeftOf(square, -1)).toEqual([]);
  });
});

describe('stacks of blocks with flaws', () => {
  it('go together when their flaws are the same, and unite them when not', () => {
    const split: Split = { fromMm: [0, 10], toMm: [50, 10], widthMm: 1 };
    const zone: PoorZone = { xMm: 40, yMm: 40, radiusMm: 5 };
    const [a, b, c] = [
      block('a', [300, 90], 1, { splits: [split] }),
      block('b', [300, 90], 1, { splits: [{ ...split }] }),
      block('c', [300, 90], 1, { poorZones: [zone] }),
    ];
    expect(flawKey(a)).toBe(flawKey(b));
    expect(flawKey(a)).not.toBe(flawKey(c));
    const stock = new Map([a, b, c].map((x) => [x.name, 1]));
    const [alike] = stackOptions([a, b, c], stock, 2);
    expect(alike.from.map((x) => x.name)).toEqual(['a', 'b']);
    expect(alike.flaws).toEqual({ knots: [], splits: [split], poorZones: [] });
    const [mixed] = stackOptions([a, c], stock, 2);
    expect(mixed.flaws).toEqual({ knots: [], splits: [split], poorZones: [zone] });
  });
});
