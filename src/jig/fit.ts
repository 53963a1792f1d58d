/** How a workpiece sits in a jig: what room it is given, who presses it, and what works on it there. */
import type { Point3 } from '../geometry/vec.js';
import type { Axis } from './jig.js';

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

export type Tool =
  /** A bit on its axis, from the mouth of the hole into the wood. */
  | { readonly kind: 'drill'; readonly called: string; readonly axis: Axis }
  /** A blade in its plane: the axis from the mouth of the cut into the wood, the stroke along the blade. */
  | {
      readonly kind: 'saw';
      readonly called: string;
      readonly axis: Axis;
      readonly stroke: Point3;
      /** Of its way through the jig. */
      readonly widthMm: number;
    };
