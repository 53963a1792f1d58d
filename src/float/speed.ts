/** How fast a lure that is wholly under water rises or sinks, by the balance of net weight and drag. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { dot3 } from '../geometry/vec3.js';

/** What the water meets on the way up or down. */
export type DragForm = {
  /** The coated body. */
  readonly mesh: Mesh;
  readonly lengthMm: number;
  /** The part of the lip that stands out of the body, and the angle it makes with the datum line. */
  readonly lip: { readonly areaMm2: number; readonly angleDeg: number } | null;
};

/** Sum of drag coefficient times area, mm²: the middle, and the least and most its sources allow. */
export type DragArea = {
  readonly middleMm2: number;
  readonly lowMm2: number;
  readonly highMm2: number;
  /** Mean breadth of the body across the stream, which the Reynolds number goes by. */
  readonly breadthMm: number;
};

export type Speed = {
  readonly kind: 'rises' | 'sinks';
  readonly cmS: number;
  /** With the most and the least drag. */
  readonly lowCmS: number;
  readonly highCmS: number;
  /** By the mean breadth. Below 1000 the speed is a guide only: drag there is more than the sources say. */
  readonly reynolds: number;
};

const GRAVITY_M_S2 = 9.80665; // standard gravity (CGPM 1901)
const VISCOSITY_M2_S = 1.1386e-6; // of fresh water at 15 °C (ITTC 7.5-02-01-03); only the Reynolds number needs it
/** Cylinder across the flow: length over diameter and drag coefficient. Aeronautical Engineer's Data Book, fig. 5.13b. */
const ACROSS: readonly (readonly [slenderness: number, coefficient: number])[] = [
  [1, 0.63],
  [2, 0.68],
  [5, 0.74],
  [10, 0.82],
  [40, 0.98],
];
const ACROSS_LONGEST = 1.2; // the same table, endless cylinder
const ALONG = { low: 0.15, high: 0.5 }; // lure-like bodies on frontal area, with hooks: after S. F. Hoerner, Fluid-Dynamic Drag, 1965, ch. 6, from memory
const SQUARE_PLATE = 1.17; // plate square to the stream: Aeronautical Engineer's Data Book, p. 95
const SPREAD = 0.25; // of the coefficients across and of the plate, relative: sections are not round, plates not alone

/**
 * Drag area of a lure that moves along the vertical without turning. The stream is split into its
 * part across the body's axis and its part along it (cross-flow principle: S. F. Hoerner,
 * Fluid-Dynamic Drag, 1965, from memory); with θ between the long axis and the vertical the body gives
 * C_across A_across sin³θ + C_along A_front cos³θ. A_across is the body's shadow square to the
 * cross-flow, so the plan for a lure that lies upright. The lip is a flat plate: normal force by the
 * free-streamline law scaled to the measured square plate, and of it the vertical part.
 *
 * Left out: the body's lee on the lip, hooks apart from what the spread along the axis holds.
 *
 * @param up unit vector to the sky, in the frame of the lure
 */
export function dragArea(form: DragForm, up: Point3): DragArea {
  return dragByTrim(form, up)(Math.asin(Math.min(1, Math.max(-1, -up[0]))));
}

/**
 * Drag area (see `dragArea`) at any trim, nose up positive, in radians, of a lure that keeps the heel
 * it has with that way up; upright where that is on end.
 */
export function dragByTrim(
  { mesh, lengthMm, lip }: DragForm,
  [, y, z]: Point3,
): (trim: number) => DragArea {
  const size = Math.hypot(y, z);
  const crossFlow: Point3 = size > 0 ? [0, y / size, z / size] : [0, 0, 1];
  const side = shadowMm2(mesh, crossFlow);
  const front = shadowMm2(mesh, [1, 0, 0]);
  const breadthMm = side / lengthMm;
  const sideways = acrossCoefficient(lengthMm / breadthMm) * side;
  return (trim) => {
    const [across, along] = [Math.cos(trim), Math.sin(trim)];
    const up: Point3 = [-along, across * crossFlow[1], across * crossFlow[2]];
    const plate = lip === null ? 0 : lip.areaMm2 * plateCoefficient(lip.angleDeg, up);
    const sum = (factor: number, axial: number) =>
      factor * (sideways * across ** 3 + plate) + axial * front * Math.abs(along) ** 3;
    return {
      middleMm2: sum(1, Math.sqrt(ALONG.low * ALONG.high)),
      lowMm2: sum(1 - SPREAD, ALONG.low),
      highMm2: sum(1 + SPREAD, ALONG.high),
      breadthMm,
    };
  };
}

/**
 * Final speed in still water: ½ρv² times the drag area carries the net weight. Holds for Reynolds
 * numbers of 1000 to 200 000 and for a lure that keeps its attitude (which one, see `letGo`); one that
 * swings from side to side, as light bodies that rise freely do, can be half as fast again in this
 * model as in the tub.
 *
 * @param netG mass of the lure less that of the water it displaces; positive sinks
 */
export function freeSpeed(netG: number, waterDensityKgM3: number, area: DragArea): Speed {
  const cmS = (areaMm2: number) =>
    100 *
    Math.sqrt((2 * Math.abs(netG) * 1e-3 * GRAVITY_M_S2) / (waterDensityKgM3 * areaMm2 * 1e-6));
  const middle = cmS(area.middleMm2);
  return {
    kind: netG < 0 ? 'rises' : 'sinks',
    cmS: middle,
    lowCmS: cmS(area.highMm2),
    highCmS: cmS(area.lowMm2),
    reynolds: (middle * 1e-2 * area.breadthMm * 1e-3) / VISCOSITY_M2_S,
  };
}

/** The net mass (see `freeSpeed`) at which a lure rises or sinks so fast; drag goes with the square of the speed, so this is exact. */
export function netMassG(
  { kind, cmS }: Pick<Speed, 'kind' | 'cmS'>,
  waterDensityKgM3: number,
  area: DragArea,
): number {
  const forceN = (waterDensityKgM3 * (cmS * 1e-2) ** 2 * area.middleMm2 * 1e-6) / 2;
  return ((kind === 'rises' ? -1 : 1) * 1e3 * forceN) / GRAVITY_M_S2;
}

/** Area of a closed mesh's shadow along a unit vector: exact where a line along it enters once, more where it enters twice. */
function shadowMm2({ positions, triangles }: Mesh, way: Point3): number {
  let doubled = 0;
  const point = (v: number): Point3 => [positions[v], positions[v + 1], positions[v + 2]];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [
      point(3 * triangles[t]),
      point(3 * triangles[t + 1]),
      point(3 * triangles[t + 2]),
    ];
    const [p, q, r] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const [u, v, w] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    doubled += Math.abs(dot3(way, [q * w - r * v, r * u - p * w, p * v - q * u]));
  }
  return doubled / 4;
}

/** Between the table's rows straight in 1/slenderness, in which an endless cylinder is at 0; shorter than its first row, that row. */
function acrossCoefficient(slenderness: number): number {
  const rows = [...ACROSS.map(([l, c]) => [1 / l, c] as const), [0, ACROSS_LONGEST] as const];
  const at = 1 / slenderness;
  const next = rows.findIndex(([shortness]) => shortness <= at);
  if (next === 0) return rows[0][1];
  const [[x0, c0], [x1, c1]] = [rows[next - 1], rows[next]];
  return c0 + ((c1 - c0) * (at - x0)) / (x1 - x0);
}

/**
 * Vertical drag coefficient of a plate at an angle α to the stream: C_N sin α with
 * C_N = C₉₀ (4 + π) sin α / (4 + π sin α) (free-streamline theory: G. Kirchhoff 1869, Lord Rayleigh
 * 1876; scaled).
 */
function plateCoefficient(lipAngleDeg: number, up: Point3): number {
  const angle = (lipAngleDeg * Math.PI) / 180;
  const sine = Math.abs(dot3(up, [Math.sin(angle), 0, -Math.cos(angle)]));
  return (SQUARE_PLATE * (4 + Math.PI) * sine * sine) / (4 + Math.PI * sine);
}
