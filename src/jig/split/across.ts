/** A solid as a saw across x meets it. Sections and places in them are told in y and z. */
import { asRegion, subtract } from '../../geometry/clip.js';
import { type Mesh, meshBox } from '../../geometry/mesh.js';
import { type Region, rectRing } from '../../geometry/ring.js';
import type { Point2, Point3 } from '../../geometry/vec.js';
import { type Csg, extruded, holeAlongZ, movedBy, OVERSHOOT } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt, shadow } from '../../solid/measure.js';
import { placement, translation } from '../../solid/placement.js';

/** The solid that is cut, with the box round it. */
export type Whole = { readonly csg: Csg; readonly min: Point3; readonly max: Point3 };

export function wholeOf(mesh: Mesh): Whole {
  const [min, max] = meshBox(mesh);
  return { csg: { kind: 'mesh', mesh }, min, max };
}

/** From a prism along z, drawn in y and z, to one along x; and back, to lay sections in the plane. */
const TO_X = placement([0, 1, 0], [0, 0, 1], [1, 0, 0], [0, 0, 0]);
const FROM_X = placement([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, 0, 0]);

const around = ({ min, max }: Whole): Region =>
  asRegion(
    rectRing(min[1] - OVERSHOOT, min[2] - OVERSHOOT, max[1] + OVERSHOOT, max[2] + OVERSHOOT),
  );

/** All there is from one x to another. */
const slabAcross = (whole: Whole, fromX: number, toX: number): Csg =>
  movedBy(TO_X, extruded([around(whole)], fromX, toX));

/** The part of the solid from one x to another; at its ends nothing is cut. */
export function between(whole: Whole, fromX: number, toX: number): Csg {
  const from = fromX === whole.min[0] ? fromX - OVERSHOOT : fromX;
  const to = toX === whole.max[0] ? toX + OVERSHOOT : toX;
  return { kind: 'intersect', parts: [whole.csg, slabAcross(whole, from, to)] };
}

/** The sections at some x. */
export const sectionsAcross = (kernel: SolidKernel, whole: Whole, xs: readonly number[]) =>
  sectionsAt(kernel, movedBy(FROM_X, whole.csg), xs);

/** What is solid at every x from one to another: the slab less the shadow of all that is open in it. */
export function solidThroughout(
  kernel: SolidKernel,
  whole: Whole,
  fromX: number,
  toX: number,
): Region[] {
  const open: Csg = { kind: 'subtract', from: slabAcross(whole, fromX, toX), parts: [whole.csg] };
  return subtract([around(whole)], shadow(kernel, movedBy(FROM_X, open)));
}

/** The prism's corners stand out of the round bore by this at most, mm: far under what a nozzle can draw. */
export const BORE_CHORD = 0.02;

/** A round bore along x whose middle is at this x. */
export function boreAcross([y, z]: Point2, x: number, radius: number, halfLength: number): Csg {
  const bore = holeAlongZ(radius, { fromZ: -halfLength, toZ: halfLength, tolerance: BORE_CHORD });
  return movedBy(translation(x, y, z), movedBy(TO_X, bore));
}
