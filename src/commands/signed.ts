import { trimmed } from '../formats/number.js';

/** A number with its sign, but for zero. */
export function signed(value: number, decimals: number): string {
  const spelled = trimmed(value, decimals);
  return spelled === '0' || spelled.startsWith('-') ? spelled : `+${spelled}`;
}
