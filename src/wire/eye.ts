/**
 * An eye bent into a wire: out of the straight by a neck, round the loop the other way. The loop
 * stands centered on the axis of the eye, so that what pulls at it does not turn it.
 */
import { add, type Point2, quarterLeft, times } from '../geometry/vec.js';
import { reversed, type WireEye, type WirePiece } from './piece.js';

/** Radii of the center line, and how far beside the eye's axis the wire comes in. */
export type EyeForm = {
  readonly loopRadiusMm: number;
  /** Of the neck. */
  readonly bendRadiusMm: number;
  readonly asideMm: number;
};

/** How far the neck turns, and how far ahead of the loop's center it begins. */
export type Neck = { readonly angleRad: number; readonly reachMm: number };

/**
 * Neck and loop are circles that touch from outside: between their centers lie r + R, and across the
 * axis a + r, so cos φ = (a + r)/(r + R). The wire must come in nearer to the axis than the loop is
 * wide (a < R).
 */
export function neckOf({ loopRadiusMm, bendRadiusMm, asideMm }: EyeForm): Neck {
  const apart = bendRadiusMm + loopRadiusMm;
  const angleRad = Math.acos((asideMm + bendRadiusMm) / apart);
  return { angleRad, reachMm: apart * Math.sin(angleRad) };
}

/** Where an eye stands: the middle of its loop, and the way it points. */
type Stand = { readonly eye: WireEye; readonly center: Point2; readonly outward: Point2 };

/**
 * The eye at an end of the wire, from where its neck begins on the axis: the loop goes all round and
 * ends beside the neck, one wire's breadth out of the plane. The neck bends to the left of the way
 * outward, or to the right.
 */
export function endEye(
  { eye, center, outward }: Stand,
  form: Omit<EyeForm, 'asideMm'>,
  side: 'left' | 'right',
): WirePiece[] {
  const { angleRad, reachMm } = neckOf({ ...form, asideMm: 0 });
  const sign = side === 'left' ? 1 : -1;
  const at = framed(center, outward, sign);
  const r = form.bendRadiusMm;
  const touch: Point2 = [r * Math.sin(angleRad) - reachMm, r * (1 - Math.cos(angleRad))];
  const far = times(touch, -1);
  const half = { role: 'loop', eye, bulge: -sign } as const;
  return [
    {
      role: 'neck',
      eye,
      from: at([-reachMm, 0]),
      to: at(touch),
      bulge: sign * Math.tan(angleRad / 4),
    },
    { ...half, from: at(touch), to: at(far) },
    { ...half, from: at(far), to: at(touch) },
  ];
}

/** The eye in the run of the wire, legs side by side: in on the right of the way outward, out on the left. */
export function midEye({ eye, center, outward }: Stand, form: EyeForm): WirePiece[] {
  const { angleRad, reachMm } = neckOf(form);
  const at = framed(center, outward, 1);
  const { bendRadiusMm: r, loopRadiusMm, asideMm } = form;
  const start: Point2 = [-reachMm, -asideMm];
  const touch: Point2 = [
    r * Math.sin(angleRad) - reachMm,
    -(asideMm + r * (1 - Math.cos(angleRad))),
  ];
  const half = { role: 'loop', eye, bulge: Math.tan((Math.PI / 2 + angleRad) / 4) } as const;
  const neck = { role: 'neck', eye, bulge: -Math.tan(angleRad / 4) } as const;
  const across = ([along, aside]: Point2): Point2 => [along, -aside];
  return [
    { ...neck, from: at(start), to: at(touch) },
    { ...half, from: at(touch), to: at([loopRadiusMm, 0]) },
    { ...half, from: at([loopRadiusMm, 0]), to: at(across(touch)) },
    { ...neck, from: at(across(touch)), to: at(across(start)) },
  ];
}

/** The eye as the wire comes to it from its other end. */
export const backward = (pieces: readonly WirePiece[]): WirePiece[] =>
  [...pieces].reverse().map(reversed);

/** From (outward of the loop's center, to the left of that or to the right) to the side view. */
const framed =
  (center: Point2, outward: Point2, sign: 1 | -1) =>
  ([along, aside]: Point2): Point2 =>
    add(center, add(times(outward, along), times(quarterLeft(outward), sign * aside)));
