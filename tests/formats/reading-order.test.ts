/**
 * Text in both directions against the examples of Unicode Standard Annex 9, “Unicode Bidirectional
 * Algorithm”, rule L2, where capitals stand for letters that run from the right, < and > for isolates
 * to the left and to the right, = for their end (the examples from memory).
 */
import { describe, expect, test } from 'vitest';
import {
  beginsAtRight,
  brokenLines,
  runsFromRight,
  shownPieces,
} from '../../src/formats/reading-order.js';

const ALEF = 0x05d0;
const SIGNS: Readonly<Record<string, string>> = { '<': '\u2067', '>': '\u2066', '=': '\u2069' };
const spoken = (text: string): string =>
  text.replace(/[A-Z<>=]/g, (c) => SIGNS[c] ?? String.fromCodePoint(ALEF + c.charCodeAt(0) - 65));

/** What is seen from the left, in the letters of the examples: words from the right are turned by who sets them. */
function seen(text: string): string {
  return shownPieces(spoken(text))
    .map((piece) => (/^[\u05d0-\u05ea]+$/.test(piece) ? [...piece].reverse().join('') : piece))
    .join('')
    .replace(/[\u2066-\u2069]/g, '')
    .replace(/[\u05d0-\u05ea]/g, (c) => String.fromCharCode(65 + c.charCodeAt(0) - ALEF));
}

describe('as the standard shows it', () => {
  test.each([
    ['car means CAR.', 'car means RAC.'],
    [
      'he said “<car MEANS CAR=.” “<IT DOES=,” she agreed.',
      'he said “RAC SNAEM car.” “SEOD TI,” she agreed.',
    ],
    ['DID YOU SAY ’>he said “<car MEANS CAR=”=‘?', '?‘he said “RAC SNAEM car”’ YAS UOY DID'],
  ])('%s', (memory, display) => {
    expect(seen(memory)).toBe(display);
  });
});

describe('by its rules', () => {
  test('a text from the right begins at the right, its full stop at the left (P2, L2)', () => {
    expect(seen('MEANS car CAR.')).toBe('.RAC car SNAEM');
  });

  test('figures keep their order within text from the right (W, L2)', () => {
    expect(seen('BOX 12.5 MM')).toBe('MM 12.5 XOB');
    expect(seen('a BOX 12.5 MM b')).toBe('a MM 12.5 XOB b');
  });

  test('brackets round it are mirrored (L4)', () => {
    expect(seen('NAME (A B)')).toBe('(B A) EMAN');
  });

  test('text from the left is one piece and as it was', () => {
    expect(shownPieces('a (b) <c> & 1/2')).toEqual(['a (b) <c> & 1/2']);
    expect(shownPieces('')).toEqual(['']);
  });

  test('nothing of a text is lost', () => {
    const text = spoken('mixed MIXED 12 (x) AND [Y]; end');
    const letters = (s: string) => [...s.replace(/[()[\]]/g, '')].sort().join('');
    expect(letters(shownPieces(text).join(''))).toBe(letters(text));
  });
});

const wide = (text: string): number => [...text].length;

describe('lines of text that is turned round later', () => {
  test('are broken between words where the width is spent', () => {
    expect(brokenLines('aa bb cc dd', wide, 5)).toEqual(['aa bb', 'cc dd']);
    expect(brokenLines('aa bb', wide, 5)).toEqual(['aa bb']);
    expect(brokenLines('aa bb', wide, 4)).toEqual(['aa', 'bb']);
  });

  test('a word wider than a line has a line of its own', () => {
    expect(brokenLines('a wwwwwwww b', wide, 5)).toEqual(['a', 'wwwwwwww', 'b']);
  });

  test('nothing is lost or told twice', () => {
    const text = 'one two three four five six seven eight';
    for (let most = 1; most < 45; most++)
      expect(brokenLines(text, wide, most).join(' ')).toBe(text);
  });
});

test('the first letter tells which way a line is read, any letter whether it has words from the right', () => {
  expect([
    beginsAtRight('לכת 5 clear'),
    beginsAtRight('clear לכת'),
    beginsAtRight('5 clear'),
  ]).toEqual([true, false, false]);
  expect([runsFromRight('clear לכת'), runsFromRight('clear')]).toEqual([true, false]);
});
