import { describe, expect, test } from 'vitest';
import type { Point3 } from '../../src/geometry/vec.js';
import { type Contact, playOf } from '../../src/jig/lip-slot-guide/play.js';

const DEG = 180 / Math.PI;

/** A flat side's corners, and the gap there. */
const flat = (corners: readonly (readonly [number, number])[], gapMm: number): Contact[] =>
  corners.map(([x, z]) => ({ at: [x, 10, z], normal: [0, 1, 0], gapMm }));

describe('flat sides', () => {
  test('a rectangle turns by twice the gap over its length either way, wherever it lies', () => {
    for (const [x0, z0] of [
      [0, 0],
      [35, 12],
    ]) {
      const corners = [
        [x0, z0],
        [x0 + 40, z0],
        [x0 + 40, z0 + 25],
        [x0, z0 + 25],
      ] as const;
      const { aboutZDeg, aboutXDeg } = playOf(flat(corners, 0.15));
      expect(aboutZDeg).toBeCloseTo((0.3 / 40) * DEG, 4);
      expect(aboutXDeg).toBeCloseTo((0.3 / 25) * DEG, 4);
    }
  });

  test('a triangle: its longest line across counts, by the closed form of the plane through three gaps', () => {
    // Base 30 along X at z = 0, tip at z = 20: about Z over 30 mm; about X over the height at the
    // base, because the tip can be at one end of the gap and both base corners at the other.
    const { aboutZDeg, aboutXDeg } = playOf(
      flat(
        [
          [0, 0],
          [30, 0],
          [15, 20],
        ],
        0.1,
      ),
    );
    expect(aboutZDeg).toBeCloseTo((0.2 / 30) * DEG, 4);
    expect(aboutXDeg).toBeCloseTo((0.2 / 20) * DEG, 4);
  });
});

describe('round bodies', () => {
  /** Points of a body of revolution about the line of X and Z at `axisDeg` from Z. */
  const round = (axisDeg: number, radius: number): Contact[] => {
    const [s, c] = [Math.sin(axisDeg / DEG), Math.cos(axisDeg / DEG)];
    return [-15, 0, 15].flatMap((along) =>
      [10, 40, 70].map((turn): Contact => {
        const [y, q] = [Math.cos(turn / DEG), -Math.sin(turn / DEG)];
        // Across the axis in the plane of X and Z.
        const normal: Point3 = [c * q, y, -s * q];
        return {
          at: [s * along + radius * normal[0], radius * y, c * along + radius * normal[2]],
          normal,
          gapMm: 0.1,
        };
      }),
    );
  };

  test('rolls about its own axis without end', () => {
    expect(playOf(round(0, 9)).aboutZDeg).toBe(90);
    expect(playOf(round(45, 9)).aboutZDeg).toBe(90);
  });

  test('and not square to it: twice the gap over the length held', () => {
    expect(playOf(round(90, 9)).aboutZDeg).toBeLessThan(((0.2 * DEG) / 30) * 1.2);
  });
});
