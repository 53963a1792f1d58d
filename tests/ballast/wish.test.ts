import { describe, expect, test } from 'vitest';
import { loadOf } from '../../src/ballast/choice.js';
import { type Goal, goalOf, targetAt, upAt, wishedTrims } from '../../src/ballast/wish.js';
import { anglesOf, restAttitudes } from '../../src/float/rest.js';
import { dragArea, freeSpeed } from '../../src/float/speed.js';
import { FRESH, patternOf, pieceOf, wish } from './pieces.js';

const piece = pieceOf(patternOf());
const { afloat } = piece;
const wholeG = afloat.solid.volumeMm3 * FRESH * 1e-6;

describe('what a wish asks for', () => {
  test.each([
    [{ buoyancy: 'suspends' } as const, { kind: 'suspends' }],
    [{ buoyancy: 'floats', freeboardMm: 3 } as const, { kind: 'freeboard', freeboardMm: 3 }],
    [
      { buoyancy: 'floats', dryRatio: 0.2 } as const,
      { kind: 'dry', dryRatio: 0.2, assumed: false },
    ],
    [{ buoyancy: 'floats' } as const, { kind: 'dry', dryRatio: 0.1, assumed: true }],
    [
      { buoyancy: 'rises', speedCmS: 5 } as const,
      { kind: 'drifts', speed: { kind: 'rises', cmS: 5 } },
    ],
  ])('%j', (given, goal) => expect(goalOf(wish(given))).toEqual(goal));

  test('a speed that is not there is a fault of ours', () =>
    expect(() => goalOf(wish({ buoyancy: 'sinks' }))).toThrow('without a speed'));

  test('the trim wished, or level first', () => {
    expect(wishedTrims({ noseDownDeg: 7 })).toEqual([[-7]]);
    expect(wishedTrims({ noseDownDeg: 0 })).toEqual([[0]]);
    expect(wishedTrims({ noseDownDeg: undefined })[0]).toEqual([0]);
  });

  test('up at a trim has that trim', () => {
    for (const trim of [-30, 0, 12]) {
      const { trimDeg, heelDeg } = anglesOf(upAt(trim));
      expect(trimDeg).toBeCloseTo(trim, 12);
      expect(heelDeg).toBe(0);
    }
  });
});

describe('a target, given a lure that meets it, is how that lure rests', () => {
  const goals: readonly Goal[] = [
    { kind: 'freeboard', freeboardMm: 5 },
    { kind: 'dry', dryRatio: 0.15, assumed: false },
  ];
  test.each(goals.flatMap((goal) => [-8, 0, 5].map((trim) => ({ goal, trim }))))(
    '$goal.kind at $trim°',
    ({ goal, trim }) => {
      const target = targetAt(goal, trim, afloat);
      if (!target) throw new Error('no target');
      // A center of gravity well below that of buoyancy, on its vertical.
      const cgMm = target.cbMm.map((b, k) => b - 3 * target.up[k]) as [number, number, number];
      const [rest] = restAttitudes(afloat.solid, loadOf(piece, { massG: target.massG, cgMm }));
      expect(rest.trimDeg).toBeCloseTo(trim, 6);
      expect(rest.heelDeg).toBeCloseTo(0, 6);
      if (goal.kind === 'freeboard') expect(rest.freeboardMm).toBeCloseTo(goal.freeboardMm, 6);
      if (goal.kind === 'dry') expect(rest.dryRatio).toBeCloseTo(goal.dryRatio, 9);
      expect(target.bmAcrossMm + 3).toBeCloseTo(rest.gmAcrossMm, 6);
      expect(target.bmAlongMm + 3).toBeCloseTo(rest.gmAlongMm, 6);
    },
  );
});

test('what suspends is neutral; the less is dry, the nearer to it', () => {
  expect(targetAt({ kind: 'suspends' }, 0, afloat)?.massG).toBeCloseTo(wholeG, 6);
  const little = targetAt({ kind: 'dry', dryRatio: 0.01, assumed: false }, 0, afloat);
  expect(little?.massG).toBeCloseTo(0.99 * wholeG, 6);
});

test('the mass for a speed is that of the lure that moves so fast', () => {
  for (const kind of ['rises', 'sinks'] as const) {
    const target = targetAt({ kind: 'drifts', speed: { kind, cmS: 15 } }, 6, afloat);
    if (!target) throw new Error('no target');
    const got = freeSpeed(target.massG - wholeG, FRESH, dragArea(afloat.drag, upAt(6)));
    expect(got.kind).toBe(kind);
    expect(got.cmS).toBeCloseTo(15, 9);
  }
});

test('what no mass can do: no target, or less than none', () => {
  expect(targetAt({ kind: 'freeboard', freeboardMm: 80 }, 0, afloat)).toBeNull();
  const fast = { kind: 'drifts', speed: { kind: 'rises', cmS: 190 } } as const;
  expect(targetAt(fast, 0, afloat)?.massG).toBeLessThan(0);
});
