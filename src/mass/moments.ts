/**
 * Sums over a body, from which mass, center and inertia follow, and which simply add: the amount
 * (mm³ or g) and its first and second moments about the nose, along the axes of the lure. The first
 * moment across and the products with y are zero, as everything is symmetrical about the center plane.
 */
import type { BodyProperties } from '../body/properties.js';
import { arcOf, type Segment, sweep } from '../geometry/arcpath.js';
import { cosSinDeg, type Point2 } from '../geometry/vec.js';
import type { Mass } from './item.js';

export type Moments = {
  readonly amount: number;
  readonly x: number;
  readonly z: number;
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xz: number;
};

export const NOTHING: Moments = { amount: 0, x: 0, z: 0, xx: 0, yy: 0, zz: 0, xz: 0 };

const KEYS = ['amount', 'x', 'z', 'xx', 'yy', 'zz', 'xz'] as const;

/** Sum of parts, each times its own factor: a density (g per mm³), −1 for what is taken away. */
export function summed(parts: readonly (readonly [factor: number, part: Moments])[]): Moments {
  const sum = { ...NOTHING };
  for (const [factor, part] of parts) for (const key of KEYS) sum[key] += factor * part[key];
  return sum;
}

/** kg/m³ as g per mm³. */
export const gPerMm3 = (densityKgM3: number): number => densityKgM3 * 1e-6;

/** Moments about a point of one's own, moved so that the point comes to (x, z). */
export function movedTo([dx, dz]: Point2, m: Moments): Moments {
  return {
    amount: m.amount,
    x: m.x + m.amount * dx,
    z: m.z + m.amount * dz,
    xx: m.xx + 2 * dx * m.x + m.amount * dx * dx,
    yy: m.yy,
    zz: m.zz + 2 * dz * m.z + m.amount * dz * dz,
    xz: m.xz + dx * m.z + dz * m.x + m.amount * dx * dz,
  };
}

/** Moments about the nose of a thing turned counter-clockwise about it, seen from the side. */
export function turnedBy(turnDeg: number, m: Moments): Moments {
  const [c, s] = cosSinDeg(turnDeg);
  return {
    amount: m.amount,
    x: c * m.x - s * m.z,
    z: s * m.x + c * m.z,
    xx: c * c * m.xx - 2 * c * s * m.xz + s * s * m.zz,
    yy: m.yy,
    zz: s * s * m.xx + 2 * c * s * m.xz + c * c * m.zz,
    xz: c * s * (m.xx - m.zz) + (c * c - s * s) * m.xz,
  };
}

/** An amount in one point of the center plane. */
export const atPoint = (amount: number, at: Point2): Moments => movedTo(at, { ...NOTHING, amount });

/** An amount spread evenly along a straight line in the center plane. */
export function alongLine(amount: number, from: Point2, to: Point2): Moments {
  const [hx, hz] = [(to[0] - from[0]) / 2, (to[1] - from[1]) / 2];
  const third = amount / 3;
  const own = { ...NOTHING, amount, xx: third * hx * hx, zz: third * hz * hz, xz: third * hx * hz };
  return movedTo([from[0] + hx, from[1] + hz], own);
}

/** An amount spread evenly along an arc in the center plane: about its center in closed form, then moved there. */
export function alongArc(amount: number, arc: Segment): Moments {
  const { center, radius: r } = arcOf(arc);
  const turn = sweep(arc.bulge);
  const a = Math.atan2(arc.from[1] - center[1], arc.from[0] - center[0]);
  const b = a + turn;
  const twice = (Math.sin(2 * b) - Math.sin(2 * a)) / 4;
  const each = amount / turn;
  return movedTo(center, {
    amount,
    x: each * r * (Math.sin(b) - Math.sin(a)),
    z: -each * r * (Math.cos(b) - Math.cos(a)),
    xx: each * r * r * (turn / 2 + twice),
    yy: 0,
    zz: each * r * r * (turn / 2 - twice),
    xz: (each * r * r * (Math.sin(b) ** 2 - Math.sin(a) ** 2)) / 2,
  });
}

/** An upright cylinder of one diameter between two heights, its axis at a station; per mm³. */
export function uprightCylinder(
  diameterMm: number,
  { stationMm, lowMm, highMm }: { stationMm: number; lowMm: number; highMm: number },
): Moments {
  const height = highMm - lowMm;
  const amount = (Math.PI / 4) * diameterMm ** 2 * height;
  const across = (amount * diameterMm ** 2) / 16;
  const own = { ...NOTHING, amount, xx: across, yy: across, zz: (amount * height ** 2) / 12 };
  return movedTo([stationMm, (lowMm + highMm) / 2], own);
}

/** A body's volume as moments. */
export function ofBody({ volumeMm3: v, centroidMm, inertiaMm5: i }: BodyProperties): Moments {
  return fromInertia(v, [centroidMm[0], centroidMm[2]], i);
}

/** Amount, center and inertia about the center, as moments about the nose. */
export function fromInertia(
  amount: number,
  center: Point2,
  { xx, yy, zz, xz }: { xx: number; yy: number; zz: number; xz: number },
): Moments {
  // Inertia about x is ∫ y² + z², and so on round: half the sum less each gives the squares back.
  const half = (xx + yy + zz) / 2;
  const own = { ...NOTHING, amount, xx: half - xx, yy: half - yy, zz: half - zz, xz };
  return movedTo(center, own);
}

/** Moments in g as mass, center and inertia about it. The amount must not be zero; it may be negative. */
export function massOf(m: Moments): Mass {
  const [cx, cz] = [m.x / m.amount, m.z / m.amount];
  const own = movedTo([-cx, -cz], m);
  return {
    massG: m.amount,
    cgMm: [cx, 0, cz],
    inertiaGMm2: {
      xx: own.yy + own.zz,
      yy: own.xx + own.zz,
      zz: own.xx + own.yy,
      xz: own.xz,
    },
  };
}

/** The way back from `massOf`. */
export const ofMass = ({ massG, cgMm, inertiaGMm2 }: Mass): Moments =>
  fromInertia(massG, [cgMm[0], cgMm[2]], inertiaGMm2);

/** Several masses as one. */
export const composed = (parts: readonly Mass[]): Mass =>
  massOf(summed(parts.map((part) => [1, ofMass(part)])));
