import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../src/drawing/drawing.js';
import { labelStrokes, type Obstacle, placeLabel } from '../../src/drawing/label.js';
import { letteringWidth } from '../../src/geometry/lettering.js';
import { circleRing, rectRing } from '../../src/geometry/ring.js';
import { boxOf, type Motion, mix, type Point2 } from '../../src/geometry/vec.js';
import { lureBlank } from './sample.js';

const STAY: Motion = { turnDeg: 0, move: [0, 0] };
const DATUM: Obstacle = {
  points: [
    [-2, 0],
    [120, 0],
  ],
  closed: false,
};
const inkOf = (strokes: readonly Stroke[]): Point2[] =>
  strokes.flatMap((s) =>
    s.kind === 'path' ? s.path.vertices.map(({ x, y }): Point2 => [x, y]) : [],
  );

const round = (center: Point2, radius: number) => circleRing(center, radius, { segments: 64 });

/** Least distance between ink and points sampled densely along lines; the slow, plain way. */
function leastDistance(ink: readonly Point2[], line: readonly Point2[]): number {
  let least = Infinity;
  for (let i = 1; i < line.length; i++) {
    const steps = Math.ceil(
      Math.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]) / 0.1,
    );
    for (let k = 0; k <= steps; k++) {
      const p = mix(line[i - 1], line[i], k / steps);
      for (const q of ink) least = Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1]));
    }
  }
  return least;
}

describe('placeLabel', () => {
  it('keeps 1.2 mm from the outline and every obstacle of a lure', () => {
    const { outlineRing } = lureBlank();
    const hole: Obstacle = { points: round([40, 6], 2.5), closed: true };
    const label = placeLabel('SKERRY 110 V1.3', outlineRing, [DATUM, hole]);
    if (!label) throw new Error('no room');
    expect(label.heightMm).toBeGreaterThanOrEqual(3);
    const ink = inkOf(labelStrokes('LABEL', label, STAY));
    // lines are sampled every 0.1 mm, which overstates a distance of 1.2 mm by at most 0.001 mm
    expect(leastDistance(ink, [...outlineRing, outlineRing[0]])).toBeGreaterThanOrEqual(1.199);
    expect(leastDistance(ink, DATUM.points)).toBeGreaterThanOrEqual(1.199);
    expect(leastDistance(ink, hole.points)).toBeGreaterThanOrEqual(1.199);
  });

  it('finds the largest letters: on a plain board its height decides', () => {
    const text = 'HOLM';
    const found = (height: number) => placeLabel(text, rectRing(0, 0, 100, height), [])?.heightMm;
    // letters h high need 2 × 1.2 mm above and below them
    expect(found(20)).toBe(5);
    expect(found(2.4 + 4.5)).toBe(4.5);
    expect(found(2.4 + 4.49)).toBe(4.25);
    expect(found(2.4 + 2)).toBe(2);
    expect(found(2.4 + 1.99)).toBeUndefined();
  });

  it('finds the largest letters: on a high board its length decides', () => {
    const width = letteringWidth('HOLM 70', { heightMm: 3 });
    expect(placeLabel('HOLM 70', rectRing(0, 0, width + 2.401, 50), [])?.heightMm).toBe(3);
    expect(placeLabel('HOLM 70', rectRing(0, 0, width + 2.3, 50), [])?.heightMm).toBe(2.75);
  });

  it('stands in the middle, above the datum line before below, centered in the free height', () => {
    const board = rectRing(0, -10, 100, 10);
    const label = placeLabel('HOLM 70', board, [DATUM]);
    expect(label?.center[0]).toBe(50);
    // free from 1.2 to 8.8; stepped by 0.1 mm
    expect(Math.abs((label?.center[1] ?? 0) - 5)).toBeLessThanOrEqual(0.1);
    const below = placeLabel('HOLM 70', board, [
      DATUM,
      { points: round([50, 5], 40), closed: true },
    ]);
    expect(below).toBeNull();
    const belowOnly = placeLabel('HOLM 70', board, [
      DATUM,
      {
        points: [
          [0, 1],
          [100, 1],
          [100, 9],
          [0, 9],
        ],
        closed: true,
      },
    ]);
    expect(belowOnly?.center[1]).toBeLessThan(0);
  });

  it('goes where letters of that height have more room', () => {
    const lopsided = rectRing(0, -9, 100, 16);
    const label = placeLabel('HOLM 70', lopsided, [DATUM]);
    expect(label?.heightMm).toBe(5);
    // both sides hold letters of 5 mm; above, 16 mm are free instead of 9
    expect(Math.abs((label?.center[1] ?? 0) - 8)).toBeLessThanOrEqual(0.1);
    expect(placeLabel('HOLM 70', rectRing(0, -16, 100, 9), [DATUM])?.center[1]).toBeLessThan(0);
  });

  it('does not hide inside a closed obstacle', () => {
    const board = rectRing(0, 0, 60, 12);
    const frame: Obstacle = { points: rectRing(2, 1, 58, 11), closed: true };
    expect(placeLabel('A', board, [])).not.toBeNull();
    expect(placeLabel('A', board, [frame])).toBeNull();
  });
});

describe('a label on a moved blank', () => {
  const label = { text: 'HOLM 70', heightMm: 4, center: [30, 5] } as const;

  it('moves with it and is never upside down', () => {
    const width = letteringWidth(label.text, label);
    for (const [turnDeg, center] of [
      [0, [130, 25]],
      [180, [70, 15]],
      [360, [130, 25]],
    ] as const) {
      const strokes = labelStrokes('LABEL', label, { turnDeg, move: [100, 20] });
      const [minX, minY, maxX, maxY] = boxOf(inkOf(strokes));
      expect((minX + maxX) / 2).toBeCloseTo(center[0], 9);
      expect((minY + maxY) / 2).toBeCloseTo(center[1], 9);
      expect(maxX - minX).toBeCloseTo(width, 9);
      // H is drawn first, and its left upright first of all: it stands on the left
      expect(inkOf(strokes)[0][0]).toBeCloseTo(minX, 9);
    }
  });

  it('leans with a blank that leans', () => {
    const box = (turnDeg: number) =>
      boxOf(inkOf(labelStrokes('LABEL', label, { turnDeg, move: [0, 0] })));
    const [minX, minY, maxX, maxY] = box(3);
    const [cos, sin] = [Math.cos((3 * Math.PI) / 180), Math.sin((3 * Math.PI) / 180)];
    expect((minX + maxX) / 2).toBeCloseTo(30 * cos - 5 * sin, 1);
    expect(maxY - minY).toBeGreaterThan(4);
    const [, low, , high] = box(183);
    expect(high - low).toBeCloseTo(maxY - minY, 9);
  });
});
