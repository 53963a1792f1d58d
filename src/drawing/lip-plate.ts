/** A lip as a part of sheet, with its pattern's name where the slot will hide it. */
import { CHORD_TOLERANCE_MM } from '../blank/blank.js';
import { lipHole, lipOutline, type Plate } from '../blank/lip-outline.js';
import { nominal } from '../blank/nominal.js';
import { flatten } from '../geometry/arcpath.js';
import { type Ring, rectRing } from '../geometry/ring.js';
import type { Cutter } from '../pattern/run.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
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
 * The whole plate, tab, rounds and hole as the mass budget weighs them. Its label keeps to the part in
 * the slot; no line is scored on the part that bends. A name too long for that gives way to the
 * number of its line of the order.
 */
export function makeLipPlate(
  { name, orderLine }: LipName,
  lip: Plate,
  cutter: Cutter,
  key: KeyPath,
): LipPlateResult {
  const path = lipOutline(lip);
  const hole = lipHole(lip);
  const part: NominalPart = {
    name,
    outline: nominal(path),
    slotMm: null,
    openings: hole ? [hole] : [],
  };
  const tight = tightCorner(lip, cutter, { name, key });
  if (tight.length > 0) return { plate: null, problems: tight };
  const { cuts, problems } = cutPart(part, cutter, key);
  if (problems.length > 0) return { plate: null, problems };
  const tabMm = lip.tab?.widthMm ?? lip.widthMm;
  const asideMm = (lip.widthMm - tabMm) / 2;
  const hidden = rectRing(asideMm, 0, asideMm + tabMm, lip.slotDepthMm);
  const label =
    placeLabel(name.toUpperCase(), hidden, []) ?? placeLabel(String(orderLine), hidden, []);
  const outline = flatten(path, CHORD_TOLERANCE_MM);
  return { plate: { part, outline, cutter, ink: { cuts, marks: [], label } }, problems: [] };
}

/** Inside corners that a cutter cannot follow round; square ones it leaves as round as itself. */
function tightCorner(
  { tab }: Plate,
  { guidance, kerfMm }: Cutter,
  { name, key }: { readonly name: string; readonly key: KeyPath },
): Problem[] {
  const radiusMm = tab?.insideRadiusMm ?? 0;
  const halfMm = guidance === 'follows' ? kerfMm / 2 : 0;
  if (radiusMm === 0 || radiusMm > halfMm + LEAST_TURN_MM) return [];
  const limitMm = Math.ceil((halfMm + LEAST_TURN_MM) * 10) / 10;
  const facts = { name, radiusMm, kerfMm, limitMm, key: `${key.join('.')}.kerfMm` };
  return [problem('lip-tab-radius-under-kerf', [...key, 'kerfMm'], facts)];
}

/** Least radius of the path of a cutter round a corner, mm: less is a standstill. */
const LEAST_TURN_MM = 1e-3;

export const checkLipPlate = ({ part, cutter, ink }: LipPlate): string[] =>
  checkCuts(part, cutter, ink.cuts);
