/** What stands beside the lines in words: timber, allowance, coats, how it floats, and the maker's own note. */
import type { Point2 } from '../../geometry/vec.js';
import { type Shape, textWidthMm } from '../picture/picture.js';
import { LINE_MM, SIZES, shortened, spelled, words, wrapped } from '../picture/words.js';
import type { DrawnFloat, ViewsInput } from './input.js';
import { length, millimeters, roundMm } from './measure.js';

const TITLE_MM = 5.5;
const CAPTION_MM = 15;
/** So much of the maker's own note is always shown, lines. */
const LEAST_OWN = 2;

type Note = { readonly caption: string; readonly text: string };

/** The last is the maker's own. */
function notesOf(input: ViewsInput): readonly Note[] {
  const { pattern, blank, timberDensityKgM3, float, note, inches } = input;
  const mm = (value: number) => (inches ? length(value, true) : `${millimeters(value)} mm`);
  const { timber, sandingAllowanceMm, lip, coats } = pattern;
  const wood = `${timber}, ${spelled(timberDensityKgM3, 0)} kg/m³, block ${mm(blank.thicknessMm)} thick`;
  const sizes = lip && [lip.widthMm, lip.lengthMm, lip.thicknessMm].map(roundMm).join(' × ');
  return [
    { caption: 'timber', text: wood },
    { caption: 'sawn', text: `${mm(sandingAllowanceMm)} left on all round; ${rounding(input)}` },
    ...(lip ? [{ caption: 'lip', text: `${lip.material} ${sizes} mm` }] : []),
    ...coatNotes(coats),
    { caption: 'afloat', text: `${afloat(float)}, in water of ${waterWords(float)}` },
    ...(note === '' ? [] : [{ caption: 'note', text: note }]),
  ];
}

/** Scripts that are read from the right: Hebrew, Arabic and those between them in Unicode. */
const FROM_RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/**
 * A name is any text, so it stands last: one that is read from the right then changes places with
 * nothing. Where there is one, each coat has a line of its own, as what followed it would be turned too.
 */
function coatNotes(coats: ViewsInput['pattern']['coats']): readonly Note[] {
  const films = coats.map((c) => `${c.count} × ${roundMm(c.thicknessMm)} mm ${c.name}`);
  const isApart = films.some((film) => FROM_RIGHT.test(film));
  const lines = isApart ? atMost(films, MOST_COATS) : [films.join(', ') || 'none'];
  return lines.map((text, i) => ({ caption: i === 0 ? 'coats' : '', text }));
}

/** On lines of their own: with more, the views would have no room. */
const MOST_COATS = 6;

const atMost = (lines: readonly string[], most: number): readonly string[] =>
  lines.length <= most
    ? lines
    : [...lines.slice(0, most - 1), `and ${lines.length - most + 1} more coats`];

const rounding = ({ roundOverMm }: ViewsInput): string =>
  roundOverMm > 0
    ? `round-over bit ${roundMm(roundOverMm)} mm`
    : 'no round-over bit stays clear of the finished body';

const VERDICT = { floats: 'Floats', suspends: 'Suspends', sinks: 'Sinks' } as const;

function afloat({ verdict, massG, trimDeg, freeboard }: DrawnFloat): string {
  const size = spelled(Math.abs(trimDeg), 1);
  const lies = size === '0.0' ? 'level' : `nose ${trimDeg > 0 ? 'up' : 'down'} ${size}°`;
  const whole = `${VERDICT[verdict]} ${lies} at ${spelled(massG, 2)} g, rigged`;
  if (!freeboard) return whole;
  const point = (mm: number) => `${millimeters(Math.abs(mm))} mm ${mm < 0 ? 'under' : 'over'}`;
  return `${whole}; nose point ${point(freeboard.noseMm)}, tail point ${point(freeboard.tailMm)} the surface`;
}

function waterWords({ water: { temperatureC, salinityPsu, densityKgM3 } }: DrawnFloat): string {
  const salt = salinityPsu === 0 ? 'fresh' : `salinity ${roundMm(salinityPsu)}`;
  return `${spelled(densityKgM3, 1)} kg/m³ (${roundMm(temperatureC)} °C, ${salt})`;
}

type Line = { readonly caption: string; readonly text: string; readonly own: boolean };

/** In lines that fit a width; a caption stands before the first of its own. */
const linesOf = (input: ViewsInput, widthMm: number): readonly Line[] =>
  notesOf(input).flatMap(({ caption, text }) =>
    wrapped(text, SIZES.note, widthMm - CAPTION_MM).map((line, i) => ({
      caption: i === 0 ? caption : '',
      text: line,
      own: caption === 'note',
    })),
  );

/** Height for everything but what is long of the maker's own note. */
export function leastNotesMm(input: ViewsInput, widthMm: number): number {
  const lines = linesOf(input, widthMm);
  const own = lines.filter((line) => line.own).length;
  return TITLE_MM + (lines.length - own + Math.min(LEAST_OWN, own)) * LINE_MM + 1;
}

type Size = { readonly widthMm: number; readonly heightMm: number };

/** `at` is the upper left corner. What has no room ends in an ellipsis. */
export function notes(
  input: ViewsInput,
  [left, top]: Point2,
  { widthMm, heightMm }: Size,
): Shape[] {
  const lines = linesOf(input, widthMm);
  const shown = lines.slice(0, Math.floor((heightMm - TITLE_MM) / LINE_MM));
  return [
    words('Notes', left, top - 4, { size: 'title', bold: true }),
    ...shown.flatMap(({ caption, text }, i): Shape[] => {
      const y = top - TITLE_MM - (i + 0.72) * LINE_MM;
      const isCut = shown.length < lines.length && i === shown.length - 1;
      return [
        ...(caption === '' ? [] : [words(caption, left, y)]),
        words(isCut ? withEllipsis(text, widthMm - CAPTION_MM) : text, left + CAPTION_MM, y),
      ];
    }),
  ];
}

/** The line with an ellipsis behind, shortened where that has no room. */
function withEllipsis(text: string, widthMm: number): string {
  const fits = (line: string) => textWidthMm(`${line}…`, SIZES.note) <= widthMm;
  if (fits(text)) return `${text}…`;
  return shortened(`${text}…………`, SIZES.note, widthMm);
}
