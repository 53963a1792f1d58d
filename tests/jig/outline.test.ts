import { describe, expect, test } from 'vitest';
import { circleRing, insideRing, rectRing, ring, ringArea } from '../../src/geometry/ring.js';
import { bandsOf, columnAt, reachBetween, swept, wholeMicrons } from '../../src/jig/outline.js';
import { lureProfile } from './lure-blanks.js';

const wedge = ring([
  [0, 0],
  [10, -2],
  [10, 4],
]);

describe('heights', () => {
  test('reach between two x counts edges that only pass through', () => {
    expect(reachBetween(wedge, 5, 6)).toEqual({ low: -1.2, high: 2.4 });
    expect(reachBetween(wedge, -5, 20)).toEqual({ low: -2, high: 4 });
    expect(reachBetween(wedge, 11, 12)).toBeNull();
  });

  test('column: two crossings, or none', () => {
    expect(columnAt(wedge, 5)).toEqual({ low: -1, high: 2 });
    expect(columnAt(wedge, -1)).toBeNull();
    const fork = ring([
      [0, 0],
      [4, 0],
      [4, 1],
      [1, 1],
      [1, 2],
      [4, 2],
      [4, 3],
      [0, 3],
    ]);
    expect(columnAt(fork, 2)).toBeNull();
  });

  test('band: what is inside from one x to the other', () => {
    expect(bandsOf(wedge)(5, 8)).toEqual({ low: -1, high: 2 });
    expect(bandsOf(wedge)(-1, 8)).toBeNull();
  });
});

describe('sweeping', () => {
  test('a convex outline grows by its width times the way', () => {
    // Circle as a 90-gon: width across x is 2 r to the corner it has on both sides... measured.
    const circle = circleRing([3, 4], 5, { segments: 90 });
    const heights = circle.map(([, y]) => y);
    const across = Math.max(...heights) - Math.min(...heights);
    expect(ringArea(swept(circle, [7, 0]))).toBeCloseTo(ringArea(circle) + 7 * across, 4);
    expect(ringArea(swept(rectRing(0, 0, 2, 3), [0, 5]))).toBeCloseTo(16, 6);
  });

  test('order of two ways does not matter, and all places on the way are covered', () => {
    const profile = lureProfile({
      lengthMm: 90,
      backRatio: 0.1,
      bellyRatio: 0.16,
      thicknessMm: 20,
      lipAngleDeg: 45,
      holeStations: [],
    });
    const one = swept(swept(profile, [3, 0]), [0, -2]);
    const other = swept(swept(profile, [0, -2]), [3, 0]);
    expect(ringArea(one)).toBeCloseTo(ringArea(other), 2);
    const places = [0, 0.25, 0.5, 1].flatMap((t) =>
      profile.map(([x, y]) => [x + 3 * t * 0.999, y - 2 * t * 0.999] as const),
    );
    expect(places.length).toBeGreaterThan(400);
    const middle = [45, 0];
    // Points are pulled in by a thousandth: those on the edge may count either way.
    const inside = places.filter(([x, y]) =>
      insideRing([x + (middle[0] - x) * 1e-3, y + (middle[1] - y) * 1e-3], one),
    );
    expect(inside.length).toBe(places.length);
  });
});

test('outer measures are rounded up to whole micrometers', () => {
  expect(wholeMicrons(12.3401)).toBe(12.341);
  expect(wholeMicrons(12.34)).toBe(12.34);
});
