/** Words of the command line → numbers and lists, or the sentence that says what is wrong with them. */
import { WATER_RANGE, type WaterFile } from '../pattern/water-schema.js';

export type Range = { readonly least: number; readonly most: number };

/** Raised for a word that cannot be used; the command ends with its message. */
export class ArgumentProblem extends Error {
  override readonly name = 'ArgumentProblem';
}

/** The number an option gives, null when the option is not there. @throws ArgumentProblem */
export function numberOf(
  option: string,
  text: string | undefined,
  { least, most }: Range,
): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) {
    const comma = /^-?\d+,\d+$/.test(text.trim());
    throw new ArgumentProblem(
      comma
        ? `${option} is ${text}: write it with a point, ${text.replace(',', '.')}.`
        : `${option} is "${text}", which is not a number.`,
    );
  }
  if (value < least || value > most)
    throw new ArgumentProblem(`${option} is ${value}: it must be ${least} to ${most}.`);
  return value;
}

/** The same, for whole numbers. @throws ArgumentProblem */
export function wholeOf(option: string, text: string | undefined, range: Range): number | null {
  const value = numberOf(option, text, range);
  if (value !== null && !Number.isInteger(value))
    throw new ArgumentProblem(`${option} is ${text}: it must be a whole number.`);
  return value;
}

/** Words between commas. @throws ArgumentProblem when one is empty */
export function listOf(option: string, text: string | undefined): string[] | null {
  if (text === undefined) return null;
  const words = text.split(',').map((w) => w.trim());
  if (words.some((w) => w === ''))
    throw new ArgumentProblem(`${option} is "${text}": give words with commas between.`);
  return words;
}

/** What the line says of the water; the rest is as the file has it. @throws ArgumentProblem */
export function waterOf(options: {
  readonly temperatureC?: string;
  readonly salinityPsu?: string;
}): Partial<WaterFile> {
  const { leastC, mostC, leastPsu, mostPsu } = WATER_RANGE;
  const t = numberOf('--temperature-c', options.temperatureC, { least: leastC, most: mostC });
  const s = numberOf('--salinity-psu', options.salinityPsu, { least: leastPsu, most: mostPsu });
  return {
    ...(t === null ? {} : { temperatureC: t }),
    ...(s === null ? {} : { salinityPsu: s }),
  };
}
