/** Numbers and names as they stand on a picture. */
import { type Anchor, type Role, type Text, textWidthMm } from './picture.js';

/** A number with fixed decimals, a true minus sign and no negative zero; what is not a finite number is a dash. */
export function spelled(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** The text, or as much of it as fits the width with an ellipsis behind. White space of any kind is a space. */
export function shortened(text: string, sizeMm: number, widthMm: number, bold = false): string {
  const line = text.replace(/\s+/g, ' ').trim();
  if (textWidthMm(line, sizeMm, bold) <= widthMm) return line;
  const letters = [...line];
  while (letters.length > 1 && textWidthMm(`${letters.join('')}…`, sizeMm, bold) > widthMm)
    letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** The text in lines no wider than told, broken between words, or inside a word that is wider than a line. */
export function wrapped(text: string, sizeMm: number, widthMm: number): string[] {
  const fits = (line: string) => textWidthMm(line, sizeMm) <= widthMm;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** Sizes of letters, mm. */
export const SIZES = { verdict: 12, name: 6, value: 5, mark: 4, title: 3.8, note: 3.2 } as const;

/** From one line of notes to the next, mm, at the closest. */
export const LINE_MM = SIZES.note * 1.4;

export type Style = {
  readonly size?: keyof typeof SIZES;
  readonly anchor?: Anchor;
  readonly bold?: boolean;
  readonly role?: Role;
};

/** Text on a baseline that begins, is centered or ends at x. */
export const words = (text: string, x: number, y: number, style: Style = {}): Text => ({
  kind: 'text',
  at: [x, y],
  text,
  sizeMm: SIZES[style.size ?? 'note'],
  anchor: style.anchor ?? 'start',
  bold: style.bold ?? false,
  role: style.role ?? 'ink',
});

/** As `words`, shortened to a width. Nothing for an empty text. */
export function fitted(text: string, x: number, y: number, widthMm: number, style: Style = {}) {
  const short = shortened(text, SIZES[style.size ?? 'note'], widthMm, style.bold);
  return short === '' ? [] : [words(short, x, y, style)];
}
