/** A lip as a part of sheet: a rectangle, with its pattern's name where the slot will hide it. */
import { nominal } from '../blank/nominal.js';
import { polyline } from '../geometry/arcpath.js';
import { type Ring, rectRing } from '../geometry/ring.js';
import type { Lip } from '../pattern/pattern.js';
import type { Cutter } from '../pattern/run.js';
import type { KeyPath, Problem } from '../problem.js';
import { checkCuts, cutPart, type NominalPart } from './cut.js';
import type { Ink } from './ink.js';
import { placeLabel } from './label.js';

/** Frame of the plate: origin at a corner of its inner end, x across the lure, y toward its tip. */
export type LipPlate = {
  readonly part: NominalPart;
  readonly outline: Ring;
  readonly cutter: Cutter;
  readonly ink: Ink;
};

/** `orderLine` counts from 1. */
export type LipName = { readonly name: string; readonly orderLine: number };

export type LipPlateResult = {
  readonly plate: LipPlate | null;
  readonly problems: readonly Problem[];
};

/**
 * The whole plate, the part in the slot included, as the mass budget weighs it: square corners, no
 * hole. Its label keeps to the part in the slot; no line is scored on the part that bends. A name too
 * long for that gives way to the number of its line of the order.
 */
export function makeLipPlate(
  { name, orderLine }: LipName,
  lip: Pick<Lip, 'widthMm' | 'lengthMm' | 'slotDepthMm'>,
  cutter: Cutter,
  key: KeyPath,
): LipPlateResult {
  const outline = rectRing(0, 0, lip.widthMm, lip.lengthMm);
  const part: NominalPart = {
    name,
    outline: nominal(polyline(outline, true)),
    slotMm: null,
    openings: [],
  };
  const { cuts, problems } = cutPart(part, cutter, key);
  if (problems.length > 0) return { plate: null, problems };
  const hidden = rectRing(0, 0, lip.widthMm, lip.slotDepthMm);
  const label =
    placeLabel(name.toUpperCase(), hidden, []) ?? placeLabel(String(orderLine), hidden, []);
  return { plate: { part, outline, cutter, ink: { cuts, marks: [], label } }, problems: [] };
}

export const checkLipPlate = ({ part, cutter, ink }: LipPlate): string[] =>
  checkCuts(part, cutter, ink.cuts);
