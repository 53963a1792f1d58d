/** What the document is made of, and what it does not take. */
import { describe, expect, test } from 'vitest';
import { Fault } from '../../src/problem.js';
import { at, each, ordinal, present, whole } from '../../src/sheet/place.js';
import { plainText } from '../../src/sheet/plain.js';
import { count, joined, many, mm, placed, quantity, say, word } from '../../src/sheet/say.js';
import { TEXTS } from '../../src/sheet/texts.js';

const record = whole({
  lists: [[{ 'a/b~c': 2 }], []] as readonly (readonly { 'a/b~c': number }[])[],
  none: null as number | null,
  some: 4 as number | null,
});

describe('places in the record', () => {
  test('a place knows its JSON pointer (RFC 6901)', () => {
    const [first] = each(at(record, 'lists'));
    const [inside] = each(first);
    expect(at(inside, 'a/b~c')).toEqual({ from: '/lists/0/0/a~1b~0c', value: 2 });
    expect(ordinal(inside)).toBe(1);
  });

  test('what is not there is our fault, null is not', () => {
    expect(() => at(record, 'gone' as 'none')).toThrow(Fault);
    expect(present(at(record, 'none'))).toBeNull();
    expect(present(at(record, 'some'))?.value).toBe(4);
    expect(() => ordinal(at(record, 'some'))).toThrow(Fault);
  });
});

describe('sentences', () => {
  test('slots stand where the sentence has them', () => {
    const four = present(at(record, 'some'));
    if (!four) throw new Error('null');
    const told = say('*Take* {n} of {n}.', { n: count(four) });
    expect(plainText(told)).toBe('Take 4 of 4.');
    expect(told[0]).toEqual({ kind: 'words', text: 'Take', strong: true });
    expect(plainText(joined([say('a'), say('b')], ', '))).toBe('a, b');
  });

  test('a slot without a filling, a filling without a slot, and a code without words are our fault', () => {
    expect(() => say('{n}')).toThrow(Fault);
    expect(() => say('n', { n: say('x') })).toThrow(Fault);
    expect(word({ known: 'x' }, 'known')).toBe('x');
    expect(() => word<string>({ known: 'x' }, 'unknown')).toThrow(Fault);
  });

  test('quantities keep the exact value, and lengths their inches', () => {
    const length = { from: '/x', value: 29.046 };
    expect(mm(length)).toMatchObject({ value: 29.046, text: '29.0', unit: 'mm' });
    expect(mm(length).inches).toEqual({ form: 'inch', text: '1\u00a09/64' });
    expect(quantity(length, 'given', 'g').inches).toBeNull();
    expect(many(at(record, 'lists'))).toMatchObject({ value: 2, from: '/lists' });
    expect(placed({ from: '/cutOrder/6', value: 0 })).toMatchObject({ value: 7, text: '7' });
  });
});

test('no digit stands in a text: numbers come from the record', () => {
  const texts: string[] = [];
  const gather = (value: unknown): void => {
    if (typeof value === 'string') texts.push(value);
    else for (const inside of Object.values(value as object)) gather(inside);
  };
  gather(TEXTS);
  expect(texts.length).toBeGreaterThan(200);
  expect(texts.filter((t) => /\p{N}/u.test(t.replace(/cm²/g, '')))).toEqual([]);
});
