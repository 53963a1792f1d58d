import { describe, expect, it } from 'vitest';
import { checkCutPlan } from '../../src/cutplan/check.js';
import { lineLength } from '../../src/cutplan/cutplan.js';
import { shortRound, travelOf } from '../../src/cutplan/order.js';
import { HANDY_LENGTH_MM } from '../../src/cutplan/parting.js';
import { planCuts, sawProblems } from '../../src/cutplan/plan.js';
import { polyline } from '../../src/geometry/arcpath.js';
import { seededDraws } from '../../src/geometry/random.js';
import { distance, type Point2 } from '../../src/geometry/vec.js';
import { turningRadiusMm } from '../../src/tables/blades.js';
import { BAND_SAW, box, dished, face, MATERIALS, type Put, partFrom } from './faces.js';

const { blades } = MATERIALS;

describe('parting cuts', () => {
  const parts = new Map([['b', partFrom(box(90, 20))]]);
  const rows = (count: number, step: number, lean = 0): Put[] =>
    [0, 1].flatMap((j) =>
      Array.from(
        { length: count },
        (_, i): Put => ({
          part: 'b',
          at: [5 + i * step + (j === 1 ? lean : 0), 5 + j * 30],
        }),
      ),
    );

  it('straight between columns, as few as leave no piece longer than is handy', () => {
    const f = face([1000, 60], 2, parts, rows(10, 99));
    const { plan } = planCuts(f, parts, BAND_SAW, blades);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
    // Three columns of 99 mm a piece: cuts half way between them, at 3, 6 and 9 columns.
    expect(plan.partingCuts.map(([[low], [high]]) => [low, high])).toEqual(
      [3, 6, 9].map((n) => [n * 99 + 0.5, n * 99 + 0.5]),
    );
    for (const piece of plan.pieces) expect(piece.lengthMm).toBeLessThanOrEqual(HANDY_LENGTH_MM);
    expect(plan.pieces.map((p) => p.placements.length)).toEqual([6, 6, 6, 2]);
    // Piece by piece, from left to right.
    const pieceOf = (i: number) => plan.pieces.findIndex((p) => p.placements.includes(i));
    const order = plan.cutOrder.map(pieceOf);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('lean where the columns do', () => {
    // 15 mm between boards 20 mm high, 14 mm over in 30 mm up: an upright cut would meet the next row.
    const f = face([660, 60], 2, parts, rows(6, 105, 14));
    const { plan } = planCuts(f, parts, BAND_SAW, blades);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
    expect(plan.partingCuts.length).toBe(2);
    for (const [[low], [high]] of plan.partingCuts) expect(high - low).toBeGreaterThan(2);
  });

  it('bend once where a row of upright boards lies under one of leaning boards', () => {
    // Gaps of 4 mm: over 30 mm the lower ones let a lean of 0.09 through, the upper ones 0.31 to 0.49.
    const leaning = polyline(
      [
        [0, 0],
        [96, 0],
        [108, 30],
        [12, 30],
      ],
      true,
    );
    const two = new Map([
      ['u', partFrom(box(96, 30))],
      ['l', partFrom(leaning)],
    ]);
    const put = Array.from({ length: 6 }, (_, i): Put[] => [
      { part: 'u', at: [5 + 100 * i, 5] },
      { part: 'l', at: [6 + 100 * i, 37] },
    ]).flat();
    const f = face([640, 72], 2, two, put);
    const { plan } = planCuts(f, two, BAND_SAW, blades);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
    expect(plan.partingCuts).toHaveLength(2);
    for (const [low, bend, high] of plan.partingCuts) {
      const lower = (bend[0] - low[0]) / (bend[1] - low[1]);
      const upper = (high[0] - bend[0]) / (high[1] - bend[1]);
      expect(Math.abs(lower)).toBeLessThan(0.1);
      expect(upper).toBeGreaterThan(0.3);
      expect(upper - lower).toBeLessThanOrEqual(0.5);
    }
    for (const piece of plan.pieces) expect(piece.lengthMm).toBeLessThanOrEqual(HANDY_LENGTH_MM);
  });

  it('none through a bond of bricks, and none that only trims an end', () => {
    const f = face([640, 60], 2, parts, rows(6, 93, 45));
    const { plan } = planCuts(f, parts, BAND_SAW, blades);
    expect(plan.partingCuts).toEqual([]);
    expect(plan.pieces).toEqual([{ placements: [...f.placements.keys()], lengthMm: 640 }]);
  });

  it('sawn length is outlines, ways in and parting cuts', () => {
    const f = face([400, 60], 2, parts, rows(4, 99));
    const { plan } = planCuts(f, parts, BAND_SAW, blades);
    const lines = [...plan.entryPaths, ...plan.partingCuts].map(lineLength);
    expect(plan.sawnMm).toBeCloseTo(8 * 220 + lines.reduce((a, b) => a + b, 0), 9);
  });
});

describe('relief cuts', () => {
  const bladeWidthMm = 12.7;
  const radius = 25;
  const limit = turningRadiusMm(blades, bladeWidthMm);
  const parts = new Map([['d', partFrom(dished(120, 40, radius, 15))]]);
  const f = face([200, 100], 2, parts, [{ part: 'd', at: [40, 20] }]);

  it('so far apart that the blade has its play: w·√(r/R), from lip to line', () => {
    const saw = { ...BAND_SAW, bladeWidthMm };
    const { plan } = planCuts(f, parts, saw, blades);
    expect(checkCutPlan(f, plan, saw)).toEqual([]);
    const arc = 2 * radius * Math.acos(1 - 15 / radius);
    const count = Math.ceil(arc / (bladeWidthMm * Math.sqrt(radius / limit)));
    // Those at the lips are no longer than the kerf and fall away.
    expect(plan.reliefCuts.length).toBeGreaterThanOrEqual(count - 3);
    expect(plan.reliefCuts.length).toBeLessThanOrEqual(count + 1);
    const center: Point2 = [100, 20 + 40 + radius - 15];
    for (const { path } of plan.reliefCuts) {
      const [mouth, end] = path;
      expect(mouth[1]).toBeCloseTo(60, 6); // the line from lip to lip
      expect(distance(end, center)).toBeCloseTo(radius, 6);
      expect(lineLength(path)).toBeGreaterThanOrEqual(saw.kerfMm);
    }
    const ends = plan.reliefCuts.map((r) => r.path[1]);
    for (let k = 1; k < ends.length; k++)
      expect(distance(ends[k], ends[k - 1])).toBeLessThanOrEqual(
        bladeWidthMm * Math.sqrt(radius / limit),
      );
  });

  it('none for a blade that turns, and none where the width is not told', () => {
    for (const width of [6.35, null]) {
      const { plan } = planCuts(f, parts, { ...BAND_SAW, bladeWidthMm: width }, blades);
      expect(plan.reliefCuts).toEqual([]);
    }
  });

  it('stop short of a neighbor that lies in the hollow', () => {
    const two = new Map([...parts, ['b', partFrom(box(16, 30))]]);
    const g = face([200, 100], 2, two, [
      { part: 'd', at: [40, 20] },
      { part: 'b', at: [92, 50] },
    ]);
    const saw = { ...BAND_SAW, bladeWidthMm };
    const { plan } = planCuts(g, two, saw, blades);
    expect(checkCutPlan(g, plan, saw)).toEqual([]);
    expect(plan.reliefCuts.some(({ path }) => path[0][1] < 59)).toBe(true);
  });
});

describe('what a saw can not make', () => {
  const told = (radius: number, bladeWidthMm: number) =>
    sawProblems(
      'dip',
      partFrom(dished(120, 40, radius, radius)),
      { ...BAND_SAW, bladeWidthMm },
      blades,
    );

  it('a hollow tighter than the blade turns names one that does', () => {
    expect(told(20, 6.35)).toEqual([]);
    const [p] = told(20, 12.7);
    expect([p.code, p.facts.narrowerMm]).toEqual(['blade-too-wide', 6.35]);
    expect(p.facts.radiusMm).toBeCloseTo(20, 9);
  });

  it('a hollow that no blade turns is an error with place, radius and limit', () => {
    const [p] = told(3, 6.35);
    expect(p.code).toBe('hollow-too-tight-for-saw');
    expect(p.facts).toMatchObject({ name: 'dip', narrowestMm: 3.175, limitMm: 3.97 });
    expect(p.facts.stationMm).toBeCloseTo(63, 9);
  });

  it('a closed opening is told, but not for a laser', () => {
    const part = {
      ...partFrom(box(50, 20)),
      openings: [{ center: [25, 10] as const, radius: 3 }],
    };
    expect(
      sawProblems('b', part, BAND_SAW, blades).map((p) => [p.code, p.facts.diameterMm]),
    ).toEqual([['opening-needs-threading', 6]]);
    expect(sawProblems('b', part, { ...BAND_SAW, guidance: 'follows' }, blades)).toEqual([]);
  });
});

describe('the round', () => {
  const permutations = (n: number): number[][] =>
    n === 0
      ? [[]]
      : permutations(n - 1).flatMap((p) =>
          Array.from({ length: n }, (_, k) => [...p.slice(0, k), n - 1, ...p.slice(k)]),
        );

  it('is near the best of all orders, keeps what comes first first, and holds each stop once', () => {
    const draw = seededDraws(7);
    const ratios = Array.from({ length: 30 }, () => {
      const stops = Array.from({ length: 6 }, () => {
        const start: Point2 = [100 * draw(), 100 * draw()];
        return { start, end: start };
      });
      const after = stops.map((_, i) => (i > 0 && draw() < 0.3 ? [Math.floor(i * draw())] : []));
      const round = { from: [0, 0] as const, stops, after };
      const order = shortRound(round);
      const keeps = (o: readonly number[]) =>
        after.every((all, i) => all.every((j) => o.indexOf(j) < o.indexOf(i)));
      expect([...order].sort()).toEqual([0, 1, 2, 3, 4, 5]);
      expect(keeps(order)).toBe(true);
      const best = Math.min(
        ...permutations(6)
          .filter(keeps)
          .map((o) => travelOf(round, o)),
      );
      return travelOf(round, order) / best;
    });
    // A local search on six stops: never more than a third longer, on average within 5 %.
    expect(Math.max(...ratios)).toBeLessThan(4 / 3);
    expect(ratios.reduce((a, b) => a + b, 0) / ratios.length).toBeLessThan(1.05);
  });

  it('a circle of what comes first does not hang it', () => {
    const at = (x: number) => ({ start: [x, 0] as const, end: [x, 0] as const });
    const round = { from: [0, 0] as const, stops: [at(1), at(2)], after: [[1], [0]] };
    expect(shortRound(round).sort()).toEqual([0, 1]);
  });
});

describe('the judge', () => {
  const parts = new Map([
    ['b', partFrom(box(90, 20))],
    [
      't',
      partFrom(
        polyline(
          [
            [0, 0],
            [30, 0],
            [15, 20],
          ],
          true,
        ),
      ),
    ],
  ]);
  const f = face([400, 60], 2, parts, [
    { part: 'b', at: [5, 5] },
    { part: 'b', at: [205, 5] },
    { part: 't', at: [305, 5] },
    { part: 't', at: [5, 32] },
  ]);
  const { plan } = planCuts(f, parts, BAND_SAW, blades);
  const kinds = (damaged: Partial<typeof plan>) =>
    [...new Set(checkCutPlan(f, { ...plan, ...damaged }, BAND_SAW).map((c) => c.kind))].sort();
  const entries = (i: number, path: readonly Point2[]) =>
    plan.entryPaths.map((p, k) => (k === i ? path : p));

  it('finds nothing in a good plan', () => {
    expect(kinds({})).toEqual([]);
    expect(plan.partingCuts).toHaveLength(1);
  });

  it.each<[string, () => Partial<typeof plan>, string[]]>([
    ['an outline twice in the order', () => ({ cutOrder: [0, 0, 1, 2] }), ['order']],
    ['a way too few', () => ({ entryPaths: plan.entryPaths.slice(1) }), ['entries']],
    [
      'a way that begins inside the block',
      () => ({
        entryPaths: entries(0, [
          [10, 3],
          [10, 5],
        ]),
      }),
      ['start'],
    ],
    [
      'a way that ends short of its outline',
      () => ({
        entryPaths: entries(0, [
          [10, 0],
          [10, 2],
        ]),
      }),
      ['end'],
    ],
    [
      'a way through another outline',
      () => ({
        entryPaths: entries(3, [
          [20, 0],
          [20, 31.4],
          [20, 32],
        ]),
      }),
      ['near'],
    ],
    [
      'a parting cut through an outline',
      () => ({
        partingCuts: [
          [
            [50, 0],
            [50, 60],
          ],
        ],
      }),
      ['near', 'pieces'],
    ],
    [
      'a parting cut that stops half way',
      () => ({
        partingCuts: [
          [
            [150, 0],
            [150, 30],
          ],
        ],
      }),
      ['parting', 'pieces'],
    ],
    [
      'pieces told wrongly',
      () => ({ pieces: plan.pieces.map((p) => ({ ...p, placements: [] })) }),
      ['pieces'],
    ],
    [
      'a relief cut into a neighbor',
      () => ({
        reliefCuts: [
          {
            placement: 0,
            path: [
              [20, 40],
              [20, 25],
            ],
          },
        ],
      }),
      ['near'],
    ],
  ])('%s', (_, damage, expected) => {
    expect(kinds(damage())).toEqual(expected);
  });
});
