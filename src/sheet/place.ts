/**
 * A value in the record together with where it stands there, as a JSON pointer (RFC 6901). The sheet
 * reads the record only through places, so every number it shows can say where it comes from.
 */
import { Fault } from '../problem.js';

export type Place<T> = { readonly from: string; readonly value: T };

export const whole = <T>(record: T): Place<T> => ({ from: '', value: record });

/** A member of an object. @throws Fault where the record lacks it */
export function at<T extends object, K extends keyof T & (string | number)>(
  { from, value }: Place<T>,
  key: K,
): Place<T[K]> {
  const inside = value[key];
  const place = `${from}/${String(key).replace(/~/g, '~0').replace(/\//g, '~1')}`;
  if (inside === undefined) throw new Fault(`the record has no ${place}`);
  return { from: place, value: inside };
}

/** Every element of a list, in its order. */
export const each = <T>({ from, value }: Place<readonly T[]>): readonly Place<T>[] =>
  value.map((inside, i) => ({ from: `${from}/${i}`, value: inside }));

/** The place, where something stands there; null where the record says null. */
export const present = <T>(place: Place<T | null>): Place<T> | null =>
  place.value === null ? null : { from: place.from, value: place.value };

/** Place of an element in its list, from 1. @throws Fault for what stands in no list */
export function ordinal({ from }: Place<unknown>): number {
  const index = Number(from.slice(from.lastIndexOf('/') + 1));
  if (!Number.isInteger(index)) throw new Fault(`${from} is no element of a list`);
  return index + 1;
}
