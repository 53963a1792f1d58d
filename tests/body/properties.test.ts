import { describe, expect, test } from 'vitest';
import { bodyMesh, finenessFor } from '../../src/body/mesh.js';
import { bodyProperties } from '../../src/body/properties.js';
import { halfSectionMoments } from '../../src/body/section.js';
import { type BodyShape, offsetSquared } from '../../src/body/shape.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import { meshVolume } from '../../src/geometry/mesh.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import { beta } from '../../src/geometry/quadrature.js';

const constant = (n: number) => monotoneCurve([0], [n]);

/** An ellipsoid of half-axes a, b, c as a maker would tabulate it: offsets at stations, round ends. */
function ellipsoid(
  a: number,
  b: number,
  c: number,
  { n = 2, belly = c }: { n?: number; belly?: number } = {},
): BodyShape {
  const stations = [0.1, 0.3, 0.5, 0.7, 0.9];
  const side = (r: number) =>
    offsetSquared(
      2 * a,
      stations.map((s) => ({
        stationMm: 2 * a * s,
        offsetMm: r * Math.sqrt(1 - (2 * s - 1) ** 2),
      })),
      { noseRadiusMm: (r * r) / a, tailRadiusMm: (r * r) / a },
    );
  return {
    lengthMm: 2 * a,
    backSquared: side(c),
    bellySquared: side(belly),
    halfBreadthSquared: side(b),
    upperExponent: constant(n),
    lowerExponent: constant(n),
  };
}

const rel = (got: number, want: number) => Math.abs(got / want - 1);

describe('closed forms, standard geometry', () => {
  // Values: closed forms worked to the digits shown (ellipsoid volume 4πabc/3; its surface by quadrature).
  test('ellipsoid 50, 15, 10', () => {
    const p = bodyProperties(ellipsoid(50, 15, 10));
    expect(rel(p.volumeMm3, 31415.926536)).toBeLessThan(1e-9);
    expect(rel(p.areaMm2, 6378.944813)).toBeLessThan(1e-9);
    expect(p.centroidMm[0]).toBeCloseTo(50, 9);
    expect(p.centroidMm[2]).toBeCloseTo(0, 9);
    const v = p.volumeMm3;
    expect(rel(p.inertiaMm5.xx, (v * (15 ** 2 + 10 ** 2)) / 5)).toBeLessThan(1e-9);
    expect(rel(p.inertiaMm5.yy, (v * (50 ** 2 + 10 ** 2)) / 5)).toBeLessThan(1e-9);
    expect(rel(p.inertiaMm5.zz, (v * (50 ** 2 + 15 ** 2)) / 5)).toBeLessThan(1e-9);
    expect(Math.abs(p.inertiaMm5.xz)).toBeLessThan(1e-6 * v);
  });

  // 2πb²(1 + a·asin(e)/(b·e)), e² = 1 − b²/a².
  test.each([
    [50, 15, 7668.175036],
    [2, 1, 21.47843533],
    [5, 1, 50.19251018],
  ])('prolate spheroid %d, %d has surface %d', (a, b, area) => {
    expect(rel(bodyProperties(ellipsoid(a, b, b)).areaMm2, area)).toBeLessThan(1e-9);
  });

  test('half body: flat belly, center 3c/8 above the flat', () => {
    const p = bodyProperties(ellipsoid(50, 15, 10, { belly: 0 }));
    expect(rel(p.volumeMm3, 31415.926536 / 2)).toBeLessThan(1e-9);
    expect(p.centroidMm[2]).toBeCloseTo((3 * 10) / 8, 8);
    // Half the surface and the flat ellipse πab.
    expect(rel(p.areaMm2, 6378.944813 / 2 + Math.PI * 50 * 15)).toBeLessThan(1e-9);
  });

  test.each([
    [2, Math.PI, 0.4244131816, 0.7853981634],
    [2.5, 3.3809353625, 0.4436809841, 0.9117447217],
    [3, 3.5332775006, 0.4563089373, 1.0],
    [4, 3.7081493546, 0.4714045208, 1.1107207345],
    [5, 3.800600556, 0.4797898165, 1.1744501606],
    [8, 3.9138432878, 0.4907048763, 1.2594635234],
  ])('superellipse n = %d: area, centroid, second moment', (n, area, centroid, second) => {
    const m = halfSectionMoments({ b: 1, h: 1, n });
    expect(rel(2 * m.area, area)).toBeLessThan(1e-9);
    expect(rel(m.z / m.area, centroid)).toBeLessThan(1e-9);
    expect(rel(2 * m.zz, second)).toBeLessThan(1e-9);
    expect(rel(2 * m.yy, second)).toBeLessThan(1e-9);
  });

  test.each([2.5, 3, 4, 5, 8])(
    'body of superellipse sections n = %d: section area × ∫(1 − ξ²)',
    (n) => {
      const p = bodyProperties(ellipsoid(50, 15, 10, { n }));
      const section = 2 * halfSectionMoments({ b: 15, h: 10, n }).area;
      expect(rel(p.volumeMm3, section * 50 * (4 / 3))).toBeLessThan(1e-9);
    },
  );

  test('back, belly and plan of different fullness add: two half ellipsoids', () => {
    const p = bodyProperties(ellipsoid(40, 9, 12, { belly: 5 }));
    expect(rel(p.volumeMm3, (2 / 3) * Math.PI * 40 * 9 * (12 + 5))).toBeLessThan(1e-9);
    expect(p.centroidMm[2]).toBeCloseTo(((3 / 8) * (12 ** 2 - 5 ** 2)) / (12 + 5), 8);
  });
});

describe('convergence and invariance', () => {
  /** ∫ x² dV of a closed mesh by tetrahedra from the origin. */
  const squareOfX = ({ positions, triangles }: Mesh): number => {
    let sum = 0;
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) =>
        positions.subarray(3 * triangles[t + k], 3 * triangles[t + k] + 3),
      );
      const six =
        a[0] * (b[1] * c[2] - b[2] * c[1]) +
        a[1] * (b[2] * c[0] - b[0] * c[2]) +
        a[2] * (b[0] * c[1] - b[1] * c[0]);
      sum +=
        (six / 60) * (a[0] ** 2 + b[0] ** 2 + c[0] ** 2 + a[0] * b[0] + b[0] * c[0] + c[0] * a[0]);
    }
    return sum;
  };

  test('the mesh encloses the integrated volume; its second moment converges with order 2 or better', () => {
    const shape = ellipsoid(50, 15, 10, { n: 2.6, belly: 14 });
    const { volumeMm3, centroidMm, inertiaMm5 } = bodyProperties(shape);
    const exact =
      (inertiaMm5.yy + inertiaMm5.zz - inertiaMm5.xx) / 2 + volumeMm3 * centroidMm[0] ** 2;
    const error = (m: number) => {
      const stations = Array.from(
        { length: m - 1 },
        (_, i) => 50 * (1 - Math.cos((Math.PI * (i + 1)) / m)),
      );
      const made = bodyMesh(shape, { stations, around: 2 * m }, volumeMm3);
      expect(rel(meshVolume(made), volumeMm3)).toBeLessThan(1e-12);
      return Math.abs(exact - squareOfX(made));
    };
    const errors = [16, 32, 64, 128].map(error);
    const orders = errors.slice(1).map((e, i) => Math.log2(errors[i] / e));
    expect(orders).toHaveLength(3);
    for (const order of orders) expect(order).toBeGreaterThan(1.9);
  });

  test('the mesh is its own mirror image, bit for bit', () => {
    const shape = ellipsoid(55, 9, 11, { n: 3, belly: 7 });
    const { volumeMm3 } = bodyProperties(shape);
    const { positions } = bodyMesh(shape, finenessFor(shape, 0.02), volumeMm3);
    const key = (i: number, side: number) =>
      `${positions[i]} ${side * positions[i + 1] + 0} ${positions[i + 2]}`;
    const all = Array.from({ length: positions.length / 3 }, (_, v) => 3 * v);
    const there = new Set(all.map((i) => key(i, 1)));
    expect(all.length).toBeGreaterThan(1000);
    expect(all.filter((i) => !there.has(key(i, -1)))).toEqual([]);
  });

  test('a copy scaled by k has k³ the volume, k² the surface, k⁵ the inertia', () => {
    const k = 1.37;
    const [one, big] = [
      bodyProperties(ellipsoid(50, 15, 10, { n: 3, belly: 6 })),
      bodyProperties(ellipsoid(50 * k, 15 * k, 10 * k, { n: 3, belly: 6 * k })),
    ];
    expect(rel(big.volumeMm3, one.volumeMm3 * k ** 3)).toBeLessThan(1e-12);
    expect(rel(big.areaMm2, one.areaMm2 * k ** 2)).toBeLessThan(1e-12);
    expect(rel(big.inertiaMm5.yy, one.inertiaMm5.yy * k ** 5)).toBeLessThan(1e-12);
    expect(rel(big.centroidMm[2], one.centroidMm[2] * k)).toBeLessThan(1e-12);
  });

  test('slender body r² = R²(27/4)ξ(1−ξ)²: a cubic square between two stations', () => {
    // Volume 9πR²L/16 and center at 0.4 L (standard form); near, as the peak at L/3 is limited and interpolation is cubic.
    const [L, R] = [90, 10];
    const points = Array.from({ length: 29 }, (_, i) => (i + 1) / 30).map((xi) => ({
      stationMm: L * xi,
      offsetMm: R * Math.sqrt((27 / 4) * xi * (1 - xi) ** 2),
    }));
    const side = offsetSquared(L, points, { noseRadiusMm: (R * R * (27 / 8)) / L });
    const p = bodyProperties({
      lengthMm: L,
      backSquared: side,
      bellySquared: side,
      halfBreadthSquared: side,
      upperExponent: constant(2),
      lowerExponent: constant(2),
    });
    expect(rel(p.volumeMm3, (9 * Math.PI * R * R * L) / 16)).toBeLessThan(2e-5); // table spacing L/30, third order
    expect(p.centroidMm[0] / L).toBeCloseTo(0.4, 4);
  });

  test('surface with an exponent that changes along the length agrees with a fine mesh', () => {
    const shape = {
      ...ellipsoid(50, 15, 10),
      upperExponent: monotoneCurve([10, 60, 90], [2, 4, 2.5]),
    };
    const m = bodyMesh(shape, finenessFor(shape, 0.001), bodyProperties(shape).volumeMm3);
    let area = 0;
    for (let t = 0; t < m.triangles.length; t += 3) {
      const p = [0, 1, 2].map((k) =>
        m.positions.subarray(3 * m.triangles[t + k], 3 * m.triangles[t + k] + 3),
      );
      const [u, w] = [1, 2].map((k) => [0, 1, 2].map((i) => p[k][i] - p[0][i]));
      area +=
        Math.hypot(
          u[1] * w[2] - u[2] * w[1],
          u[2] * w[0] - u[0] * w[2],
          u[0] * w[1] - u[1] * w[0],
        ) / 2;
    }
    expect(rel(area, bodyProperties(shape).areaMm2)).toBeLessThan(3e-4); // chord error 0.001 mm on radii of a few mm
  });
});

test('beta against a value in closed form: B(3/2, 7/4) gives the lure outline area 0.2556033', () => {
  expect(0.8 * beta(1.5, 1.75)).toBeCloseTo(0.2556033, 7);
});
