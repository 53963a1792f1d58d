import type { LetGo } from '../float/let-go.js';
import type { Floating } from './floating.js';

export type ToldSpeed = Omit<LetGo, 'trimDeg'> & {
  /** Of the long axis under way, positive nose up; null where it is not told. */
  readonly trimDeg: number | null;
};

/** A lip turns a lure under way farther than is computed: then no attitude is told. */
export const toldSpeed = (speed: LetGo, { lip }: Floating['pattern']): ToldSpeed => ({
  ...speed,
  trimDeg: lip ? null : speed.trimDeg,
});
