/** How a workpiece sits in a jig: what room it is given, who presses it, and what works on it there. */
import type { Point3 } from '../geometry/vec.js';
import type { Axis } from './axis.js';

/** All in the frame of the lure, mm; forces are those on the workpiece. */
export type Fit = {
  /** Least and greatest gap the model leaves where the workpiece rests when it is pressed home. */
  readonly gapMm: readonly [least: number, most: number];
  /** Moves out of its seat that the model leaves room for, each for itself; none where it is held all round. */
  readonly playMm: readonly Point3[];
  /** Where a hand or a clamp can press it, each as hard as need be. */
  readonly pressed: readonly Press[];
  /** What works on it in this jig; none where it is only held. */
  readonly tools: readonly Tool[];
};

export type Press = {
  /** As in "pressed to the floor". */
  readonly called: string;
  readonly at: Point3;
  /** Unit. */
  readonly direction: Point3;
};

type AnyTool = {
  /** As in "the bit at 35 mm". */
  readonly called: string;
  /** From the mouth of its hole or cut into the wood; the direction is unit. */
  readonly axis: Axis;
  /** Of its way through the jig. */
  readonly widthMm: number;
};

/** A bit on its axis, or a blade in its plane with the stroke, unit, along the blade. */
export type Tool =
  | (AnyTool & { readonly kind: 'drill' })
  | (AnyTool & { readonly kind: 'saw'; readonly stroke: Point3 });
