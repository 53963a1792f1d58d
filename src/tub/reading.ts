/** What a maker reads in the tub, as it is typed: `trimDeg=-6,massG=21.4`. */
import { nearest } from '../pattern/nearest.js';

/** One look at the lure; what was not read is absent. */
export type Reading = {
  /** Angle of the datum line, nose up. */
  readonly trimDeg?: number;
  /** Height of the nose or tail tip above the water, negative under it. */
  readonly freeboardNoseMm?: number;
  readonly freeboardTailMm?: number;
  /** Weight of the rigged lure on the scale, without what is hung on it. */
  readonly massG?: number;
  /** Lead trial weight hung under the belly at a station, its weight in air. */
  readonly hungG?: number;
  readonly hungStationMm?: number;
};

type Key = keyof Reading;

/** Least and most that can be meant. */
const LIMITS: Readonly<Record<Key, readonly [least: number, most: number]>> = {
  trimDeg: [-90, 90],
  freeboardNoseMm: [-1000, 1000],
  freeboardTailMm: [-1000, 1000],
  massG: [0.1, 10000],
  hungG: [0.01, 1000],
  hungStationMm: [0, 1000],
};

const READING_KEYS = Object.keys(LIMITS) as readonly Key[];

/** The reading, or a sentence that says what is wrong with the text. */
export function parseReading(text: string): Reading | string {
  const found = new Map<Key, number>();
  for (const part of text.split(',')) {
    const [name, value, ...more] = part.split('=').map((t) => t.trim());
    const key = READING_KEYS.find((k) => k === name);
    if (key === undefined) {
      if (/^\d+$/.test(part.trim()))
        return `"${text}": write decimals with a point, as in massG=21.4.`;
      const guess = nearest(name, READING_KEYS);
      return `"${name}" cannot be read in the tub; there are ${READING_KEYS.join(', ')}.${guess ? ` Did you mean ${guess}?` : ''}`;
    }
    const number = Number(value);
    if (value === undefined || value === '' || more.length > 0 || !Number.isFinite(number))
      return `"${part.trim()}" is not ${key}=NUMBER.`;
    const [least, most] = LIMITS[key];
    if (number < least || number > most)
      return `${key} is ${number}: it must be ${least} to ${most}.`;
    if (found.has(key)) return `${key} is given twice in one reading.`;
    found.set(key, number);
  }
  if (found.has('hungG') !== found.has('hungStationMm'))
    return 'hungG and hungStationMm go together: what was hung, and where.';
  if ([...found.keys()].every((k) => k === 'hungG' || k === 'hungStationMm'))
    return `"${text}" says what was hung, but not what was read.`;
  return Object.fromEntries(found) as Reading;
}
