import { describe, expect, it } from 'vitest';
import { lettering, letteringWidth } from '../../src/geometry/lettering.js';
import { boxOf } from '../../src/geometry/vec.js';
import { Fault } from '../../src/problem.js';

const PRINTABLE = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

describe('lettering', () => {
  it('stands capitals and digits exactly as high as asked, on the baseline, at x = 0', () => {
    for (const letter of 'ABDEHIKLMNRTXZ0123456789') {
      const [minX, minY, , maxY] = boxOf(lettering(letter, { heightMm: 5 }).flat());
      expect([letter, minX]).toEqual([letter, 0]);
      expect(minY).toBeCloseTo(0, 12);
      expect(maxY).toBeCloseTo(5, 12);
    }
  });

  it('has a glyph of its own for every printable character, no segment short or drawn twice', () => {
    const spelled = PRINTABLE.map((c) => JSON.stringify(lettering(c, { heightMm: 2 })));
    expect(spelled).toHaveLength(95);
    // the font draws I and l alike
    expect(new Set(spelled).size).toBe(94);
    expect(spelled[73 - 32]).toBe(spelled[108 - 32]);
    let segments = 0;
    for (const c of PRINTABLE) {
      const seen = new Set<string>();
      for (const stroke of lettering(c, { heightMm: 2 })) {
        expect(stroke.length).toBeGreaterThan(1);
        for (let i = 1; i < stroke.length; i++) {
          const [a, b] = [stroke[i - 1], stroke[i]];
          // one font unit of 2 mm letters is 0.095 mm
          expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(0.09);
          seen.add([String(a), String(b)].sort().join(' '));
          segments++;
        }
      }
      expect([c, seen.size]).toEqual([c, segmentCount(c)]);
    }
    expect(segments).toBeGreaterThan(900);
  });

  it('grows in proportion, and its width is the width of the ink', () => {
    const small = letteringWidth('SKERRY 110 V1.3', { heightMm: 2 });
    expect(letteringWidth('SKERRY 110 V1.3', { heightMm: 6 })).toBeCloseTo(3 * small, 9);
    const [minX, , maxX] = boxOf(lettering('SKERRY 110 V1.3', { heightMm: 2 }).flat());
    expect(maxX - minX).toBeCloseTo(small, 12);
  });

  it('gives nothing for text without ink', () => {
    expect(lettering('', { heightMm: 3 })).toEqual([]);
    expect(lettering('  ', { heightMm: 3 })).toEqual([]);
    expect(letteringWidth(' ', { heightMm: 3 })).toBe(0);
  });

  it('refuses what it has no letters for, and heights that are none', () => {
    for (const bad of ['Ø', 'a\nb', '\t', 'é']) {
      expect(() => lettering(bad, { heightMm: 3 })).toThrow(Fault);
    }
    for (const heightMm of [0, -1, NaN, Infinity]) {
      expect(() => lettering('A', { heightMm })).toThrow(Fault);
    }
  });
});

const segmentCount = (c: string): number =>
  lettering(c, { heightMm: 2 }).reduce((sum, stroke) => sum + stroke.length - 1, 0);
