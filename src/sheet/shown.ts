/**
 * How a number of the record is shown: the one formatter of the sheet. Metric first; inches are a display
 * of the same millimeters and never computed with. What a scale, a rule or a syringe of a small workshop
 * can show is what is printed: 0.1 g, 0.1 mm, 0.1 ml (a syringe is read to a fifth of a milliliter; the
 * sheet adds nothing to that), 0.01 g for what goes on one lure.
 */
import { Fault } from '../problem.js';

/**
 * - `count`: a whole number
 * - `given`: as a file or a table gave it: up to three decimals, no zeros behind
 * - `fixed-N`: N decimals
 * - `up-0`: the next whole number that is no less: what is cut to length
 * - `size-N`: the same without its sign, where words tell the side
 * - `signed-N`: the same with its sign, plus too
 * - `percent-N`: a share of one as a percentage
 * - `inch`, `inch-size`: millimeters as inches and a fraction to a sixty-fourth
 * - `cm2-N`: square millimeters as square centimeters
 * - `day`, `hour-N`: hours from the start of the first day as the day, from 1, and the hours into it
 * - `many`: how long a list is
 * - `place`: where in its list the value stands, from 1
 */
export type Form =
  | 'count'
  | 'given'
  | `fixed-${0 | 1 | 2}`
  | 'up-0'
  | `size-${1 | 2}`
  | `signed-${1 | 2}`
  | `percent-${0 | 1}`
  | 'inch'
  | 'inch-size'
  | 'cm2-0'
  | 'day'
  | 'hour-1'
  | 'many'
  | 'place';

/** The text of a number; `many` and `place` take the length and the place. @throws Fault on what is no finite number, or no whole one where one is told */
export function shown(form: Form, value: number): string {
  if (!(Math.abs(value) < GREATEST)) throw new Fault(`number ${value} on the sheet`);
  const [kind, detail = ''] = form.split('-');
  switch (kind) {
    case 'count':
    case 'many':
    case 'place':
      if (!Number.isInteger(value)) throw new Fault(`${value} of something on the sheet`);
      return fixed(value, 0);
    case 'given':
      return fixed(value, 3).replace(/\.?0+$/, '');
    case 'fixed':
      return fixed(value, Number(detail));
    case 'up':
      return fixed(Math.ceil(value), 0);
    case 'size':
      return fixed(Math.abs(value), Number(detail));
    case 'signed':
      return signed(fixed(value, Number(detail)));
    case 'percent':
      return fixed(100 * value, Number(detail));
    case 'day':
      return fixed(Math.floor(value / HOURS_PER_DAY) + 1, 0);
    case 'hour':
      return fixed(value - HOURS_PER_DAY * Math.floor(value / HOURS_PER_DAY), Number(detail));
    case 'cm2':
      return fixed(value / MM2_PER_CM2, Number(detail));
    default:
      return inches(value, detail);
  }
}

/** Beyond this a `toFixed` keeps no decimals that mean anything. */
const GREATEST = 1e9;
const MM2_PER_CM2 = 100;
const HOURS_PER_DAY = 24;
/** Exact by definition since 1959. */
const MM_PER_INCH = 25.4;
const PARTS = 64;

/** Fixed decimals, a true minus sign, no negative zero. */
function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

const signed = (text: string): string => (/^−|^0(\.0*)?$/.test(text) ? text : `+${text}`);

function inches(valueMm: number, detail: string): string {
  const parts = Math.round((Math.abs(valueMm) / MM_PER_INCH) * PARTS);
  const size = inchSize(parts);
  return parts > 0 && valueMm < 0 && detail !== 'size' ? `−${size}` : size;
}

/** Sixty-fourths in lowest terms: `1 9/64`, `3/8`, `2`. */
function inchSize(parts: number): string {
  const wholes = Math.floor(parts / PARTS);
  let [over, under] = [parts % PARTS, PARTS];
  if (over === 0) return String(wholes);
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return wholes === 0 ? `${over}/${under}` : `${wholes}\u00a0${over}/${under}`;
}
