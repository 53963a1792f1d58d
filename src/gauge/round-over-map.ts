/**
 * How much each edge of the sawn blank takes, along the edge: at a place of the edge the router cuts
 * in the plane square to the outline there, so the finished surface is looked at along the inward
 * normal. What is on it, u inside the outline and g under the flat side, allows a radius of
 * u + g + √(2ug) (`clearRadius`), and a flat at 45° that begins u + g from the arris on side and edge;
 * the least of these is what the edge takes. Both sides of the blank are alike.
 */
import type { Blank } from '../blank/blank.js';
import { halves } from '../body/properties.js';
import { type BodyShape, offsetAt } from '../body/shape.js';
import { add, type Point2, times } from '../geometry/vec.js';
import { clearRadius } from '../mass/round-over.js';
import { type Edge, edgesOf, placeOn, type Side } from './edge.js';
import { type EdgeMark, edgeMarks, type Marked } from './edge-marks.js';

/** One place of an edge; lengths in mm. */
export type EdgePlace = {
  /** Along the sawn edge from the nose, as a strip of paper lies on it. */
  readonly alongMm: number;
  readonly stationMm: number;
  /** Largest quarter round that stays outside the finished body here; at most half the thickness. */
  readonly radiusMm: number;
  /** Widest flat at 45° that stays outside it, from the arris on side and edge; at most half the thickness. */
  readonly flatMm: number;
  /** Wood to take off the flat side at the widest line of this station. */
  readonly sideMm: number;
};

export type EdgeMap = {
  readonly side: Side;
  readonly lengthMm: number;
  /** About every mm, nose and tail among them. */
  readonly places: readonly EdgePlace[];
  /** Where the edge takes least. */
  readonly least: EdgePlace;
  /** What the maker finds along it, from the nose. */
  readonly marks: readonly EdgeMark[];
};

export type RoundOverMap = {
  readonly back: EdgeMap;
  readonly belly: EdgeMap;
  /** Wood to take off the sawn edge at the center plane: the sanding allowance. */
  readonly edgeMm: number;
};

/** From figure to figure on a strip, about: the widest take 9 mm. */
export const FIGURE_PITCH_MM = 12;

const STEP_MM = 1;
const NOTHING: Marked = {
  sections: [],
  hangers: [],
  holes: [],
  slot: null,
  towEye: null,
  tailEye: null,
};

export function roundOverMap(
  shape: BodyShape,
  { profile, thicknessMm }: Pick<Blank, 'profile' | 'thicknessMm'>,
  sandingAllowanceMm: number,
  marked: Marked = NOTHING,
): RoundOverMap {
  const edges = edgesOf(profile.path);
  const map = (side: Side): EdgeMap => {
    const edge = edges[side];
    const at = (alongMm: number) => placeAt(shape, edge, alongMm, thicknessMm);
    const steps = Math.max(1, Math.round(edge.lengthMm / STEP_MM));
    const places = Array.from({ length: steps + 1 }, (_, i) => at((edge.lengthMm * i) / steps));
    return {
      side,
      lengthMm: edge.lengthMm,
      places,
      least: leastNear(places, at),
      marks: edgeMarks(edge, marked),
    };
  };
  return { back: map('back'), belly: map('belly'), edgeMm: sandingAllowanceMm };
}

function placeAt(shape: BodyShape, edge: Edge, alongMm: number, thicknessMm: number): EdgePlace {
  const { point, inward } = placeOn(edge, alongMm);
  const half = thicknessMm / 2;
  const stationMm = point[0];
  return {
    alongMm,
    stationMm,
    radiusMm: taken(shape, { point, inward }, half, clearRadius),
    flatMm: taken(shape, { point, inward }, half, (inside, under) => inside + under),
    sideMm: half - offsetAt(shape.halfBreadthSquared, stationMm),
  };
}

const DEPTHS = 40; // places looked at along the normal, then refined

/** No place deeper than half the thickness can allow less than that. */
function taken(
  shape: BodyShape,
  from: { point: Point2; inward: Point2 },
  half: number,
  allowed: (insideMm: number, underMm: number) => number,
): number {
  const allows = (u: number): number => {
    const y = halfBreadthAt(shape, add(from.point, times(from.inward, u)));
    return y === null ? Number.POSITIVE_INFINITY : allowed(u, Math.max(0, half - y));
  };
  const step = half / DEPTHS;
  let best = { u: 0, size: Number.POSITIVE_INFINITY };
  const look = (u: number): boolean => {
    const size = allows(u);
    if (!(size < best.size)) return false;
    best = { u, size };
    return true;
  };
  for (let i = 0; i <= DEPTHS; i++) look(i * step);
  for (let width = step / 2; width > 1e-6; ) {
    const { u } = best;
    if (![u - width, u + width].some((v) => v >= 0 && look(v))) width /= 2;
  }
  return Math.min(half, best.size);
}

/** Half-breadth of the finished body at a point of its side view; null outside it. */
function halfBreadthAt(shape: BodyShape, [x, z]: Point2): number | null {
  if (x <= 0 || x >= shape.lengthMm) return null;
  const [upper, lower] = halves(shape, x);
  const { b, h, n } = z >= 0 ? upper : lower;
  const up = Math.abs(z) / h;
  return up <= 1 ? b * (1 - up ** n) ** (1 / n) : null;
}

/** The least place, closed in on between its neighbors. */
function leastNear(places: readonly EdgePlace[], at: (alongMm: number) => EdgePlace): EdgePlace {
  let least = places.reduce((a, b) => (b.radiusMm < a.radiusMm ? b : a));
  const end = places[places.length - 1].alongMm;
  for (let width = STEP_MM / 2; width > 1e-3; ) {
    const beside = [least.alongMm - width, least.alongMm + width].filter((s) => s >= 0 && s <= end);
    const lower = beside.map(at).find((p) => p.radiusMm < least.radiusMm);
    if (lower) least = lower;
    else width /= 2;
  }
  return least;
}

/** Places of an edge about so far apart or more, nose and tail among them: where figures stand. */
export function spaced({ places, lengthMm }: EdgeMap, pitchMm: number): readonly EdgePlace[] {
  const count = Math.max(1, Math.floor(lengthMm / pitchMm));
  const last = places.length - 1;
  return Array.from({ length: count + 1 }, (_, i) => places[Math.round((last * i) / count)]);
}
