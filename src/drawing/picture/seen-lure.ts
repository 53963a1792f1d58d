/** The outlines of a lure and of what is in it and hangs on it, in one view. */
import { chordsOf } from '../../body/chord.js';
import type { BodyShape } from '../../body/shape.js';
import type { Circle } from '../../geometry/arcpath.js';
import { asRegion, intersect } from '../../geometry/clip.js';
import { type Ring, ring, signedArea } from '../../geometry/ring.js';
import { add, type Box, boxOf, type Point2, type Point3, sub, turned } from '../../geometry/vec.js';
import { hungLines } from './hung.js';
import type { DrawnHole, DrawnLure } from './input.js';
import { type SeenLip, seenLip } from './seen-lip.js';
import { hull, LEAST_AREA_MM2, seen, silhouette, type View } from './view.js';

/** The outlines of a lure in one view, true mm, the nose at the origin. */
export type SeenLure = {
  readonly view: View;
  readonly body: Ring;
  /** Empty without a lip. */
  readonly lip: readonly Point2[];
  /** The hole in it; empty without one. */
  readonly lipHole: readonly Point2[];
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
  const { outline: lip, hole: lipHole } = lure.lip ? seenLip(lure.lip, view) : NO_LIP;
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
    lipHole,
    holes: lure.holes.map((hole) => {
      const bellyMm = bellyAlong(lure.shape, hole)(hole.placeMm);
      return {
        bore: inside(shown(holePoints(lure, { ...hole, bellyMm })), body),
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

const NO_LIP: SeenLip = { outline: [], hole: [] };

/** The part of a solid's outline that lies in the body's; nothing when it is too thin to fill. */
const inside = (points: readonly Point2[], body: Ring): readonly (readonly Point2[])[] =>
  Math.abs(signedArea(points)) < LEAST_AREA_MM2
    ? []
    : intersect([asRegion(ring(points))], [asRegion(body)]).map(({ outer }) => outer);

/** Height of the belly along a hole's axis, in the center plane. */
const bellyAlong = (shape: BodyShape, { tiltDeg }: DrawnHole) => {
  const chordsAt = chordsOf(shape, tiltDeg);
  return (placeMm: number): number => chordsAt(placeMm)(0).low;
};

/** Floor, drill point and lower rim; the rim follows the belly along the lure, and runs straight across. */
function holePoints({ shape }: DrawnLure, hole: DrawnHole): Point3[] {
  const { placeMm, floorMm, bellyMm, pointAngleDeg, tiltDeg } = hole;
  const r = hole.diameterMm / 2;
  const belly = bellyAlong(shape, hole);
  const rise = bellyMm - belly(placeMm);
  const tip = floorMm + r / Math.tan((pointAngleDeg * Math.PI) / 360);
  const round = Array.from({ length: 32 }, (_, i) => {
    const a = (2 * Math.PI * i) / 32;
    return { x: placeMm + r * Math.cos(a), y: r * Math.sin(a) };
  });
  const inLure = (x: number, y: number, along: number): Point3 => {
    const [station, z] = turned([x, along], -tiltDeg);
    return [station, y, z];
  };
  return [
    inLure(placeMm, 0, tip),
    ...round.map(({ x, y }) => inLure(x, y, floorMm)),
    ...round.map(({ x, y }) => inLure(x, y, Math.min(floorMm, belly(x) + rise))),
  ];
}
