import { describe, expect, test } from 'vitest';
import { makeBody } from '../../src/body/body.js';
import { type DragForm, dragArea, freeSpeed, netMassG } from '../../src/float/speed.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { unit3 } from '../../src/geometry/vec3.js';
import { ellipsoid } from '../mass/lures.js';

const UP: Point3 = [0, 0, 1];
const FRESH = 998.2;

const formOf = (
  [a, b, c]: readonly [number, number, number],
  lip: DragForm['lip'] = null,
): DragForm => ({ mesh: makeBody(ellipsoid(a, b, c)).mesh, lengthMm: 2 * a, lip });

const tilted = (noseUpDeg: number): Point3 => {
  const angle = (noseUpDeg * Math.PI) / 180;
  return [-Math.sin(angle), 0, Math.cos(angle)];
};

/** The facets of a mesh cast a shadow at most 1e-3 off the smooth one. */
const FACETS = 1e-3;
const near = (got: number, want: number, share = FACETS) =>
  expect(Math.abs(got / want - 1), `${got} for ${want}`).toBeLessThan(share);

describe('an ellipsoid without a lip', () => {
  test('upright: its plan times the coefficient of a cylinder across the flow', () => {
    // Mean breadth π b / 2; slenderness 5 and 10 are rows of the published table.
    for (const [slenderness, coefficient] of [
      [5, 0.74],
      [10, 0.82],
    ]) {
      const a = 50;
      const b = (4 * a) / (Math.PI * slenderness);
      const area = dragArea(formOf([a, b, 12]), UP);
      near(area.middleMm2, coefficient * Math.PI * a * b);
      near(area.breadthMm, (2 * a) / slenderness);
      expect(area.lowMm2 / area.middleMm2).toBeCloseTo(0.75, 12);
      expect(area.highMm2 / area.middleMm2).toBeCloseTo(1.25, 12);
    }
  });

  test('on its side: its side view', () => {
    const b = 9;
    const c = (4 * 50) / (Math.PI * 5);
    near(dragArea(formOf([50, b, c]), [0, 1, 0]).middleMm2, 0.74 * Math.PI * 50 * c);
  });

  test('on end: its front, with the spread of its source', () => {
    const area = dragArea(formOf([50, 9, 12]), [-1, 0, 0]);
    const front = Math.PI * 9 * 12;
    near(area.lowMm2, 0.15 * front);
    near(area.middleMm2, Math.sqrt(0.15 * 0.5) * front);
    near(area.highMm2, 0.5 * front);
  });

  test('aslant: cross-flow part by the cube of the sine, axial part by the cube of the cosine', () => {
    const form = formOf([50, 9, 12]);
    const [level, end] = [dragArea(form, UP), dragArea(form, [-1, 0, 0])];
    const [s, c] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    near(
      dragArea(form, tilted(30)).middleMm2,
      s ** 3 * level.middleMm2 + c ** 3 * end.middleMm2,
      1e-12,
    );
    near(dragArea(form, tilted(-30)).middleMm2, dragArea(form, tilted(30)).middleMm2, 1e-9);
  });

  test('more slender, more drag for its plan; never beyond the table', () => {
    const per = [2, 8, 14, 30].map((slenderness) => {
      const b = (4 * 50) / (Math.PI * slenderness);
      return dragArea(formOf([50, b, 5]), UP).middleMm2 / (Math.PI * 50 * b);
    });
    for (let i = 1; i < per.length; i++) expect(per[i]).toBeGreaterThan(per[i - 1]);
    expect(per[0]).toBeGreaterThan(0.62);
    expect(per[3]).toBeLessThan(1.2);
  });
});

describe('the lip', () => {
  const bare = dragArea(formOf([50, 9, 12]), UP).middleMm2;

  test('is a plate whose normal force is the published one, scaled to the square plate', () => {
    // α between plate and stream, along-stream C_N sin α of the free-streamline table for 2π/(4 + π) at 90°.
    const table: readonly [alphaDeg: number, along: number][] = [
      [20, 0.144841],
      [30, 0.28197],
      [50, 0.57552],
      [90, 0.879802],
    ];
    for (const [alphaDeg, along] of table) {
      const lip = { areaMm2: 400, angleDeg: 90 - alphaDeg };
      const got = dragArea(formOf([50, 9, 12], lip), UP).middleMm2 - bare;
      expect(got).toBeCloseTo((400 * along * 1.17) / 0.879802, 2); // six printed digits of 468 mm²
    }
  });

  test('edge on to the stream it costs nothing', () => {
    const lip = { areaMm2: 400, angleDeg: 90 };
    expect(dragArea(formOf([50, 9, 12], lip), UP).middleMm2).toBeCloseTo(bare, 9);
  });

  test('turns with the lure', () => {
    // It points 40° below the nose: level when the nose is 40° up, upright when it is 50° down.
    const lip = { areaMm2: 400, angleDeg: 40 };
    const [plain, lipped] = [formOf([50, 9, 12]), formOf([50, 9, 12], lip)];
    const by = (trimDeg: number) =>
      dragArea(lipped, tilted(trimDeg)).middleMm2 - dragArea(plain, tilted(trimDeg)).middleMm2;
    expect(by(40)).toBeCloseTo(400 * 1.17, 9);
    expect(by(-50)).toBeCloseTo(0, 9);
  });
});

describe('speed', () => {
  const form = formOf([50, 9, 12], { areaMm2: 400, angleDeg: 40 });
  const area = dragArea(form, unit3([0.1, 0, 1]));

  test('drag carries the net weight', () => {
    const { cmS } = freeSpeed(2, FRESH, area);
    const newton = (FRESH * (cmS / 100) ** 2 * area.middleMm2 * 1e-6) / 2;
    expect(newton).toBeCloseTo(2e-3 * 9.80665, 12);
  });

  test('heavier sinks, lighter rises, alike', () => {
    const [down, up] = [freeSpeed(1.5, FRESH, area), freeSpeed(-1.5, FRESH, area)];
    expect([down.kind, up.kind]).toEqual(['sinks', 'rises']);
    expect(up.cmS).toBe(down.cmS);
  });

  test('goes with the root of the net mass, and its spread brackets it', () => {
    const [one, four] = [freeSpeed(1, FRESH, area), freeSpeed(4, FRESH, area)];
    expect(four.cmS / one.cmS).toBeCloseTo(2, 12);
    expect(one.lowCmS).toBeLessThan(one.cmS);
    expect(one.highCmS).toBeGreaterThan(one.cmS);
    expect(freeSpeed(0, FRESH, area).cmS).toBe(0);
  });

  test('the mass for a speed gives that speed', () => {
    for (const kind of ['rises', 'sinks'] as const) {
      const netG = netMassG({ kind, cmS: 12.5 }, FRESH, area);
      const got = freeSpeed(netG, FRESH, area);
      expect(got.kind).toBe(kind);
      expect(got.cmS).toBeCloseTo(12.5, 12);
    }
  });

  test('tells the Reynolds number of the mean breadth', () => {
    const { reynolds, cmS } = freeSpeed(1, FRESH, area);
    expect(reynolds).toBeCloseTo((cmS * 1e-2 * area.breadthMm * 1e-3) / 1.1386e-6, 6);
    expect(reynolds).toBeGreaterThan(1000);
  });
});
