/** The formatter, by hand. */
import { describe, expect, test } from 'vitest';
import { Fault } from '../../src/problem.js';
import { type Form, shown } from '../../src/sheet/shown.js';

const NB = '\u00a0';

describe('numbers', () => {
  test.each<[Form, number, string]>([
    ['count', 22, '22'],
    ['count', 0, '0'],
    ['given', 420, '420'],
    ['given', 1.5, '1.5'],
    ['given', 0.9, '0.9'],
    ['given', 83.6, '83.6'],
    ['given', 40.2, '40.2'],
    ['given', 12.70004, '12.7'],
    ['given', 0, '0'],
    ['fixed-0', 28.5, '29'],
    ['fixed-1', 14.66, '14.7'],
    ['fixed-1', 29, '29.0'],
    ['fixed-1', -2.55, '−2.5'], // −2.55 is stored a little nearer to zero
    ['fixed-1', -0.04, '0.0'],
    ['fixed-2', 0.695, '0.69'], // stored a little under
    ['size-1', -7.818154, '7.8'],
    ['size-1', 4.36, '4.4'],
    ['signed-1', 0.2411, '+0.2'],
    ['signed-1', -0.2411, '−0.2'],
    ['signed-1', 0.04, '0.0'],
    ['signed-1', -0.04, '0.0'],
    ['signed-2', -0.05256, '−0.05'],
    ['percent-0', 0.1, '10'],
    ['percent-0', 1, '100'],
    ['percent-0', 0.911, '91'],
    ['cm2-0', 5508.5, '55'],
    ['cm2-0', 134280, '1343'],
    ['day', 0, '1'],
    ['day', 23.9, '1'],
    ['day', 24, '2'],
    ['day', 222, '10'],
    ['hour-1', 0, '0.0'],
    ['hour-1', 26.5, '2.5'],
    ['hour-1', 219.7, '3.7'],
    ['many', 10, '10'],
    ['place', 3, '3'],
  ])('%s of %d is %s', (form, value, text) => {
    expect(shown(form, value)).toBe(text);
  });

  test('nothing but finite numbers, and whole ones where something is counted', () => {
    expect(() => shown('fixed-1', Number.NaN)).toThrow(Fault);
    expect(() => shown('given', Number.POSITIVE_INFINITY)).toThrow(Fault);
    expect(() => shown('count', 2.5)).toThrow(Fault);
    expect(() => shown('many', 0.1)).toThrow(Fault);
  });
});

describe('millimeters as inches to a sixty-fourth', () => {
  // One inch is 25.4 mm exactly; a sixty-fourth is 0.396875 mm.
  test.each<[number, string]>([
    [0, '0'],
    [0.19, '0'],
    [0.2, '1/64'],
    [0.396875, '1/64'],
    [0.79375, '1/32'],
    [1.5875, '1/16'],
    [3.175, '1/8'],
    [6.35, '1/4'],
    [9.525, '3/8'],
    [12.7, '1/2'],
    [25.003125, '63/64'],
    [25.25, '1'],
    [25.4, '1'],
    [29, `1${NB}9/64`], // 29 / 25.4 · 64 = 73.07
    [100, `3${NB}15/16`], // 251.97, so 252/64
    [254, '10'],
    [420, `16${NB}17/32`], // 1058.27, so 1058/64 = 16 34/64
    [-12.7, '−1/2'],
    [-0.1, '0'],
  ])('%d mm is %s in', (mm, text) => {
    expect(shown('inch', mm)).toBe(text);
  });

  test('without its sign where words tell the side', () => {
    expect(shown('inch-size', -12.7)).toBe('1/2');
  });

  test('never further off than half a sixty-fourth, and in lowest terms', () => {
    for (let mm = 0; mm < 130; mm += 0.0371) {
      const text = shown('inch', mm);
      const [, whole, over, under] = /^(?:(\d+)(?:\u00a0|$))?(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
      const inches = Number(whole ?? 0) + (over ? Number(over) / Number(under) : 0);
      expect(Math.abs(inches * 25.4 - mm)).toBeLessThanOrEqual(0.396875 / 2 + 1e-9);
      if (over) {
        expect([2, 4, 8, 16, 32, 64]).toContain(Number(under));
        expect(Number(over) % 2).toBe(1);
      }
    }
  });
});
