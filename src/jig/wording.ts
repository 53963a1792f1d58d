/** Words and figures as jigs tell them, on plastic and on paper. */
import type { Blank } from '../blank/blank.js';

/** A figure without trailing zeros. */
export const told = (value: number, decimals = 1): string =>
  String(Number(value.toFixed(decimals)));

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Name and version as they are cut into a jig, a line each. */
export const titleOf = ({ name, version }: Pick<Blank, 'name' | 'version'>): string[] => [
  name.toUpperCase(),
  `V${version}`.toUpperCase(),
];
