/**
 * The way of a blade from the block's edge to each outline. Where an outline lies open to an edge
 * the blade comes in along a tangent, or an arc it can turn; else through the waste between the
 * others.
 */
import { boxOf, distance, type Point2, quarterLeft, sub, times, unit } from '../geometry/vec.js';
import { lineLength } from './cutplan.js';
import { type Roadmap, roadmapOf, type WayIn } from './roadmap.js';
import { edgeAlong, nearestOn, onFace, type Waste } from './waste.js';

/** Between the places of an outline where an entry is tried, mm. */
const PLACES_APART_MM = 1.5;
/** How far a way in bends before it touches the outline. */
const BENDS_DEG = [0, 30, 60, 90];
/** Between the points of an arc, degrees; 0.015 mm of chord error for a radius of 16 mm. */
const ARC_STEP_DEG = 5;
/** A saw that meets its outline squarely is turned on the spot; such a way counts as longer by so many radii. */
const SQUARE_COSTS_RADII = 2;

/** The way for each placement; null where no blade gets. `radiusMm` is what the blade turns. */
export function waysIn(waste: Waste, radiusMm: number): (WayIn | null)[] {
  let roadmap: Roadmap | null = null;
  return waste.outlines.map((outline, i) => {
    const direct = openWay(waste, i, radiusMm);
    if (direct && lineLength(direct) <= 2 * (edgeDistance(waste, i) + radiusMm))
      return { path: ontoOutline(direct, outline), along: [] };
    roadmap ??= roadmapOf(waste);
    const through = roadmap.wayTo(i);
    if (direct && (!through || lineLength(direct) <= lineLength(through.path) + radiusMm))
      return { path: ontoOutline(direct, outline), along: [] };
    return through && { ...through, path: ontoOutline(through.path, outline) };
  });
}

function edgeDistance({ outlines, lengthMm, widthMm }: Waste, i: number): number {
  const [minX, minY, maxX, maxY] = boxOf(outlines[i]);
  return Math.max(0, Math.min(minX, minY, lengthMm - maxX, widthMm - maxY));
}

/** The last piece: from where the blade's side touches, square onto the outline. */
const ontoOutline = (way: readonly Point2[], outline: readonly Point2[]): Point2[] => [
  ...way,
  nearestOn(outline, way[way.length - 1]),
];

/** The cheapest clear way without a turn that the blade does not make, or null. */
function openWay(waste: Waste, i: number, radiusMm: number): Point2[] | null {
  const options = placesOn(waste.tracks[i][0])
    .filter(({ at }) => onFace(waste, at))
    .flatMap((place) => optionsAt(waste, place, radiusMm))
    .sort((a, b) => a.cost - b.cost);
  const { walls, keepMm, outlines, kerfMm } = waste;
  const found = options.find(
    ({ way }) =>
      way.every((p, k) => k === 0 || walls.clear(way[k - 1], p, keepMm)) &&
      distance(nearestOn(outlines[i], way[0]), way[0]) < kerfMm,
  );
  return found ? found.way.reverse() : null;
}

type Place = { readonly at: Point2; readonly tangent: Point2 };

/** Points of a track about 1.5 mm apart, with its direction there. */
function placesOn(track: readonly Point2[]): Place[] {
  const places: Place[] = [];
  let since = Infinity;
  track.forEach((at, i) => {
    const before = track[(i + track.length - 1) % track.length];
    since += distance(before, at);
    if (since < PLACES_APART_MM) return;
    since = 0;
    const after = track[(i + 1) % track.length];
    places.push({ at, tangent: unit(sub(unit(sub(after, at)), unit(sub(before, at)))) });
  });
  return places.filter(({ tangent }) => Number.isFinite(tangent[0]));
}

/** A way from the outline outward, as the search looks at it. */
type Option = { readonly way: Point2[]; readonly cost: number };

function optionsAt(waste: Waste, { at, tangent }: Place, radiusMm: number): Option[] {
  const outward = times(quarterLeft(tangent), -1);
  const ways = [-1, 1].flatMap((sense) =>
    bentWays(waste, { at, back: times(tangent, sense), outward, radiusMm }),
  );
  const square = edgeAlong(waste, at, outward);
  return [
    ...ways.map((way) => ({ way, cost: lineLength(way) })),
    ...(square
      ? [{ way: [at, square], cost: distance(at, square) + SQUARE_COSTS_RADII * radiusMm }]
      : []),
  ];
}

type Start = {
  readonly at: Point2;
  readonly back: Point2;
  readonly outward: Point2;
  readonly radiusMm: number;
};

/** Back along the tangent, bent away from the outline by each of the angles, then straight to the edge. */
function bentWays(waste: Waste, { at, back, outward, radiusMm }: Start): Point2[][] {
  const ways: Point2[][] = [];
  const arc: Point2[] = [at];
  for (let deg = 0; deg <= 90; deg += ARC_STEP_DEG) {
    const angle = (deg * Math.PI) / 180;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    if (deg > 0) {
      const next: Point2 = [
        at[0] + radiusMm * (outward[0] * (1 - c) + back[0] * s),
        at[1] + radiusMm * (outward[1] * (1 - c) + back[1] * s),
      ];
      const last = arc[arc.length - 1];
      if (!onFace(waste, next)) {
        const end = edgeAlong(waste, last, sub(next, last));
        return end ? [...ways, [...arc, end]] : ways;
      }
      arc.push(next);
    }
    if (!BENDS_DEG.includes(deg)) continue;
    const end = edgeAlong(waste, arc[arc.length - 1], [
      back[0] * c + outward[0] * s,
      back[1] * c + outward[1] * s,
    ]);
    if (end) ways.push([...arc, end]);
  }
  return ways;
}
