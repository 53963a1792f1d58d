/** Faces the planning of cuts is tried on: outlines where they are put, no nest in between. */
import type { SawnPart } from '../../src/cutplan/cutplan.js';
import type { SawCutter } from '../../src/cutplan/plan.js';
import { type ArcPath, flatten, polyline } from '../../src/geometry/arcpath.js';
import { parallel } from '../../src/geometry/parallel.js';
import { movedRing, type Ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import type { NestFace } from '../../src/nest/nest.js';

export { MATERIALS } from '../mass/lures.js';

export const BAND_SAW: SawCutter = {
  guidance: 'steered',
  wanderMm: 0,
  kerfMm: 1.2,
  bladeWidthMm: 6.35,
};
export const LASER: SawCutter = {
  guidance: 'follows',
  wanderMm: 0,
  kerfMm: 0.4,
  bladeWidthMm: null,
};

export type Put = { readonly part: string; readonly at: Point2; readonly turnDeg?: number };

/** A part to saw from its nominal outline; what a laser follows lies `besideMm` outside it. */
export function partFrom(outline: ArcPath, besideMm = 0): SawnPart {
  const path = parallel(outline, besideMm);
  if ('kind' in path) throw new Error(`no parallel: ${path.kind}`);
  return { outline, profile: outline, path, openings: [] };
}

export const fromRing = (ring: Ring, besideMm = 0): SawnPart =>
  partFrom(polyline(ring, true), besideMm);

export function face(
  [lengthMm, widthMm]: readonly [number, number],
  gapMm: number,
  parts: ReadonlyMap<string, SawnPart>,
  put: readonly Put[],
): NestFace {
  return {
    id: 1,
    lengthMm,
    widthMm,
    gapMm,
    thicknessMm: 20,
    marginMm: 0,
    layers: 1,
    copies: 1,
    stacks: [],
    stackHeightMm: 20,
    knots: [],
    splits: [],
    poorZones: [],
    usedRatio: 0,
    offcut: { fromMm: lengthMm, lengthMm: 0 },
    placements: put.map(({ part, at: [xMm, yMm], turnDeg = 0 }) => ({
      part,
      xMm,
      yMm,
      turnDeg,
      outline: movedRing(
        { turnDeg, move: [xMm, yMm] },
        flatten((parts.get(part) as SawnPart).outline, 0.02),
      ),
    })),
  };
}

export const box = (lengthMm: number, heightMm: number): ArcPath =>
  polyline(
    [
      [0, 0],
      [lengthMm, 0],
      [lengthMm, heightMm],
      [0, heightMm],
    ],
    true,
  );

/** A disc about the origin. */
export const disc = (radius: number): ArcPath => ({
  closed: true,
  vertices: [
    { x: -radius, y: 0, bulge: 1 },
    { x: radius, y: 0, bulge: 1 },
  ],
});

/** A board whose upper edge has a round hollow of this radius, half a circle deep at most. */
export function dished(lengthMm: number, heightMm: number, radius: number, depth: number): ArcPath {
  const half = Math.sqrt(radius ** 2 - (radius - depth) ** 2);
  const angle = 2 * Math.asin(half / radius);
  const middle = lengthMm / 2;
  return {
    closed: true,
    vertices: [
      { x: 0, y: 0, bulge: 0 },
      { x: lengthMm, y: 0, bulge: 0 },
      { x: lengthMm, y: heightMm, bulge: 0 },
      { x: middle + half, y: heightMm, bulge: -Math.tan(angle / 4) },
      { x: middle - half, y: heightMm, bulge: 0 },
      { x: 0, y: heightMm, bulge: 0 },
    ],
  };
}
