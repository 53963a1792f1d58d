/** The waste of a face as a blade sees it: where the middle of its kerf may run. */
import { type ArcPath, flatten } from '../geometry/arcpath.js';
import { asRegion, offset } from '../geometry/clip.js';
import { movedRing, type Ring } from '../geometry/ring.js';
import { distance, mix, type Point2 } from '../geometry/vec.js';
import type { NestFace } from '../nest/nest.js';
import { Fault } from '../problem.js';
import type { SawnPart } from './cutplan.js';
import { type Walls, wallsOf } from './walls.js';

/** Chord error of outlines taken from their arcs, mm; that of the nest's own outlines. */
const CHORD_MM = 0.02;
/** A track keeps half a kerf less this from its outline, so that a gap of one kerf holds two of them, mm. */
const TRACK_SLACK_MM = 0.003;
const TRACK_ARC_MM = 0.001;
/** Any way keeps half a kerf less this from every outline: chords and rounding, mm. */
const WAY_SLACK_MM = 0.008;
/** Side of a grid cell: a few edges of an outline, mm. */
const CELL_MM = 4;

export type Waste = {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly kerfMm: number;
  /** Outlines as nested, by placement. */
  readonly outlines: readonly Ring[];
  /**
   * Where the middle of a cut round the outline runs, by placement: half a kerf outside it. More
   * than one ring when the outline has a hollow that no blade enters.
   */
  readonly tracks: readonly (readonly Ring[])[];
  readonly walls: Walls;
  /** Least distance a way keeps from every outline. */
  readonly keepMm: number;
};

/** @throws Fault when outlines lie nearer to each other than the kerf is wide, or a part is not known. */
export function wasteOf(
  face: NestFace,
  parts: ReadonlyMap<string, SawnPart>,
  kerfMm: number,
): Waste {
  if (face.gapMm < kerfMm - 1e-9) throw new Fault(`a kerf of ${kerfMm} in a gap of ${face.gapMm}`);
  const sawn = new Map<string, readonly Ring[]>();
  const tracksOf = (name: string): readonly Ring[] => {
    const known = sawn.get(name) ?? trackRings(partOf(parts, name).outline, kerfMm);
    sawn.set(name, known);
    return known;
  };
  const outlines = face.placements.map((p) => p.outline);
  return {
    lengthMm: face.lengthMm,
    widthMm: face.widthMm,
    kerfMm,
    outlines,
    tracks: face.placements.map(({ part, turnDeg, xMm, yMm }) =>
      tracksOf(part).map((ring) => movedRing({ turnDeg, move: [xMm, yMm] }, ring)),
    ),
    walls: wallsOf(outlines, CELL_MM),
    keepMm: kerfMm / 2 - WAY_SLACK_MM,
  };
}

export function partOf(parts: ReadonlyMap<string, SawnPart>, name: string): SawnPart {
  const part = parts.get(name);
  if (!part) throw new Fault(`no part ${name} among those to saw`);
  return part;
}

/** The outer track first, then those of closed hollows. */
function trackRings(outline: ArcPath, kerfMm: number): Ring[] {
  const by = Math.max(kerfMm / 2 - TRACK_SLACK_MM, kerfMm / 4);
  const regions = offset([asRegion(flatten(outline, CHORD_MM))], by, TRACK_ARC_MM);
  if (regions.length !== 1) throw new Fault(`a track fell into ${regions.length} pieces`);
  return [regions[0].outer, ...regions[0].holes];
}

export const onFace = ({ lengthMm, widthMm }: Waste, [x, y]: Point2): boolean =>
  x >= 0 && y >= 0 && x <= lengthMm && y <= widthMm;

/** Where a ray from a point of the face leaves the block, exactly on its edge; null along no direction. */
export function edgeAlong(
  { lengthMm, widthMm }: Pick<Waste, 'lengthMm' | 'widthMm'>,
  [x, y]: Point2,
  [dx, dy]: Point2,
): Point2 | null {
  const tx = dx > 0 ? (lengthMm - x) / dx : dx < 0 ? -x / dx : Infinity;
  const ty = dy > 0 ? (widthMm - y) / dy : dy < 0 ? -y / dy : Infinity;
  const clamp = (value: number, most: number) => Math.min(most, Math.max(0, value));
  if (!Number.isFinite(Math.min(tx, ty))) return null;
  return tx <= ty
    ? [dx > 0 ? lengthMm : 0, clamp(y + tx * dy, widthMm)]
    : [clamp(x + ty * dx, lengthMm), dy > 0 ? widthMm : 0];
}

/** The point of a closed line nearest to p. */
export function nearestOn(points: readonly Point2[], p: Point2): Point2 {
  let best = points[0];
  for (let i = 0; i < points.length; i++) {
    const [a, b] = [points[i], points[(i + 1) % points.length]];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy);
    const q = mix(a, b, Math.min(1, Math.max(0, t)));
    if (distance(q, p) < distance(best, p)) best = q;
  }
  return best;
}
