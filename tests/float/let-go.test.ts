import { describe, expect, test } from 'vitest';
import { makeBody } from '../../src/body/body.js';
import { addedMass, type Hanging, letGo, type Outside } from '../../src/float/let-go.js';
import { type DragForm, dragArea, freeSpeed } from '../../src/float/speed.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { ellipsoid } from '../mass/lures.js';

const FRESH = 998.2;
const [A, B, C] = [50, 9, 12];
const volumeMm3 = (4 / 3) * Math.PI * A * B * C;
const wholeG = volumeMm3 * FRESH * 1e-6;
const mesh = makeBody(ellipsoid(A, B, C)).mesh;

const outside = (lip: DragForm['lip'] = null): Outside => ({
  drag: { mesh, lengthMm: 2 * A, lip },
  solid: { volumeMm3 },
  waterDensityKgM3: FRESH,
});
const BARE = outside();

const upAt = (trimDeg: number, side = 1): Point3 => {
  const angle = (trimDeg * Math.PI) / 180;
  return [-Math.sin(angle), 0, side * Math.cos(angle)];
};

const hanging = (netG: number, trimDeg: number, cbAboveCgMm: number): Hanging => ({
  massG: wholeG + netG,
  upInBody: upAt(trimDeg),
  cbAboveCgMm,
});

const go = (netG: number, trimDeg: number, cbAboveCgMm: number, water = BARE) =>
  letGo(water, hanging(netG, trimDeg, cbAboveCgMm));

const atTrim = (netG: number, trimDeg: number, { drag }: Outside = BARE) =>
  freeSpeed(netG, FRESH, dragArea(drag, upAt(trimDeg)));

/** k₂ − k₁ of the spheroid of that length and volume: diameter 2√(bc). */
const munk = (() => {
  const { along, across } = addedMass(A / Math.sqrt(B * C));
  return across - along;
})();

describe('water that a spheroid takes along', () => {
  test('is that of the published table', () => {
    // H. Lamb, Hydrodynamics, § 115, from memory. The row of 2 is printed for a body a little less slender.
    const table: readonly [slenderness: number, along: number, across: number][] = [
      [1, 0.5, 0.5],
      [2, 0.209, 0.702],
      [3, 0.121, 0.803],
      [4, 0.082, 0.86],
      [5, 0.059, 0.895],
      [6, 0.045, 0.918],
      [7, 0.036, 0.933],
    ];
    for (const [slenderness, along, across] of table) {
      const got = addedMass(slenderness);
      const most = slenderness === 2 ? 0.0023 : 0.0011; // a step of its last digit
      expect(Math.abs(got.along - along), `${slenderness}`).toBeLessThan(most);
      expect(Math.abs(got.across - across), `${slenderness}`).toBeLessThan(most);
    }
  });

  test('is that of the integrals it comes from', () => {
    // α = a b² ∫ dλ / ((a² + λ)^1.5 (b² + λ)) from 0 on, likewise β with (a² + λ)^½ (b² + λ)²; b = 1, λ = t/(1 − t).
    const integral = (of: (lambda: number) => number) => {
      const steps = 20_000;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const left = 1 - (i + 0.5) / steps;
        sum += of(1 / left - 1) / left ** 2 / steps;
      }
      return sum;
    };
    for (const a of [1, 1.2, 2, 4.5, 9]) {
      const alpha = a * integral((l) => 1 / ((a * a + l) ** 1.5 * (1 + l)));
      const beta = a * integral((l) => 1 / ((a * a + l) ** 0.5 * (1 + l) ** 2));
      const { along, across } = addedMass(a);
      // The midpoint rule at an end where the integrand goes like a root: 1e-6 of it.
      expect(along).toBeCloseTo(alpha / (2 - alpha), 5);
      expect(across).toBeCloseTo(beta / (2 - beta), 5);
    }
  });

  test('goes over into the sphere and into the needle', () => {
    // The slope at the sphere is under 1, so 1e-4 of slenderness moves it by less than that.
    for (const slenderness of [1 + 0.99e-4, 1 + 1.01e-4]) {
      expect(Math.abs(addedMass(slenderness).along - 0.5)).toBeLessThan(1e-4);
      expect(Math.abs(addedMass(slenderness).across - 0.5)).toBeLessThan(1e-4);
    }
    expect(addedMass(1000).along).toBeCloseTo(0, 4);
    expect(addedMass(1000).across).toBeCloseTo(1, 4);
  });
});

describe('one moment alone', () => {
  test('a lure of no net weight hangs', () => {
    for (const trimDeg of [-60, 0, 35, 90]) {
      const got = go(0, trimDeg, 2);
      expect(got.trimDeg).toBeCloseTo(trimDeg, 9);
      expect(got.cmS).toBe(0);
    }
  });

  test('slow, and buoyancy far over gravity: as it hangs, and nothing else counts', () => {
    const got = go(-0.01, 30, 20);
    expect(Math.abs(got.trimDeg - 30)).toBeLessThan(0.1);
    const hung = atTrim(-0.01, 30);
    // A tenth of a degree at 30° is 3e-3 of cos³, half of that of the speed.
    expect(Math.abs(got.cmS / hung.cmS - 1)).toBeLessThan(2e-3);
    expect(Math.abs(got.lowCmS / hung.lowCmS - 1)).toBeLessThan(2e-3);
    expect(Math.abs(got.highCmS / hung.highCmS - 1)).toBeLessThan(2e-3);
  });

  test('centers that fall together: broadside', () => {
    expect(go(1, 0, 0)).toEqual({ ...atTrim(1, 0), trimDeg: 0 });
    expect(go(1, 50, 0).trimDeg).toBe(0);
  });

  test('a body as long as it is thick is not turned', () => {
    const round = { ...BARE, solid: { volumeMm3: (Math.PI / 6) * (2 * A) ** 3 } };
    const massG = round.solid.volumeMm3 * FRESH * 1e-6 + 5;
    expect(letGo(round, { massG, upInBody: upAt(40), cbAboveCgMm: 1 }).trimDeg).toBeCloseTo(40, 9);
  });

  test('a light stick with its center of buoyancy ahead: broadside, not end-on', () => {
    const netG = -0.6 * wholeG;
    const got = go(netG, 90, 0.4);
    // W·BG cos θ = N V/A (k₂ − k₁) 2 sin θ cos θ, with the drag of broadside: at 2° its cos³ is 2e-3 less.
    const area = dragArea(BARE.drag, upAt(0)).middleMm2;
    const sine = (0.4 * wholeG * 0.4 * area) / (2 * 0.6 * wholeG * volumeMm3 * munk);
    expect(sine).toBeLessThan(Math.sin((2 * Math.PI) / 180));
    expect(got.trimDeg / ((Math.asin(sine) * 180) / Math.PI)).toBeCloseTo(1, 2);
    const level = atTrim(netG, 0);
    expect(got.cmS / level.cmS).toBeCloseTo(1, 2);
    expect(got.lowCmS).toBeCloseTo(level.lowCmS, 9);
    expect(got.highCmS / level.highCmS).toBeCloseTo(1, 2);
    expect(atTrim(netG, 90).cmS).toBeGreaterThan(3 * got.cmS);
  });
});

describe('both moments', () => {
  const cases = [-4, -0.5, 0.5, 4].flatMap((netG) =>
    [-70, -20, 8, 45].map((trimDeg) => ({ netG, trimDeg })),
  );

  test.each(cases)('are in balance at the speed told: $netG g, hanging at $trimDeg°', (given) => {
    const { netG, trimDeg } = given;
    const got = go(netG, trimDeg, 3);
    const [way, hangs] = [got.trimDeg, trimDeg].map((deg) => (deg * Math.PI) / 180);
    const pressure = (FRESH * (got.cmS / 100) ** 2) / 2;
    const stream = pressure * volumeMm3 * 1e-9 * munk * Math.sin(2 * way);
    const weight = (wholeG + netG) * 1e-3 * 9.80665 * 3e-3 * Math.sin(hangs - way);
    expect(stream / weight).toBeCloseTo(1, 9);
    expect(got.cmS).toBeCloseTo(atTrim(netG, got.trimDeg).cmS, 9);
    expect(Math.abs(way)).toBeLessThan(Math.abs(hangs));
    expect(way * hangs).toBeGreaterThan(0);
  });

  test('the more net weight, the nearer to level; the lower the ballast, the nearer to hanging', () => {
    const byNet = [0.1, 0.5, 2, 5, 10].map((netG) => go(netG, 40, 3).trimDeg);
    for (let i = 1; i < byNet.length; i++) expect(byNet[i]).toBeLessThan(byNet[i - 1]);
    const byLever = [0.5, 1, 2, 4, 8].map((mm) => go(2, 40, mm).trimDeg);
    for (let i = 1; i < byLever.length; i++) expect(byLever[i]).toBeGreaterThan(byLever[i - 1]);
  });

  test('on end it stays where weight is stiffer than the stream end-on, and turns where it is not', () => {
    const end = dragArea(BARE.drag, upAt(90)).middleMm2;
    const leverMm = (2 * 1 * volumeMm3 * munk) / (end * (wholeG + 1));
    expect(go(1, 90, 1.01 * leverMm).trimDeg).toBeCloseTo(90, 6);
    expect(go(1, 90, 0.99 * leverMm).trimDeg).toBeLessThan(88);
  });

  test('nose and tail changed over, the trim is too, and no speed', () => {
    for (const netG of [-3, 1]) {
      const [up, down] = [go(netG, 33, 2), go(netG, -33, 2)];
      expect(down.trimDeg).toBeCloseTo(-up.trimDeg, 12);
      for (const key of ['cmS', 'lowCmS', 'highCmS'] as const)
        expect(down[key]).toBeCloseTo(up[key], 9);
    }
  });

  test('belly up is the same to a body without a lip; on its side it shows its side', () => {
    const upright = go(2, 33, 2);
    const over = letGo(BARE, { ...hanging(2, 33, 2), upInBody: upAt(33, -1) });
    expect(over.trimDeg).toBeCloseTo(upright.trimDeg, 9);
    const [x, , z] = upAt(33);
    const aside = letGo(BARE, { ...hanging(2, 33, 2), upInBody: [x, z, 0] });
    // The side is C/B broader than the plan, its coefficient a little less.
    expect(aside.cmS).toBeLessThan(0.93 * upright.cmS);
  });
});

describe('the range', () => {
  const rangeOf = (netG: number, trimDeg: number, mm: number, water = BARE) => {
    const { lowCmS, cmS, highCmS } = go(netG, trimDeg, mm, water);
    return { lowCmS, cmS, highCmS };
  };

  test('moments alike: from broadside with most drag to hanging with least', () => {
    const { lowCmS, cmS, highCmS } = rangeOf(2, 38, 3);
    expect(lowCmS).toBeCloseTo(atTrim(2, 0).lowCmS, 9);
    expect(highCmS).toBeCloseTo(atTrim(2, 38).highCmS, 9);
    expect(lowCmS).toBeLessThan(cmS);
    expect(cmS).toBeLessThan(highCmS);
  });

  test('an end that is outweighed threefold halfway is left out', () => {
    const half = dragArea(BARE.drag, upAt(19)).middleMm2;
    const halfRad = (19 * Math.PI) / 180;
    const stream = ((2 * volumeMm3) / half) * munk * Math.sin(2 * halfRad);
    const alikeMm = stream / (Math.sin(halfRad) * (wholeG + 2));
    const [level, hung] = [atTrim(2, 0).lowCmS, atTrim(2, 38).highCmS];
    expect(go(2, 38, alikeMm).trimDeg).toBeCloseTo(19, 2); // a facet of the mesh's shadow
    expect(rangeOf(2, 38, 2.99 * alikeMm).lowCmS).toBeCloseTo(level, 9);
    expect(rangeOf(2, 38, 3.01 * alikeMm).lowCmS).toBeGreaterThan(1.01 * level);
    expect(rangeOf(2, 38, alikeMm / 2.99).highCmS).toBeCloseTo(hung, 9);
    expect(rangeOf(2, 38, alikeMm / 3.01).highCmS).toBeLessThan(0.99 * hung);
  });

  test('a lip can hold a lure in two ways: it goes the one nearer to broadside, the range holds both', () => {
    // Hung on end, nose down: beyond the trim at which the lip is edge on, the lip slows the lure again.
    const lipped = outside({ areaMm2: 1200, angleDeg: 40 });
    const towardHanging = (trimDeg: number) => {
      const rad = Math.PI / 180;
      const area = dragArea(lipped.drag, upAt(trimDeg)).middleMm2;
      const stream = (volumeMm3 / area) * munk * Math.sin(-2 * trimDeg * rad);
      return (wholeG + 1) * 4 * Math.sin((89 + trimDeg) * rad) - stream;
    };
    // Turned down, level, down and level again: two balances, at each a stable one from down to level.
    const turned = [-50, -53, -84, -88.9].map((deg) => Math.sign(towardHanging(deg)));
    expect(turned).toEqual([1, -1, 1, -1]);
    const got = go(1, -89, 4, lipped);
    expect(got.trimDeg).toBeGreaterThan(-53);
    expect(got.trimDeg).toBeLessThan(-50);
    for (const trimDeg of [0, -88]) {
      const { lowCmS, highCmS } = atTrim(1, trimDeg, lipped);
      expect(got.lowCmS).toBeLessThan(1.001 * lowCmS);
      expect(got.highCmS).toBeGreaterThan(0.999 * highCmS);
    }
  });
});
