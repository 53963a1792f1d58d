/** Lengths as they stand on a drawing: millimeters to a tenth, and inches to a sixty-fourth beside them where that is wished. */
import { spelled } from '../picture/words.js';

const MM_PER_INCH = 25.4; // exact by definition

const DECIMALS = 1;

export const millimeters = (mm: number): string => spelled(mm, DECIMALS);

/** A round length, without what is nothing behind the point: `2.5`, `10`. */
export const roundMm = (mm: number): string => String(Number(mm.toFixed(2)));

/** The nearest sixty-fourth, in lowest terms: `1 15/64`, `3/8`, `0`. */
export function inchFraction(mm: number): string {
  const all = Math.round((Math.abs(mm) / MM_PER_INCH) * 64);
  const sign = mm < 0 && all > 0 ? '−' : '';
  const [whole, rest] = [Math.floor(all / 64), all % 64];
  if (rest === 0) return `${sign}${whole}`;
  const common = [32, 16, 8, 4, 2, 1].find((d) => rest % d === 0) ?? 1;
  const fraction = `${rest / common}/${64 / common}`;
  return `${sign}${whole > 0 ? `${whole} ` : ''}${fraction}`;
}

/** `46.0`, or `46.0 (1 13/16 in)`. */
export const length = (mm: number, inches: boolean): string =>
  inches ? `${millimeters(mm)} (${inchFraction(mm)} in)` : millimeters(mm);
