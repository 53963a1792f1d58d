/** Down to a hanger, round its eye, and up again close beside. */
import { add, cross, dot, type Point2, sub, times } from '../geometry/vec.js';
import { midEye } from './eye.js';
import { arcPiece, heightAt, type Run } from './line.js';
import { straight, type WirePiece } from './piece.js';
import { insetMm, type WireForm } from './spec.js';

const DOWN: Point2 = [0, -1];
const UP: Point2 = [0, 1];

/** A hanger's part of the wire, from run to run. */
export type Legs = {
  readonly pieces: readonly WirePiece[];
  /** Belly below the run at the hanger, and the least that bends and eye need. */
  readonly depthMm: number;
  readonly needMm: number;
};

export function legsTo(hanger: number, belly: Point2, run: Run, form: WireForm): Legs {
  const { asideMm } = form;
  const [down, up] = [belly[0] - asideMm, belly[0] + asideMm].map(
    (x): Point2 => [x, heightAt(run, x)],
  );
  const [fore, aft] = [tangentMm(run.way, DOWN, form), tangentMm(UP, run.way, form)];
  const [into, out] = [sub(down, times(run.way, fore)), add(up, times(run.way, aft))];
  const [top, end] = [add(down, times(DOWN, fore)), add(up, times(DOWN, aft))];
  const center = add(belly, times(DOWN, form.standMm));
  const eye = midEye({ eye: hanger, center, outward: DOWN }, form);
  const role = { role: 'leg', eye: hanger } as const;
  const bend = { role: 'bend', eye: hanger } as const;
  const middle = heightAt(run, belly[0]);
  return {
    pieces: [
      ...arcPiece(into, top, [run.way, DOWN], bend),
      ...straight(top, eye[0].from, role),
      ...eye,
      ...straight(eye[eye.length - 1].to, end, role),
      ...arcPiece(end, out, [UP, run.way], bend),
    ],
    depthMm: middle - belly[1],
    needMm: middle - Math.min(top[1], end[1]) + insetMm(form, asideMm),
  };
}

/** From the corner of two straight lengths to where the bend between them begins: r·tan(turn/2). */
function tangentMm(u: Point2, w: Point2, { bendRadiusMm }: WireForm): number {
  const turn = Math.abs(Math.atan2(cross(u, w), dot(u, w)));
  return bendRadiusMm * Math.tan(turn / 2);
}

/** Half the length of run that a hanger takes: for its bends, or for its loop beside another. */
export function roomMm(run: Run, form: WireForm): number {
  const tangent = Math.max(tangentMm(run.way, DOWN, form), tangentMm(UP, run.way, form));
  return Math.max(form.asideMm + tangent * run.way[0], form.standMm);
}
