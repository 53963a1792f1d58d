import { describe, expect, it } from 'vitest';
import { rectRing, ringBox } from '../../src/geometry/ring.js';
import { moved } from '../../src/geometry/vec.js';
import { extentOf } from '../../src/nest/apart.js';
import type { NestPart } from '../../src/nest/nest.js';
import { fitsSheet, planSheets, type SheetPlan, type SheetSize } from '../../src/nest/sheets.js';
import { lure, part, SEARCH } from './outlines.js';

const RULES = { gapMm: 3, tries: 4, seed: 1, layouts: 20 };
const SHEET: SheetSize = { lengthMm: 300, widthMm: 200, thicknessMm: 2, marginMm: 5 };

const plate = (id: string, widthMm: number, lengthMm: number, count: number): NestPart =>
  part(id, rectRing(0, 0, widthMm, lengthMm), count, 2);

/** Found sound: every part as often as ordered, inside the margins, where it says it lies. */
function planned(parts: readonly NestPart[], sheet = SHEET): SheetPlan {
  const plan = planSheets(parts, sheet, RULES, SEARCH);
  expect(plan.complaints).toEqual([]);
  for (const { id, outline, orderedCount } of parts) {
    const placed = plan.layouts.flatMap((l) =>
      l.placements.filter((p) => p.part === id).map((p) => ({ ...p, copies: l.copies })),
    );
    expect(placed.reduce((sum, p) => sum + p.copies, 0)).toBe(orderedCount);
    for (const p of placed) {
      const { left, bottom, right, top } = extentOf(p.outline);
      expect(Math.min(left, bottom)).toBeGreaterThanOrEqual(sheet.marginMm - 1e-6);
      expect(right).toBeLessThanOrEqual(sheet.lengthMm - sheet.marginMm + 1e-6);
      expect(top).toBeLessThanOrEqual(sheet.widthMm - sheet.marginMm + 1e-6);
      outline.forEach((point, i) => {
        const [x, y] = moved({ turnDeg: p.turnDeg, move: [p.xMm, p.yMm] }, point);
        expect(Math.hypot(x - p.outline[i][0], y - p.outline[i][1])).toBeLessThan(1e-6);
      });
    }
  }
  return plan;
}

const sheets = ({ layouts }: SheetPlan): number => layouts.reduce((sum, l) => sum + l.copies, 0);

describe('parts on sheets', () => {
  it('one of each outline, on one sheet when they fit together', () => {
    const plan = planned([part('a', lure(120, 30), 1, 2), part('b', lure(80, 22), 1, 2)]);
    expect(plan.layouts).toHaveLength(1);
    expect(plan.layouts[0].copies).toBe(1);
  });

  // A grid holds ⌊(290 + 3)/(22 + 3)⌋ × ⌊(190 + 3)/(34 + 3)⌋ = 11 × 5 plates of 22 × 34.
  it('never takes more sheets than a grid of plates would', () => {
    expect(sheets(planned([plate('a', 22, 34, 55)]))).toBe(1);
    expect(sheets(planned([plate('a', 22, 34, 550)]))).toBeLessThanOrEqual(10);
  });

  it('repeats one layout for a long order', () => {
    const plan = planned([plate('a', 26, 48, 10000)]);
    expect(plan.layouts.length).toBeLessThanOrEqual(2);
  });

  it('turns by a quarter what fits the sheet only so, and leaves the rest', () => {
    const tall = plate('tall', 20, 250, 2);
    const wide = plate('wide', 250, 20, 2);
    const turns = (id: string) => (plan: SheetPlan) =>
      plan.layouts.flatMap((l) =>
        l.placements.filter((p) => p.part === id).map((p) => p.turnDeg % 180),
      );
    const both = planned([tall, wide]);
    expect(turns('tall')(both)).toEqual([90, 90]);
    expect(turns('wide')(both)).toEqual([0, 0]);
    expect(turns('tall')(planned([tall]))).toEqual([90, 90]);
  });

  it('turns all by a quarter when that takes fewer sheets', () => {
    // On 200 × 58 mm clear: one row of 50 × 28 either way, ⌊203/53⌋ = 3 in it along, ⌊203/31⌋ = 6 turned.
    const narrow = { ...SHEET, lengthMm: 210, widthMm: 68 };
    const plan = planned([plate('a', 50, 28, 6)], narrow);
    expect(sheets(plan)).toBe(1);
  });

  it('is told what fits at all', () => {
    expect(fitsSheet(rectRing(0, 0, 290, 190), SHEET)).toBe(true);
    expect(fitsSheet(rectRing(0, 0, 190, 290), SHEET)).toBe(true);
    expect(fitsSheet(rectRing(0, 0, 290.01, 190), SHEET)).toBe(false);
    expect(planned([plate('a', 290, 190, 1)]).layouts).toHaveLength(1);
  });

  it('lists placements from left to right, the same every time', () => {
    const parts = [plate('a', 22, 34, 20), part('b', lure(90, 24), 3, 2)];
    const plan = planned(parts);
    for (const { placements } of plan.layouts) {
      const lefts = placements.map((p) => ringBox(p.outline)[0]);
      expect(lefts).toEqual([...lefts].sort((a, b) => a - b));
    }
    expect(planned(parts)).toEqual(plan);
  });
});
