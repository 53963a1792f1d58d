/** Building blocks of the schemas: numbers with a unit, a range and a description. */
import { z } from 'zod';

export const mm = (about: string, min: number, max: number) =>
  z.number().min(min).max(max).describe(about);

/** A place on a face: two numbers, along it and across. */
export const pointMm = (about: string, mostX: number, mostY: number) =>
  z
    .tuple([z.number().min(0).max(mostX), z.number().min(0).max(mostY)])
    .describe(
      `${about}: [x, y], along the block from its left end and across from its lower edge.`,
    );

/** A length above zero. */
export const positiveMm = (about: string, max: number, min = 0.01) => mm(about, min, max);

export const deg = (about: string, min: number, max: number) =>
  z.number().min(min).max(max).describe(about);

export const ratio = (about: string, min: number, max: number) =>
  z.number().min(min).max(max).describe(about);

export const exponent = (about: string) => z.number().min(1).max(12).describe(about);

/** The two ways to give a station; exactly one of them, held by a rule. */
export const station = (about: string) => ({
  stationMm: mm(`${about} Distance aft of the nose along the datum line.`, 0, 1000).optional(),
  stationRatio: ratio(`${about} As a share of the length: 0 nose, 1 tail.`, 0, 1).optional(),
});

export type StationFields = {
  readonly stationMm?: number | undefined;
  readonly stationRatio?: number | undefined;
};

export const nameText = (about: string) =>
  z
    .string()
    .max(40)
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    .describe(about);

export const versionText = (about: string) =>
  z
    .string()
    .max(12)
    .regex(/^[0-9]+(\.[0-9]+)*[a-z]?$/)
    .describe(about);

/** Text that is drawn with single-stroke letters, which know printable ASCII only. */
export const plainText = (about: string, most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .regex(/^[\x20-\x7e]+$/)
    .describe(about);

/** kg/m³. */
export const density = (about: string, min: number, max: number) =>
  z.number().min(min).max(max).describe(about);

/** The name of a row in a table: whether there is such a row, a rule tells. */
export const itemName = (about: string) => z.string().min(1).max(60).describe(about);
