/** How the roles and pens of a picture look, in any format: tones, weights, dashes and hatching. */
import type { Pen, Role } from '../drawing/picture/picture.js';

export type Look = {
  readonly tone: string;
  /** Lines over the tone, slanting up to the right or down, as seen with y downward. */
  readonly hatch?: { readonly tone: string; readonly slantDeg: 45 | -45 };
};

/** Lightness (L*) beside each tone: areas that meet differ by 8 or more. */
export const LOOK: Readonly<Record<Role, Look>> = {
  sheet: { tone: '#ffffff' }, // 100
  ink: { tone: '#1f2426' }, // 14
  faint: { tone: '#6b7173' }, // 47
  line: { tone: '#3a4144' }, // 27
  water: { tone: '#dbe7ea' }, // 91
  surface: { tone: '#2f5563' }, // 34
  wood: { tone: '#e9d9bd' }, // 87
  wetWood: { tone: '#b9a583' }, // 69
  lip: { tone: '#f2f5f5' }, // 96
  wetLip: { tone: '#c4d3d7' }, // 84
  metal: { tone: '#5b6064' }, // 40
  bar: { tone: '#9db1b5' }, // 71
  grid: { tone: '#cdd3d5' }, // 84
  good: { tone: '#e7efe6', hatch: { tone: '#6f9176', slantDeg: 45 } }, // 94, 57
  warn: { tone: '#f6e3da', hatch: { tone: '#a5532f', slantDeg: -45 } }, // 92, 45
};

/** Line weights, mm. */
export const WEIGHT_MM: Readonly<Record<Pen, number>> = {
  hair: 0.15,
  fine: 0.3,
  firm: 0.5,
  bold: 0.7,
};

/** Marks and gaps, mm. */
export const DASHES_MM = [2, 1.2] as const;
export const CHAIN_MM = [7, 1.2, 0.8, 1.2] as const;

/** Stripes so wide, one each step, mm. */
export const HATCH = { stepMm: 1.6, widthMm: 0.3 } as const;
