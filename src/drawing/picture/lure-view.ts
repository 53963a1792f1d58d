/** One lure in the water, seen in one view, drawn into a part of the sheet. */
import { type BodyShape, offsetAt } from '../../body/shape.js';
import type { Attitude } from '../../float/attitude.js';
import type { Circle } from '../../geometry/arcpath.js';
import { asRegion, intersect } from '../../geometry/clip.js';
import { type Ring, rectRing, ring, signedArea } from '../../geometry/ring.js';
import { add, type Box, boxOf, type Point2, type Point3, sub, times } from '../../geometry/vec.js';
import { hungLines } from './hung.js';
import type { DrawnHole, DrawnLip, DrawnLure } from './input.js';
import type { Area, Line, Pen, Role, Shape } from './picture.js';
import { hull, LEAST_AREA_MM2, seen, silhouette, type View } from './view.js';

/** The outlines of a lure in one view, true mm, the nose at the origin. */
export type SeenLure = {
  readonly view: View;
  readonly body: Ring;
  /** Empty without a lip. */
  readonly lip: readonly Point2[];
  readonly holes: readonly SeenHole[];
  readonly eyes: readonly SeenEye[];
  /** Lines of what hangs on the eyes. */
  readonly hung: readonly (readonly Point2[])[];
  /** Box around all of it. */
  readonly box: Box;
};

/** The bore and the metal in it; each may be in pieces, or nothing. */
type SeenHole = {
  readonly bore: readonly (readonly Point2[])[];
  readonly metal: readonly (readonly Point2[])[];
};

/** `behind` the body, as the eye at the tail is from ahead. */
type SeenEye = Circle & { readonly behind: boolean };

export function seenLure(lure: DrawnLure, view: View): SeenLure {
  const shown = (points: readonly Point3[]): Point2[] => hull(points.map((p) => seen(view, p)));
  const body = silhouette(lure.shape, view);
  const lip = lure.lip ? shown(plateCorners(lure.lip)) : [];
  const eyes = lure.eyes.map(
    ({ at: [x, z], radiusMm }): SeenEye => ({
      center: seen(view, [x, 0, z]),
      radius: radiusMm,
      behind: isBehind(lure.shape, view, x),
    }),
  );
  const hung = lure.eyes.flatMap((eye, i) => hungLines(eyes[i].center, eye));
  const round = eyes.flatMap(({ center, radius }): Point2[] => [
    sub(center, [radius, radius]),
    add(center, [radius, radius]),
  ]);
  return {
    view,
    body,
    lip,
    holes: lure.holes.map((hole) => {
      const belly = -offsetAt(lure.shape.bellySquared, hole.stationMm);
      return {
        bore: inside(shown(holePoints(lure, { ...hole, bellyMm: belly })), body),
        metal: inside(shown(holePoints(lure, metalOf(hole))), body),
      };
    }),
    eyes,
    hung,
    box: boxOf([...body, ...lip, ...round, ...hung.flat()]),
  };
}

/** The metal as if it were a hole of its own. */
const metalOf = (hole: DrawnHole): DrawnHole =>
  hole.metalDiameterMm === null
    ? hole
    : { ...hole, diameterMm: hole.metalDiameterMm, pointAngleDeg: 180 };

/** True for a station further from the eye than a tenth of the length behind the nearer end. */
function isBehind({ lengthMm }: BodyShape, { right, up }: View, stationMm: number): boolean {
  // The part along the lure of the way to the eye; with y to port the frame is left-handed, so it is up × right.
  const nearer = right[2] * up[1] - right[1] * up[2];
  return nearer * stationMm < Math.max(0, nearer * lengthMm) - 0.1 * lengthMm;
}

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
    ...(lip.length > 1 ? [outline(lip, 'hair')] : []),
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

const plateCorners = ({ corners, widthMm }: DrawnLip): Point3[] =>
  corners.flatMap(([x, z]): Point3[] => [
    [x, widthMm / 2, z],
    [x, -widthMm / 2, z],
  ]);

/** The part of a solid's outline that lies in the body's; nothing when it is too thin to fill. */
const inside = (points: readonly Point2[], body: Ring): readonly (readonly Point2[])[] =>
  Math.abs(signedArea(points)) < LEAST_AREA_MM2
    ? []
    : intersect([asRegion(ring(points))], [asRegion(body)]).map(({ outer }) => outer);

/** Floor, drill point and lower rim; the rim follows the belly along the lure, and runs straight across. */
function holePoints({ shape }: DrawnLure, hole: DrawnHole): Point3[] {
  const { stationMm, floorMm, bellyMm, pointAngleDeg } = hole;
  const r = hole.diameterMm / 2;
  const belly = (x: number) => -offsetAt(shape.bellySquared, x);
  const rise = bellyMm - belly(stationMm);
  const tip = floorMm + r / Math.tan((pointAngleDeg * Math.PI) / 360);
  const round = Array.from({ length: 32 }, (_, i) => {
    const a = (2 * Math.PI * i) / 32;
    return { x: stationMm + r * Math.cos(a), y: r * Math.sin(a) };
  });
  return [
    [stationMm, 0, tip],
    ...round.map(({ x, y }): Point3 => [x, y, floorMm]),
    ...round.map(({ x, y }): Point3 => [x, y, Math.min(floorMm, belly(x) + rise)]),
  ];
}
