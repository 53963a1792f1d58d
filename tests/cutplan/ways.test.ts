import { describe, expect, it } from 'vitest';
import { checkCutPlan } from '../../src/cutplan/check.js';
import { lineLength } from '../../src/cutplan/cutplan.js';
import { planCuts } from '../../src/cutplan/plan.js';
import { wallsOf } from '../../src/cutplan/walls.js';
import { polyline } from '../../src/geometry/arcpath.js';
import { seededDraws } from '../../src/geometry/random.js';
import { distanceToPiece, type Point2 } from '../../src/geometry/vec.js';
import { planNest } from '../../src/nest/plan.js';
import { block, drawnOutline, part, RULES, SEARCH } from '../nest/outlines.js';
import { BAND_SAW, box, disc, face, fromRing, MATERIALS, partFrom } from './faces.js';

const { blades } = MATERIALS;
const KERF = BAND_SAW.kerfMm;

/** A trough: walls 10 thick round a hollow 40 wide, open at the top by `mouth`. */
const trough = (mouth: number) =>
  partFrom(
    polyline(
      [
        [0, 0],
        [60, 0],
        [60, 60],
        [30 + mouth / 2, 60],
        [30 + mouth / 2, 50],
        [50, 50],
        [50, 10],
        [10, 10],
        [10, 50],
        [30 - mouth / 2, 50],
        [30 - mouth / 2, 60],
        [0, 60],
      ],
      true,
    ),
  );

describe('ways in', () => {
  it('a disc in the middle of a board: along a tangent or an arc, from the nearer edge', () => {
    const parts = new Map([['d', partFrom(disc(10))]]);
    const f = face([100, 60], 2, parts, [{ part: 'd', at: [50, 30] }]);
    const { plan, problems } = planCuts(f, parts, BAND_SAW, blades);
    expect(problems).toEqual([]);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
    const [path] = plan.entryPaths;
    // No way is shorter than square to the nearer edge: 30 − 10 mm.
    expect(lineLength(path)).toBeGreaterThan(20);
    expect(lineLength(path)).toBeLessThan(20 + 16);
    // It touches along the tangent: square to the radius within one step of the arc, 5 degrees.
    const [before, touch] = [path[path.length - 3], path[path.length - 2]];
    const [dx, dy] = [touch[0] - before[0], touch[1] - before[1]];
    const [rx, ry] = [touch[0] - 50, touch[1] - 30];
    const cos = (dx * rx + dy * ry) / (Math.hypot(dx, dy) * Math.hypot(rx, ry));
    expect(Math.abs(cos)).toBeLessThan(Math.sin((5 * Math.PI) / 180));
    // No bend is tighter than the blade turns (15.875 mm), chords of 5 degrees.
    for (let i = 1; i < path.length - 2; i++) {
      const [a, b, c] = [path[i - 1], path[i], path[i + 1]];
      const turn = Math.abs(
        Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]),
      );
      const radius = Math.min(lineLength([a, b]), lineLength([b, c])) / (2 * Math.sin(turn / 2));
      if (turn > 1e-6 && i > 1) expect(radius).toBeGreaterThan(15.8);
    }
  });

  it('leads into a hollow through its mouth, around the walls', () => {
    const parts = new Map([
      ['u', trough(6)],
      ['b', partFrom(box(10, 10))],
    ]);
    // The mouth faces a wall of wood 2 mm away, so that no straight way leads in.
    const all = new Map([...parts, ['w', partFrom(box(60, 10))]]);
    const f = face([100, 100], 2, all, [
      { part: 'u', at: [20, 10] },
      { part: 'b', at: [45, 30] },
      { part: 'w', at: [20, 72] },
    ]);
    const { plan, problems } = planCuts(f, all, BAND_SAW, blades);
    expect(problems).toEqual([]);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
    // Closed form: 47 mm level along the channel to the mouth's nearer side, then 30 mm down to the
    // box less half a kerf, and the last piece; corners are cut by at most half the channel's play.
    const path = plan.entryPaths[1];
    expect(lineLength(path)).toBeGreaterThan(47 + 30 - KERF);
    expect(lineLength(path)).toBeLessThan(47 + 30 + KERF);
    // The outline inside comes after the one whose cut its way runs along.
    expect(plan.cutOrder.indexOf(1)).toBeGreaterThan(plan.cutOrder.indexOf(0));
  });

  it('a mouth narrower than the kerf: told with the place, for the outline inside and the hollow', () => {
    const parts = new Map([
      ['u', trough(1)],
      ['b', partFrom(box(10, 10))],
    ]);
    const f = face([100, 100], 2, parts, [
      { part: 'u', at: [20, 20] },
      { part: 'b', at: [45, 40] },
    ]);
    const { plan, problems } = planCuts(f, parts, BAND_SAW, blades);
    expect(problems.map((p) => [p.code, p.facts.name])).toEqual([
      ['outline-unreachable', 'u'],
      ['outline-unreachable', 'b'],
    ]);
    const { xMm, yMm } = problems[0].facts as { xMm: number; yMm: number };
    expect(Math.max(Math.abs(xMm - 50), Math.abs(yMm - 50))).toBeLessThanOrEqual(20);
    expect(plan.entryPaths[1]).toEqual([]);
    expect(plan.entryPaths[0].length).toBeGreaterThan(1);
  });

  it('a gap of exactly one kerf lets the blade through', () => {
    const parts = new Map([['b', partFrom(box(20, 10))]]);
    const put = [0, 1, 2, 3, 4].flatMap((i) =>
      [0, 1, 2, 3, 4].map((j) => ({
        part: 'b',
        at: [5 + i * (20 + KERF), 5 + j * (10 + KERF)] as Point2,
      })),
    );
    const f = face([116, 66], KERF, parts, put);
    const { plan, problems } = planCuts(f, parts, BAND_SAW, blades);
    expect(problems).toEqual([]);
    expect(checkCutPlan(f, plan, BAND_SAW)).toEqual([]);
  });

  it('refuses a gap the kerf does not fit', () => {
    const parts = new Map([['b', partFrom(box(20, 10))]]);
    const f = face([100, 50], 1, parts, [{ part: 'b', at: [5, 5] }]);
    expect(() => planCuts(f, parts, BAND_SAW, blades)).toThrow(/kerf/);
  });

  it('moves with the face: mirrored boards have ways as long', () => {
    const parts = new Map([['d', partFrom(disc(8))]]);
    const lengths = (
      [
        [20, 20],
        [80, 20],
        [80, 40],
        [20, 40],
      ] as const
    ).map((at) => {
      const f = face([100, 60], 2, parts, [{ part: 'd', at }]);
      return lineLength(planCuts(f, parts, BAND_SAW, blades).plan.entryPaths[0]);
    });
    // Places tried are 1.5 mm apart round the disc, so mirrored ones differ by a little.
    for (const l of lengths) expect(Math.abs(l - lengths[0])).toBeLessThan(1.5);
  });
});

const SEED = 4711;

describe('random faces', () => {
  it('every outline of 20 random faces is reached and the plan stands up to its judge', () => {
    const draw = seededDraws(SEED);
    let [outlines, through, tilted] = [0, 0, 0];
    for (let k = 0; k < 20; k++) {
      const size = [170 + 330 * draw(), 60 + 100 * draw()] as const;
      const knots = Array.from({ length: Math.floor(3 * draw()) }, () => ({
        xMm: size[0] * draw(),
        yMm: size[1] * draw(),
        radiusMm: 2 + 10 * draw(),
      }));
      const ordered = Array.from({ length: 1 + (k % 2) }, (_, i) =>
        part(`p${i}`, drawnOutline(draw), 20),
      );
      const saw = { ...BAND_SAW, kerfMm: 0.5 + draw() };
      const gapMm = k % 4 === 0 ? saw.kerfMm : saw.kerfMm + 2 * draw();
      const blocks = [block('b', size, 1, { knots, marginMm: 5 * draw() })];
      const rules = {
        ...RULES,
        gapMm,
        largestTiltDeg: 3 * (k % 2),
        layers: 1,
        tries: 2,
        layouts: 0,
        seed: k,
      };
      const nest = planNest(ordered, blocks, rules, SEARCH);
      const parts = new Map(ordered.map((p) => [p.id, fromRing(p.outline)]));
      for (const f of nest.faces) {
        const { plan, problems } = planCuts(f, parts, saw, blades);
        expect(problems).toEqual([]);
        expect(checkCutPlan(f, plan, saw)).toEqual([]);
        outlines += f.placements.length;
        tilted += f.placements.filter((p) => p.turnDeg % 180 !== 0).length;
        through += plan.entryPaths.filter((p) => lineLength(p) > 40).length;
      }
    }
    expect(outlines).toBeGreaterThan(100);
    expect(through).toBeGreaterThan(0);
    expect(tilted).toBeGreaterThan(0);
  });
});

describe('walls', () => {
  it('say the same as every edge measured', () => {
    const draw = seededDraws(99);
    const rings = Array.from({ length: 6 }, (_, i) =>
      drawnOutline(draw).map(([x, y]): Point2 => [x + 90 * (i % 3), y + 50 * Math.floor(i / 3)]),
    );
    const walls = wallsOf(rings, 4);
    let clear = 0;
    for (let k = 0; k < 600; k++) {
      const a: Point2 = [320 * draw() - 20, 140 * draw() - 40];
      const b: Point2 = [a[0] + 60 * (draw() - 0.5), a[1] + 60 * (draw() - 0.5)];
      const least = 3 * draw();
      const edges = rings.flatMap((r) =>
        r.map((p, i) => {
          const q = r[(i + 1) % r.length];
          const turned = (u: Point2, v: Point2, w: Point2) =>
            (v[0] - u[0]) * (w[1] - u[1]) - (v[1] - u[1]) * (w[0] - u[0]) > 0;
          const cross = turned(a, b, p) !== turned(a, b, q) && turned(p, q, a) !== turned(p, q, b);
          return cross
            ? 0
            : Math.min(
                distanceToPiece(p, a, b),
                distanceToPiece(q, a, b),
                distanceToPiece(a, p, q),
                distanceToPiece(b, p, q),
              );
        }),
      );
      const far = Math.min(...edges);
      expect(walls.clear(a, b, least)).toBe(far > least);
      expect(walls.firstMet(a, b) !== null).toBe(far === 0);
      clear += far > least ? 1 : 0;
    }
    expect(clear).toBeGreaterThan(50);
    expect(clear).toBeLessThan(550);
  });

  it('leave out the ring that is excepted', () => {
    const square: Point2[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const walls = wallsOf([square], 4);
    expect(walls.clear([-5, 5], [5, 5], 0.1)).toBe(false);
    expect(walls.clear([-5, 5], [5, 5], 0.1, 0)).toBe(true);
    expect(walls.firstMet([-5, 5], [5, 5])?.share).toBeCloseTo(0.5, 12);
  });
});
