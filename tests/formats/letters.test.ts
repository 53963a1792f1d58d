import { create } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { EVERY_LETTER, lettersOf, missingLetters, spelledOut } from '../../src/formats/letters.js';
import { readFaces } from '../../src/io.js';
import { Fault } from '../../src/problem.js';

const faces = readFaces();

describe('letters of a face', () => {
  test.each(['regular', 'bold'] as const)(
    '%s: as another reader of faces has them (fontkit)',
    (name) => {
      const has = lettersOf(faces[name]);
      const font = create(Buffer.from(faces[name]));
      if (!('hasGlyphForCodePoint' in font)) throw new Error('a collection');
      let [differ, some] = [0, 0];
      for (let code = 0; code < 0x20000; code++) {
        if (has(code)) some++;
        if (has(code) !== font.hasGlyphForCodePoint(code)) differ++;
      }
      expect(some).toBeGreaterThan(3000);
      expect(differ).toBe(0);
    },
  );

  test('bytes that are no face are our fault', () => {
    expect(() => lettersOf(new Uint8Array(64))).toThrow(Fault);
  });
});

describe('letters that are missing', () => {
  const has = lettersOf(faces.regular);

  test('are told once each and spelled by their code points', () => {
    expect(missingLetters('漆 and 漆, not é, ש, خ, ☐ or ⚠', has)).toEqual(['漆']);
    expect(spelledOut('漆 lacquer', has)).toBe('[U+6F06] lacquer');
    expect(spelledOut('🐟', has)).toBe('[U+1F41F]');
  });

  test('controls and halves of letters are never shown, white space always', () => {
    expect(spelledOut('a\u0007b\ud800c\uffff', EVERY_LETTER)).toBe('a[U+0007]b[U+D800]c[U+FFFF]');
    expect(spelledOut('a\tb\u00a0c\nd', has)).toBe('a\tb\u00a0c\nd');
    expect(spelledOut('漆🐟', EVERY_LETTER)).toBe('漆🐟');
  });
});
