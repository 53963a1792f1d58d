/** How a lure that is let go under water moves, in words. */
import type { DrawnSpeed } from './input.js';
import { spelled } from './words.js';

/** Slower than this is not seen. */
const SLOWEST_CM_S = 0.05;
/** Less than this is level, degrees. */
const LEVEL_DEG = 0.5;

const isStill = ({ cmS }: DrawnSpeed): boolean => cmS < SLOWEST_CM_S;

const rangeWords = ({ lowCmS, highCmS }: DrawnSpeed): string =>
  `${spelled(lowCmS, 0)} to ${spelled(highCmS, 0)}`;

/** `level`, `38° nose down`; null where it is not told. */
export function underWayWords({ trimDeg }: DrawnSpeed): string | null {
  if (trimDeg === null) return null;
  const size = Math.abs(trimDeg);
  return size < LEVEL_DEG ? 'level' : `${spelled(size, 0)}° nose ${trimDeg > 0 ? 'up' : 'down'}`;
}

const listed = (parts: readonly (string | null)[]): string =>
  parts.filter((part) => part !== null).join(', ');

/** Under the middle figure: `rises, 13 to 21, level`. */
export const speedWords = (speed: DrawnSpeed): string =>
  isStill(speed)
    ? 'stays where it is'
    : listed([speed.kind, rangeWords(speed), underWayWords(speed)]);

/** In a sentence: `sinks 17 cm/s, 38° nose down`. */
export const movingWords = (speed: DrawnSpeed): string =>
  isStill(speed)
    ? 'stays where it is'
    : listed([`${speed.kind} ${spelled(speed.cmS, 0)} cm/s`, underWayWords(speed)]);

/** In a row of figures in cm/s: `rises 17, 13 to 21`. */
export const speedFigures = (speed: DrawnSpeed): string =>
  isStill(speed) ? '0' : `${speed.kind} ${spelled(speed.cmS, 0)}, ${rangeWords(speed)}`;
