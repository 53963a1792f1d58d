/** The ends of a through-wire: an eye, the length it is wound on, and where the run may begin. */
import { add, type Point2, times } from '../geometry/vec.js';
import { backward, endEye, neckOf } from './eye.js';
import type { RunEnd } from './line.js';
import { straight, type WirePiece } from './piece.js';
import { formOf, insetMm, type WireSpec } from './spec.js';
import { type Twist, turnMm } from './twist.js';

export type EndName = 'tow' | 'tail';

/** The way out of the body at an end. */
export const outwardAt = (end: EndName): Point2 => [end === 'tow' ? -1 : 1, 0];

const endOf = (spec: WireSpec, end: EndName) => (end === 'tow' ? spec.nose : spec.tail);

/** A point on the axis of an end, so far inside the surface. */
const inside = (spec: WireSpec, end: EndName, mm: number): Point2 =>
  add(endOf(spec, end).at, times(outwardAt(end), -mm));

/** Level from the neck on for as long as the tail is wound; without an eye, the surface itself. */
export function runEnd(spec: WireSpec, end: EndName): RunEnd {
  if (!endOf(spec, end).eye) return { at: endOf(spec, end).at, radiusMm: 0 };
  const form = formOf(spec);
  const levelMm = insetMm(form, 0) + spec.twistTurns * spec.diameterMm;
  return { at: inside(spec, end, levelMm), radiusMm: form.bendRadiusMm };
}

/** From the run's end out and round the eye, in this order; nothing without an eye. Necks bend toward the back. */
function outwardPieces(spec: WireSpec, end: EndName): WirePiece[] {
  if (!endOf(spec, end).eye) return [];
  const form = formOf(spec);
  const [center, outward] = [inside(spec, end, -form.standMm), outwardAt(end)];
  const pieces = endEye({ eye: end, center, outward }, form, end === 'tow' ? 'right' : 'left');
  return [...straight(runEnd(spec, end).at, pieces[0].from, { role: 'run', eye: null }), ...pieces];
}

/** An end as the wire passes it from nose to tail. */
export const endPieces = (spec: WireSpec, end: EndName): WirePiece[] =>
  end === 'tow' ? backward(outwardPieces(spec, end)) : outwardPieces(spec, end);

/** What is wound at an end, or nothing. */
export function twistAt(spec: WireSpec, end: EndName): Twist[] {
  const { twistTurns: turns, diameterMm } = spec;
  if (turns === 0 || !endOf(spec, end).eye) return [];
  const form = formOf(spec);
  const neckMm = form.bendRadiusMm * neckOf({ ...form, asideMm: 0 }).angleRad;
  return [
    {
      eye: end,
      turns,
      from: inside(spec, end, insetMm(form, 0)),
      to: runEnd(spec, end).at,
      lengthMm: neckMm + turns * turnMm(diameterMm),
    },
  ];
}
