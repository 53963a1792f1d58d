import { describe, expect, test } from 'vitest';
import { type BodyShape, offsetSquared } from '../../src/body/shape.js';
import { hungLines } from '../../src/drawing/picture/hung.js';
import { seenLure } from '../../src/drawing/picture/seen-lure.js';
import {
  frontView,
  hull,
  seen,
  sideView,
  silhouette,
  type View,
  widestStationMm,
} from '../../src/drawing/picture/view.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import { ringArea, ringBox, signedArea } from '../../src/geometry/ring.js';
import type { Point2, Point3 } from '../../src/geometry/vec.js';
import { random, sampleLure, sampleShape } from './picture-sample.js';

const [A, B, C] = [50, 12, 18];

/** Half-axes A along, B across, C high. */
function ellipsoid(): BodyShape {
  const side = (r: number) =>
    offsetSquared(
      2 * A,
      [0.1, 0.3, 0.5, 0.7, 0.9].map((s) => ({
        stationMm: 2 * A * s,
        offsetMm: r * Math.sqrt(1 - (2 * s - 1) ** 2),
      })),
      { noseRadiusMm: (r * r) / A, tailRadiusMm: (r * r) / A },
    );
  const round = monotoneCurve([0], [2]);
  return {
    lengthMm: 2 * A,
    backSquared: side(C),
    bellySquared: side(C),
    halfBreadthSquared: side(B),
    upperExponent: round,
    lowerExponent: round,
  };
}

const dot = (a: Point3, b: Point3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Area of an ellipsoid's shadow along a unit vector, π √((bc·x)² + (ac·y)² + (ab·z)²): standard geometry. */
const shadow = ([x, y, z]: Point3) => Math.PI * Math.hypot(B * C * x, A * C * y, A * B * z);

const next = random(11);
const UPS: readonly Point3[] = [
  [0, 0, 1],
  [0, 0, -1],
  [0, 1, 0],
  [1, 0, 0],
  [-1, 0, 0],
  ...Array.from({ length: 20 }, (): Point3 => {
    const [z, a] = [2 * next() - 1, 2 * Math.PI * next()];
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(a), r * Math.sin(a), z];
  }),
];

describe('views of an ellipsoid, sky in 25 directions', () => {
  const shape = ellipsoid();
  const views = UPS.flatMap((up): View[] => [sideView(up), frontView(up)]);

  test('right and up are square unit vectors', () => {
    expect(views).toHaveLength(50);
    for (const { right, up } of views) {
      expect(dot(right, right)).toBeCloseTo(1, 12);
      expect(dot(right, up)).toBeCloseTo(0, 12);
    }
  });

  test('the outline has the area of the shadow', () => {
    for (const view of views) {
      const ratio = ringArea(silhouette(shape, view)) / shadow(cross(view.right, view.up));
      // 48 points around lie on the surface: 1 − sinc(2π/48) = 0.3 % of a section is left out.
      expect(ratio).toBeGreaterThan(0.995);
      expect(ratio).toBeLessThan(1.0001);
    }
  });

  test('heights are true: the top is as high as the ellipsoid is', () => {
    for (const { right, up } of views) {
      const [, , , top] = ringBox(silhouette(shape, { right, up }));
      // Middle at (A, 0, 0), support function of an ellipsoid.
      const high = up[0] * A + Math.hypot(A * up[0], B * up[1], C * up[2]);
      expect(Math.abs(top - high)).toBeLessThan(0.15);
    }
  });
});

/** A long body, a stout one and one with a waist, at scale 1; heights and depths unlike. */
const SHAPES: readonly (readonly (readonly [number, number, number, number])[])[] = [
  [
    [20, 15, 16, 12],
    [70, 26, 29, 20],
    [150, 32, 36, 24],
    [260, 25, 28, 20],
    [360, 12, 13, 10],
    [400, 0, 0, 0],
  ],
  [
    [10, 14, 9, 8],
    [30, 25, 18, 14],
    [60, 12, 15, 9],
    [80, 0, 0, 0],
  ],
  [
    [20, 12, 14, 10],
    [60, 5, 6, 5],
    [100, 11, 12, 9],
    [130, 3, 2, 2],
    [160, 0, 0, 0],
  ],
];

function scaledShape(rows: (typeof SHAPES)[number], scale: number): BodyShape {
  const lengthMm = rows[rows.length - 1][0] * scale;
  const side = (k: 1 | 2 | 3) =>
    offsetSquared(
      lengthMm,
      rows.slice(0, -1).map((r) => ({ stationMm: r[0] * scale, offsetMm: r[k] * scale })),
      { noseRadiusMm: 4 * scale, tailRadiusMm: 2 * scale },
    );
  const full = (n: number) => monotoneCurve([lengthMm / 2], [n]);
  return {
    lengthMm,
    backSquared: side(1),
    bellySquared: side(2),
    halfBreadthSquared: side(3),
    upperExponent: full(2.5),
    lowerExponent: full(2.3),
  };
}

/** Area of the body in its center plane, mm², by the midpoint rule over an angle that is dense at the ends. */
function sideArea({ lengthMm, backSquared, bellySquared }: BodyShape): number {
  const n = 4000;
  return Array.from({ length: n }, (_, i) => (Math.PI * (i + 0.5)) / n).reduce((sum, a) => {
    const x = (lengthMm / 2) * (1 - Math.cos(a));
    const high = Math.sqrt(backSquared.value(x)) + Math.sqrt(bellySquared.value(x));
    return sum + (high * (lengthMm / 2) * Math.sin(a) * Math.PI) / n;
  }, 0);
}

describe('the outline from the side at any size', () => {
  const scales = Array.from({ length: 28 }, (_, i) => 0.3 + 0.1 * i); // 24 to 1200 mm long

  test.each([0, 0.02, -0.13, 2.9])('is whole and without a seam, trimmed by %s rad', (trim) => {
    const view = sideView([Math.sin(trim), 0, Math.cos(trim)]);
    for (const rows of SHAPES)
      for (const scale of scales) {
        const shape = scaledShape(rows, scale);
        const outline = silhouette(shape, view);
        // Seen along y, whatever the trim. 72 chords dense at the ends leave out at most
        // 1 − sinc(π/72) ≈ 0.03 % of a half ellipse; three times that for curvature that
        // changes, and a waist's chords lie outside.
        expect(Math.abs(ringArea(outline) / sideArea(shape) - 1)).toBeLessThan(1e-3);
        const stations = outline.map(([u, v]) => u * Math.abs(Math.cos(trim)) + v * Math.sin(trim));
        const n = stations.length;
        const steps = stations.map((x, i) => stations[(i + 1) % n] - x);
        const around = steps.reduce((sum, d) => sum + Math.abs(d), 0);
        // Along the body once there and once back, which a broken outline or a slit is not.
        // Each of its ~400 corners is on a grid of 1e-6 mm.
        expect(Math.abs(around - 2 * shape.lengthMm)).toBeLessThan(2e-3);
      }
  });
});

describe('which way it is seen', () => {
  const tilted: Point3 = [0.3, -0.2, Math.sqrt(1 - 0.13)];

  test('from the side the nose is left, as long as it is level', () => {
    for (const up of [tilted, [0, 0.1, -Math.sqrt(0.99)] as Point3])
      expect(seen(sideView(up), [100, 0, 0])[0]).toBeGreaterThan(90);
  });

  test('from ahead port is right while the back is up, left when belly up', () => {
    expect(seen(frontView([0, 0, 1]), [0, 1, 0])[0]).toBeCloseTo(1, 12);
    expect(seen(frontView([0, 0, -1]), [0, 1, 0])[0]).toBeCloseTo(-1, 12);
    // Heeled with port down, port is the lower side.
    expect(seen(frontView([0, -0.6, 0.8]), [0, 1, 0])[1]).toBeLessThan(0);
  });

  test('standing on its end is the limit of trimming there', () => {
    for (const sign of [1, -1]) {
      const near = sideView([-sign * Math.sqrt(1 - 1e-10), 0, 1e-5]);
      const at = sideView([-sign, 0, 0]);
      for (const k of [0, 1, 2]) expect(at.right[k]).toBeCloseTo(near.right[k], 4);
    }
  });
});

test('the widest station of an ellipsoid is its middle', () => {
  expect(widestStationMm(ellipsoid())).toBeCloseTo(A, 9);
});

test('hull: corners of a square with points on its sides and inside', () => {
  const points: Point2[] = [
    [0, 0],
    [1, 0],
    [2, 0],
    [2, 2],
    [0, 2],
    [1, 1],
    [0, 1],
  ];
  expect(hull(points)).toHaveLength(4);
  expect(signedArea(hull(points))).toBe(4);
  expect(hull(points.slice(0, 3))).toHaveLength(2);
});

describe('what hangs on the eyes', () => {
  const lure = sampleLure(sampleShape());

  test('hangs straight down in the water, whichever way the lure lies', () => {
    for (const up of UPS) {
      const { hung, eyes } = seenLure(lure, sideView(up));
      // Two eyes with a ring, a shank and three hooks each.
      expect(hung).toHaveLength(2 * 5);
      for (const [i, points] of hung.entries()) {
        const [x, y] = eyes[1 + Math.floor(i / 5)].center;
        for (const [u, v] of points) {
          expect(v).toBeLessThan(y + 1e-9);
          expect(Math.abs(u - x)).toBeLessThan(5);
        }
      }
    }
  });

  test('a bare eye carries nothing, a treble alone hangs on the eye', () => {
    expect(hungLines([3, 4], { ring: false, treble: false })).toEqual([]);
    const [shank, ...hooks] = hungLines([3, 4], { ring: false, treble: true });
    expect(shank[0]).toEqual([3, 4]);
    expect(hooks).toHaveLength(3);
  });

  test('from ahead the eye at the nose is before the body, that at the tail behind; reversed from astern', () => {
    const behind = (view: View) => seenLure(lure, view).eyes.map((eye) => eye.behind);
    const ahead = frontView([0, 0, 1]);
    expect(behind(ahead)).toEqual([false, true, true]);
    const astern = { ...ahead, right: [0, -1, 0] as Point3 };
    expect(behind(astern)).toEqual([true, true, false]);
    expect(behind(sideView([0, 0, 1]))).toEqual([false, false, false]);
  });
});
