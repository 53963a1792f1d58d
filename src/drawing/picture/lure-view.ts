/** One lure in the water, seen in one view, drawn into a part of the sheet. */
import type { Attitude } from '../../float/attitude.js';
import { asRegion, intersect } from '../../geometry/clip.js';
import { rectRing, ring, signedArea } from '../../geometry/ring.js';
import { add, type Box, type Point2, type Point3, times } from '../../geometry/vec.js';
import type { Area, Line, Pen, Role, Shape } from './picture.js';
import type { SeenLure } from './seen-lure.js';
import { LEAST_AREA_MM2, seen, type View } from './view.js';

/** A view at a scale (sheet over true), with the nose's place on the sheet. */
export type Pose = { readonly view: View; readonly scale: number; readonly origin: Point2 };

export const onSheet = ({ view, scale, origin }: Pose, p: Point3): Point2 =>
  add(origin, times(seen(view, p), scale));

/** Scales that read well on a scale bar, sheet over true. */
const SCALES = [2, 1.5, 1.25, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.15, 0.1];

/** The view in the middle of a room, as large as a good scale allows; never above `most`. */
export function fittedPose({ view, box }: SeenLure, room: Box, most = SCALES[0]): Pose {
  const [minX, minY, maxX, maxY] = box;
  const fit = Math.min((room[2] - room[0]) / (maxX - minX), (room[3] - room[1]) / (maxY - minY));
  const scale = SCALES.find((s) => s <= Math.min(fit, most)) ?? fit;
  const middle = (low: number, high: number, from: number, to: number) =>
    (low + high) / 2 - (scale * (from + to)) / 2;
  return {
    view,
    scale,
    origin: [middle(room[0], room[2], minX, maxX), middle(room[1], room[3], minY, maxY)],
  };
}

/** True for a lure that is wholly under, with the surface out of view. */
export const hangs = ({ dryRatio }: Pick<Attitude, 'dryRatio'>): boolean => dryRatio <= 0;

/** Height of the water on the sheet; null when the lure hangs. */
export const surfaceY = (pose: Pose, attitude: Attitude): number | null =>
  hangs(attitude) ? null : pose.origin[1] + attitude.planeOffsetMm * pose.scale;

/** Box of lure, lip, eyes and what hangs on them, on the sheet. */
export const boxOnSheet = (
  { box }: Pick<SeenLure, 'box'>,
  { scale, origin: [x, y] }: Pose,
): Box => [x + scale * box[0], y + scale * box[1], x + scale * box[2], y + scale * box[3]];

/**
 * Water up to the surface (or all over the window), and the lure in it, its wet part darker. Holes
 * show through the wood.
 */
export function lureView(
  lure: SeenLure,
  { scale, origin }: Pose,
  window: Box,
  surface: number | null,
): readonly Shape[] {
  const top = Math.min(window[3], Math.max(window[1], surface ?? window[3]));
  const under: Box = [window[0], window[1], window[2], top];
  const flat = (p: Point2): Point2 => add(origin, times(p, scale));
  const lip = lure.lip.map(flat);
  const eyes = (behind: boolean) =>
    lure.eyes
      .filter((eye) => eye.behind === behind)
      .map((eye) => eyeSign(flat(eye.center), eye.radius * scale));
  return [
    ...water(under, surface === null ? null : top),
    ...part(lip, under, ['lip', 'wetLip']),
    ...eyes(true),
    ...part(lure.body.map(flat), under, ['wood', 'wetWood']),
    // The plate is clear: its edge shows in front of the wood and in its slot.
    ...[lip, lure.lipHole.map(flat)].flatMap((edge) =>
      edge.length > 1 ? [outline(edge, 'hair')] : [],
    ),
    ...lure.holes.flatMap(({ bore, metal }) => [
      ...bore.map((points) => outline(points.map(flat), 'hair')),
      ...metal.flatMap((points) => part(points.map(flat), under, ['metal', 'metal'])),
    ]),
    ...lure.hung.map(
      (points): Line => ({ ...stroke(points.map(flat), 'faint', 'fine'), clear: true }),
    ),
    ...eyes(false),
  ];
}

const eyeSign = (center: Point2, radiusMm: number): Shape => ({
  kind: 'disc',
  center,
  radiusMm: Math.min(EYE_MM[1], Math.max(EYE_MM[0], radiusMm)),
  role: 'sheet',
  pen: 'fine',
  clear: true,
});

/** Eyes are seen, and hide nothing, at any scale: least and greatest radius on the sheet, mm. */
const EYE_MM = [0.7, 1.4] as const;

function water(under: Box, surface: number | null): Shape[] {
  if (under[3] - under[1] < 1e-6) return [];
  const area: Area = { kind: 'area', points: rectRing(...under), role: 'water' };
  if (surface === null) return [area];
  return [
    area,
    {
      ...stroke(
        [
          [under[0], surface],
          [under[2], surface],
        ],
        'surface',
        'fine',
      ),
      clear: true,
    },
  ];
}

/** A solid's outline, filled dry above the water and wet below. Too thin to fill, only its line. */
function part(
  points: readonly Point2[],
  under: Box,
  [dry, wet]: readonly [Role, Role],
): readonly Shape[] {
  if (points.length < 2) return [];
  const edge = outline(points, 'fine');
  if (Math.abs(signedArea(points)) < LEAST_AREA_MM2) return [edge];
  const soaked =
    under[3] - under[1] < 1e-6
      ? []
      : intersect([asRegion(ring(points))], [asRegion(rectRing(...under))]);
  return [filled(points, dry), ...soaked.map(({ outer }) => filled(outer, wet)), edge];
}

const filled = (points: readonly Point2[], role: Role): Area => ({
  kind: 'area',
  points,
  role,
  ...(role === 'metal' ? { clear: true } : {}),
});

const outline = (points: readonly Point2[], pen: Pen): Line => ({
  ...stroke(points, 'line', pen),
  closed: true,
  clear: true,
});

export const stroke = (points: readonly Point2[], role: Role, pen: Pen): Line => ({
  kind: 'line',
  points,
  role,
  pen,
});
