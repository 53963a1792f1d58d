import { describe, expect, test } from 'vitest';
import {
  type ArcPath,
  arcOf,
  flatten,
  pathArea,
  pathBox,
  pathLength,
  pathOf,
  polyline,
  segmentsOf,
} from '../../src/geometry/arcpath.js';
import { arcsAlong, type SmoothCurve } from '../../src/geometry/biarc.js';
import { asRegion, offset } from '../../src/geometry/clip.js';
import { meetings } from '../../src/geometry/meet.js';
import { parallel } from '../../src/geometry/parallel.js';
import { regionArea, ringArea } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';

const path = (p: ReturnType<typeof parallel>): ArcPath => {
  if ('kind' in p) throw new Error(`no parallel: ${p.kind}`);
  return p;
};

describe('bulges', () => {
  // Chord 10, bulge tan(90°/4): radius 7.0710678119, sagitta 2.0710678119 (standard geometry of DXF bulges).
  test('radius and box of a quarter arc', () => {
    const s = { from: [0, 0] as Point2, to: [10, 0] as Point2, bulge: 0.4142135624 };
    expect(arcOf(s).radius).toBeCloseTo(7.0710678119, 8);
    // Counter-clockwise from left to right bulges below the chord.
    expect(pathBox(pathOf([s], false))[1]).toBeCloseTo(-2.0710678119, 8);
  });

  test('a circle of two half arcs: area, length, box', () => {
    const circle: ArcPath = {
      closed: true,
      vertices: [
        { x: -3, y: 0, bulge: 1 },
        { x: 3, y: 0, bulge: 1 },
      ],
    };
    expect(pathArea(circle)).toBeCloseTo(Math.PI * 9, 10);
    expect(pathLength(circle)).toBeCloseTo(Math.PI * 6, 10);
    expect(pathBox(circle).map((v) => v + 0)).toEqual([-3, -3, 3, 3]);
    expect(ringArea(flatten(circle, 0.001))).toBeLessThan(Math.PI * 9);
  });
});

describe('biarcs', () => {
  const ellipse =
    (a: number, b: number): SmoothCurve =>
    (t) => ({
      point: [a * Math.cos(t), b * Math.sin(t)],
      tangent: [-a * Math.sin(t), b * Math.cos(t)],
    });

  test('an ellipse in few arcs, close, smooth at every joint', () => {
    const segments = arcsAlong(ellipse(50, 12), 0, 2 * Math.PI, 0.005);
    expect(segments.length).toBeLessThan(120);
    const p = pathOf(segments, true);
    // Tolerance × perimeter / area = 0.005 · 209 / 1885.
    expect(Math.abs(pathArea(p) / (Math.PI * 50 * 12) - 1)).toBeLessThan(5.6e-4);
    for (const [x, y] of flatten(p, 1e-5)) {
      // Distance to the ellipse to first order: |F|/|∇F|.
      const f = (x / 50) ** 2 + (y / 12) ** 2 - 1;
      const g = Math.hypot((2 * x) / 2500, (2 * y) / 144);
      expect(Math.abs(f) / g).toBeLessThan(0.0051);
    }
  });

  test('halving the tolerance eightfold about doubles the arcs (third-order fit)', () => {
    const count = (tol: number) => arcsAlong(ellipse(50, 12), 0.1, 1.5, tol).length;
    expect(count(0.00001) / count(0.00064)).toBeGreaterThan(2);
    expect(count(0.00001) / count(0.00064)).toBeLessThan(8);
  });
});

describe('meetings', () => {
  test('a line and an arc', () => {
    const arc = { from: [5, 0] as Point2, to: [-5, 0] as Point2, bulge: 1 };
    const [p] = meetings(arc, { from: [3, -1], to: [3, 10], bulge: 0 });
    expect(p[0]).toBeCloseTo(3, 9);
    expect(p[1]).toBeCloseTo(4, 9);
    expect(meetings(arc, { from: [3, -4.5], to: [3, -1], bulge: 0 })).toEqual([]);
  });

  test('a clockwise arc is the same place', () => {
    const arc = { from: [-5, 0] as Point2, to: [5, 0] as Point2, bulge: -1 };
    expect(meetings(arc, { from: [3, -1], to: [3, 10], bulge: 0 })[0][1]).toBeCloseTo(4, 9);
  });
});

describe('parallel paths', () => {
  const square = polyline(
    [
      [0, 0],
      [40, 0],
      [40, 20],
      [0, 20],
    ],
    true,
  );

  test('Steiner: A + P·d + π·d² for a rectangle 40 × 20 at 3 (1188.2743339)', () => {
    expect(pathArea(path(parallel(square, 3)))).toBeCloseTo(1188.2743339, 6);
  });

  test('inward: a rectangle stays a rectangle', () => {
    const p = path(parallel(square, -3));
    expect(pathArea(p)).toBeCloseTo(34 * 14, 9);
    expect(p.vertices).toHaveLength(4);
  });

  test('round path outward and back is itself', () => {
    const circle: ArcPath = {
      closed: true,
      vertices: [
        { x: -3, y: 0, bulge: 1 },
        { x: 3, y: 0, bulge: 1 },
      ],
    };
    expect(pathArea(path(parallel(circle, 2)))).toBeCloseTo(25 * Math.PI, 9);
    expect(pathArea(path(parallel(path(parallel(circle, 2)), -2)))).toBeCloseTo(9 * Math.PI, 9);
    expect(parallel(circle, -3.5)).toMatchObject({ kind: 'too-tight', radius: 3 });
  });

  test('a notch narrows by the kerf on both sides and keeps its corners', () => {
    const notched = polyline(
      [
        [0, 0],
        [18, 0],
        [18, 8],
        [20, 8],
        [20, 0],
        [40, 0],
        [40, 20],
        [0, 20],
      ],
      true,
    );
    const p = path(parallel(notched, 0.25));
    const xs = p.vertices.filter((v) => Math.abs(v.y - 7.75) < 1e-9).map((v) => v.x);
    expect(xs.sort((a, b) => a - b)).toEqual([18.25, 19.75]);
    // Second opinion: clipper's polygon offset, whose round corners are chords within 1e-4.
    const polygon = offset([asRegion(flatten(notched, 1e-4))], 0.25, 1e-4);
    expect(polygon).toHaveLength(1);
    expect(pathArea(p)).toBeCloseTo(regionArea(polygon[0]), 3);
    expect(segmentsOf(p).every((s) => Number.isFinite(s.bulge))).toBe(true);
  });

  test('a notch no wider than twice the distance is swallowed', () => {
    const notched = polyline(
      [
        [0, 0],
        [18, 0],
        [18, 8],
        [18.4, 8],
        [18.4, 0],
        [40, 0],
        [40, 20],
        [0, 20],
      ],
      true,
    );
    expect(parallel(notched, 0.25)).toMatchObject({ kind: 'swallowed' });
  });
});
