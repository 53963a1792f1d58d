/** The one place where a number becomes text in a drawing file: no exponent, no locale, no −0. */
import { Fault } from '../problem.js';

/** Beyond this `toFixed` keeps no decimals that mean anything. */
const GREATEST = 1e9;

/**
 * The number with a fixed count of decimals, rounded to nearest.
 * @throws Fault on NaN, an infinity, or a size no drawing has.
 */
export function fixed(value: number, decimals: number): string {
  if (!(Math.abs(value) < GREATEST)) throw new Fault(`number ${value} in a drawing`);
  const spelled = value.toFixed(decimals);
  return /^-0(\.0*)?$/.test(spelled) ? spelled.slice(1) : spelled;
}

/** As `fixed`, without trailing zeros: 12.5, not 12.5000; 3, not 3.0000. */
export function trimmed(value: number, decimals: number): string {
  const spelled = fixed(value, decimals);
  return spelled.includes('.') ? spelled.replace(/\.?0+$/, '') : spelled;
}
