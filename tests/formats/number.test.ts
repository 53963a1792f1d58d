import { describe, expect, it } from 'vitest';
import { fixed, trimmed } from '../../src/formats/number.js';
import { Fault } from '../../src/problem.js';

describe('numbers as text', () => {
  it('has the decimals asked for', () => {
    expect(fixed(12.5, 4)).toBe('12.5000');
    expect(fixed(-0.00004, 3)).toBe('0.000');
    expect(fixed(-1 / 3, 2)).toBe('-0.33');
    expect(fixed(7.6, 0)).toBe('8');
  });

  it('trims zeros after the point only', () => {
    expect(trimmed(12.5, 4)).toBe('12.5');
    expect(trimmed(100, 4)).toBe('100');
    expect(trimmed(100, 0)).toBe('100');
    expect(trimmed(-120.03, 1)).toBe('-120');
  });

  it('never writes an exponent or a negative zero', () => {
    for (const value of [-0, 1e-9, -1e-9, 1e-30, -4e-5, 123456789]) {
      for (const decimals of [0, 1, 4]) {
        expect(fixed(value, decimals)).toMatch(/^(?!-0(\.0*)?$)-?\d+(\.\d+)?$/);
        expect(trimmed(value, decimals)).toMatch(/^(?!-0$)-?\d+(\.\d*[1-9])?$/);
      }
    }
  });

  it('refuses what no drawing has', () => {
    for (const value of [NaN, Infinity, -Infinity, 1e9, -1e21]) {
      expect(() => fixed(value, 4)).toThrow(Fault);
      expect(() => trimmed(value, 4)).toThrow(Fault);
    }
  });
});
