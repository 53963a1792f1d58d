import { describe, expect, test } from 'vitest';
import { beginsAtRight, brokenLines, runsFromRight } from '../../src/formats/reading-order.js';

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
