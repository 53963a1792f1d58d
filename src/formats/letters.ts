/**
 * Which letters a TrueType face has, read from its character map (ISO/IEC 14496-22, cmap, formats 4 and
 * 12), and how text is spelled where a letter is missing.
 */
import { Fault } from '../problem.js';

export type HasLetter = (codePoint: number) => boolean;

/** First and last code point of each stretch the face maps to a glyph. */
type Stretch = readonly [first: number, last: number];

/** @throws Fault on bytes that are no face with a Unicode map */
export function lettersOf(face: Uint8Array): HasLetter {
  const stretches = mapped(new DataView(face.buffer, face.byteOffset, face.byteLength));
  const has = new Set(stretches.flatMap(([first, last]) => range(first, last)));
  return (codePoint) => has.has(codePoint);
}

const range = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => first + i);

const CMAP = 0x636d6170;
const WINDOWS = 3;

function mapped(face: DataView): readonly Stretch[] {
  const tables = Array.from({ length: face.getUint16(4) }, (_, i) => 12 + 16 * i);
  const entry = tables.find((at) => face.getUint32(at) === CMAP);
  if (entry === undefined) throw new Fault('a face without a character map');
  const cmap = face.getUint32(entry + 8);
  const maps = Array.from({ length: face.getUint16(cmap + 2) }, (_, i) => cmap + 4 + 8 * i)
    .filter((at) => face.getUint16(at) === WINDOWS)
    .map((at) => cmap + face.getUint32(at + 4));
  const whole = maps.find((at) => face.getUint16(at) === 12);
  if (whole !== undefined) return groups(face, whole);
  const plane = maps.find((at) => face.getUint16(at) === 4);
  if (plane === undefined) throw new Fault('a face without a Unicode map');
  return segments(face, plane);
}

/** Format 12: groups of consecutive code points. */
const groups = (face: DataView, at: number): readonly Stretch[] =>
  Array.from({ length: face.getUint32(at + 12) }, (_, i) => at + 16 + 12 * i).map(
    (group): Stretch => [face.getUint32(group), face.getUint32(group + 4)],
  );

/** Format 4: segments, in which a code point may still map to the missing glyph. */
function segments(face: DataView, at: number): readonly Stretch[] {
  const twice = face.getUint16(at + 6);
  const [ends, starts] = [at + 14, at + 16 + twice];
  const [deltas, offsets] = [starts + twice, starts + 2 * twice];
  return Array.from({ length: twice / 2 }, (_, i) => 2 * i).flatMap((i) => {
    const [first, last] = [face.getUint16(starts + i), face.getUint16(ends + i)];
    const offset = face.getUint16(offsets + i);
    const glyph = (code: number): number => {
      if (offset === 0) return (code + face.getUint16(deltas + i)) & 0xffff;
      const index = face.getUint16(offsets + i + offset + 2 * (code - first));
      return index === 0 ? 0 : (index + face.getUint16(deltas + i)) & 0xffff;
    };
    return range(first, last)
      .filter((code) => code !== 0xffff && glyph(code) !== 0)
      .map((code): Stretch => [code, code]);
  });
}

/** Letters that are never shown as they are: controls, and halves of a pair that stand alone. */
const NEVER = /[\p{Cc}\p{Cs}\ufffe\uffff]/u;
/** Signs that change how their neighbors look and are not seen themselves. */
const UNSEEN = /\p{Cf}|\p{Variation_Selector}/u;

/** The letters of a text that a face lacks, once each, in their order. White space needs no glyph. */
export const missingLetters = (text: string, has: HasLetter): readonly string[] => [
  ...new Set([...text].filter((letter) => !isShown(letter, has))),
];

/** The text with the code point in brackets for each letter that cannot be shown: `[U+6D77]`. */
export const spelledOut = (text: string, has: HasLetter): string =>
  [...text].map((letter) => (isShown(letter, has) ? letter : codePoint(letter))).join('');

const isShown = (letter: string, has: HasLetter): boolean =>
  /\s/.test(letter) ||
  (!NEVER.test(letter) && (has(letter.codePointAt(0) ?? 0) || UNSEEN.test(letter)));

/** `U+6D77`, as the Unicode Standard writes it, in brackets. */
const codePoint = (letter: string): string =>
  `[U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;

/** For writers whose readers bring faces of their own: nothing is missing but what no text may hold. */
export const EVERY_LETTER: HasLetter = () => true;
