/** The lure from the side as it is sawn, drilled and rigged. */
import { sideView as holeFromSide, onAxis, tipDepthMm } from '../../blank/hole.js';
import { profilePath } from '../../blank/profile.js';
import { pathPoints } from '../../geometry/arcpath.js';
import type { Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { parted } from './hidden.js';
import { CHAIN, CLOSED, DASHED, ink } from './ink.js';
import type { NamedEye, ViewsInput } from './input.js';

/** Center lines reach beyond what they are of, mm of paper. */
export const BEYOND_MM = 3;
const CHORD_MM = 0.02;
/** Eyes are seen at any scale, mm of paper. */
const LEAST_EYE_MM = 0.7;

/** How the lure's (station, height) comes onto the sheet. */
export type Place = { readonly scale: number; readonly on: (p: Point2) => Point2 };

export function sideView(input: ViewsInput, place: Place): Shape[] {
  const { shape, blank, eyes, lip, wire } = input;
  const { scale, on } = place;
  const body = pathPoints(profilePath(shape), CHORD_MM);
  const beyond = BEYOND_MM / scale;
  return [
    ink(blank.outlineRing.map(on), 'hair', CLOSED),
    ...(lip ? [ink(lip.corners.map(on), 'fine', CLOSED)] : []),
    ...(wire ? parted(wire, body) : []).map(({ points, hidden }) =>
      ink(points.map(on), 'fine', hidden ? DASHED : {}),
    ),
    ...blank.holes.flatMap((hole) => [
      ink(holeFromSide(hole).map(on), 'fine', { ...CLOSED, ...DASHED }),
      ink([on(onAxis(hole, -beyond)), on(onAxis(hole, tipDepthMm(hole) + beyond))], 'hair', CHAIN),
    ]),
    ink(body.map(on), 'firm', CLOSED),
    ...eyes.flatMap((eye) => screwEye(eye, place)),
  ];
}

/** Its shank in the wood and its ring; the loop of a wire is drawn with the wire. */
function screwEye({ at, radiusMm, surface, shankTip }: NamedEye, { scale, on }: Place): Shape[] {
  if (!shankTip) return [];
  return [
    ink([on(surface), on(shankTip)], 'fine', DASHED),
    {
      kind: 'disc',
      center: on(at),
      radiusMm: Math.max(LEAST_EYE_MM, radiusMm * scale),
      role: 'sheet',
      pen: 'fine',
      clear: true,
    },
  ];
}
