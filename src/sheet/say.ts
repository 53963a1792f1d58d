/** Sentences of `texts.ts` with values of the record in them. */
import { Fault } from '../problem.js';
import type { Inline, Inlines, Quantity } from './document.js';
import { ordinal, type Place } from './place.js';
import { type Form, shown } from './shown.js';

/** What stands in the braces of a sentence. */
export type Slots = Readonly<Record<string, Inline | Inlines>>;

/**
 * The sentence with its slots (`{name}`) filled and what stands between asterisks strong; the order of
 * slots is the sentence's own, so that another language may change it.
 * @throws Fault for a slot that is not filled, or a filling without a slot
 */
export function say(sentence: string, slots: Slots = {}): Inlines {
  const unused = new Set(Object.keys(slots));
  const inlines = sentence.split(/(\{\w+\})/).flatMap((piece): readonly Inline[] => {
    const name = /^\{(\w+)\}$/.exec(piece)?.[1];
    if (name === undefined) return piece === '' ? [] : words(piece);
    const filling = slots[name];
    if (filling === undefined) throw new Fault(`no {${name}} for "${sentence}"`);
    unused.delete(name);
    return [filling].flat();
  });
  if (unused.size > 0) throw new Fault(`no place for ${[...unused]} in "${sentence}"`);
  return inlines;
}

const words = (text: string): Inline[] =>
  text
    .split('*')
    .map((piece, i): Inline => {
      if (i % 2 === 0) return { kind: 'words', text: piece };
      return { kind: 'words', text: piece, strong: true };
    })
    .filter((piece) => piece.kind !== 'words' || piece.text !== '');

/** Fillings one after the other with words between them; with nothing to say, nothing. */
export const joined = (parts: readonly Inlines[], between: string): Inlines =>
  parts.flatMap((part, i) => (i === 0 ? part : [...say(between), ...part]));

/** What somebody typed. */
export const free = ({ value }: Place<string>): Inline => ({ kind: 'free', text: value });

export const strong = (inlines: Inlines): Inlines =>
  inlines.map((inline): Inline => {
    switch (inline.kind) {
      case 'words':
      case 'free':
      case 'quantity':
        return { ...inline, strong: true };
      default:
        return inline;
    }
  });

export const TICK: Inline = { kind: 'tick' };

/** A number of the record with the symbol of its unit behind it, or none. */
export const quantity = (place: Place<number>, form: Form, unit = ''): Quantity =>
  told(place.from, place.value, form, unit);

const told = (from: string, value: number, form: Form, unit: string): Quantity => ({
  kind: 'quantity',
  from,
  value,
  form,
  text: shown(form, value),
  unit,
  inches: null,
});

export const count = (place: Place<number>): Quantity => quantity(place, 'count');

/** How many stand in a list. */
export const many = ({ from, value }: Place<readonly unknown[]>): Quantity =>
  told(from, value.length, 'many', '');

/** Where in its list something stands, from 1. */
export const placed = (place: Place<unknown>): Quantity =>
  told(place.from, ordinal(place), 'place', '');

/** Millimeters, in inches too; without a unit where the head of a column has it. */
export function mm(
  place: Place<number>,
  form: 'given' | 'fixed-0' | 'fixed-1' | 'up-0' | 'size-1' = 'fixed-1',
  unit: 'mm' | '' = 'mm',
): Quantity {
  const inch: Form = form === 'size-1' ? 'inch-size' : 'inch';
  return {
    ...quantity(place, form, unit),
    inches: { form: inch, text: shown(inch, place.value) },
  };
}

export const g = (place: Place<number>, unit: 'g' | '' = 'g'): Quantity =>
  quantity(place, 'fixed-1', unit);

/** What goes on or into one lure: a hundredth of a gram. */
export const smallG = (place: Place<number>, unit: 'g' | '' = 'g'): Quantity =>
  quantity(place, 'fixed-2', unit);

export const ml = (place: Place<number>, unit: 'ml' | '' = 'ml'): Quantity =>
  quantity(place, 'fixed-1', unit);

/** The words for a code of the record. @throws Fault for a code without words */
export function word<C extends string>(words: Readonly<Record<C, string>>, code: C): string {
  const told = words[code];
  if (told === undefined) throw new Fault(`the sheet has no words for ${code}`);
  return told;
}
