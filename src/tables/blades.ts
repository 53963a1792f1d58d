/** Band-saw blades by name: width and least radius, from shared/blades.yaml. */
import { z } from 'zod';

const row = z.strictObject({
  /** From teeth to back. */
  widthMm: z.number().positive().max(50),
  /** Tightest curve it turns; soft, 25 % either way. */
  leastRadiusMm: z.number().positive().max(1000),
  source: z.string().min(1).max(400),
});

export const bladeTable = z.strictObject({ blades: z.record(z.string(), row) });

export type Blade = z.output<typeof row>;
export type Blades = Readonly<Record<string, Blade>>;

const byWidth = (blades: Blades): Blade[] =>
  Object.values(blades).sort((a, b) => a.widthMm - b.widthMm);

/**
 * Least radius of a blade of any width, mm: the table's at its widths. Between them, and beyond its
 * ends, by the law R = c·w² of a blade that yaws in its own kerf, c running straight from row to row
 * and staying that of the last row beyond it.
 */
export function turningRadiusMm(blades: Blades, widthMm: number): number {
  const rows = byWidth(blades).map((b) => ({
    w: b.widthMm,
    c: b.leastRadiusMm / b.widthMm ** 2,
  }));
  const above = rows.findIndex((r) => r.w >= widthMm);
  if (above === 0) return rows[0].c * widthMm ** 2;
  if (above < 0) return rows[rows.length - 1].c * widthMm ** 2;
  const [a, b] = [rows[above - 1], rows[above]];
  return (a.c + ((b.c - a.c) * (widthMm - a.w)) / (b.w - a.w)) * widthMm ** 2;
}

/** The widest blade of the table that turns so tightly, or null. */
export const bladeFor = (blades: Blades, radiusMm: number): Blade | null =>
  byWidth(blades)
    .reverse()
    .find((b) => b.leastRadiusMm <= radiusMm) ?? null;

/** The table's narrowest blade. */
export const narrowestOf = (blades: Blades): Blade => byWidth(blades)[0];
