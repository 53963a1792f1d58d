/**
 * Ways through the waste between outlines. The middle of a blade may run along the track of any
 * outline (half a kerf from it: the others are a gap away, and a gap holds a kerf), and straight
 * across from one track to the next. Straight up from the highest point of a track lies a higher
 * one or the block's edge, so what a blade can reach at all is reached.
 */
import {
  boxOf,
  distance,
  mix,
  type Point2,
  quarterLeft,
  sub,
  times,
  unit,
} from '../geometry/vec.js';
import { latest, shortestFrom } from './shortest.js';
import { type Walls, wallsOf } from './walls.js';
import { edgeAlong, nearestOn, onFace, type Waste } from './waste.js';

/** From the block's edge to an outline, with no look at the order of cutting. */
export type WayIn = {
  readonly path: readonly Point2[];
  /** Outlines whose own cuts it runs along: sawn first, they open it. */
  readonly along: readonly number[];
};

export type Roadmap = {
  /** The shortest way on the map from the block's edge to a placement, pulled taut; null if there is none. */
  readonly wayTo: (placement: number) => WayIn | null;
};

/** Between the points of a track from which one looks across, mm. */
const LOOKS_APART_MM = 3;
const CELL_MM = 4;
/** A way that comes so near to a track runs along it, mm. */
const ALONG_MM = 0.05;
/** A look starts this far off its own track, mm; tracks lie at least 0.006 mm apart. */
const OFF_TRACK_MM = 1e-4;

type Graph = {
  readonly points: Point2[];
  /** Placement whose track the node lies on. */
  readonly owner: number[];
  readonly links: number[][];
  /** The point of the block's edge straight across from a node, where nothing lies between. */
  readonly exits: Map<number, Point2>;
};

export function roadmapOf(waste: Waste): Roadmap {
  const graph = graphOf(waste);
  const { points, owner, exits } = graph;
  const { far, next } = shortestFrom(points, graph.links, exits);
  const nearest = new Map<number, number>();
  points.forEach((_, node) => {
    const best = nearest.get(owner[node]);
    if (far[node] < (best === undefined ? Infinity : far[best])) nearest.set(owner[node], node);
  });
  const wayTo = (placement: number): WayIn | null => {
    const first = nearest.get(placement);
    if (first === undefined) return null;
    const nodes: number[] = [];
    for (let node = first; node >= 0; node = next[node]) nodes.push(node);
    const exit = exits.get(nodes[nodes.length - 1]) as Point2;
    const line = [...nodes.map((n) => points[n]), exit].reverse();
    const path = taut(waste, taut(waste, line));
    const passed = [...new Set(nodes.map((n) => owner[n]))].filter((o) => o !== placement);
    return {
      path,
      along: passed.filter((o) => runsAlong(waste, path, o)).sort((a, b) => a - b),
    };
  };
  return { wayTo };
}

function runsAlong({ outlines, kerfMm }: Waste, path: readonly Point2[], o: number): boolean {
  const nearMm = kerfMm / 2 + ALONG_MM;
  const [minX, minY, maxX, maxY] = boxOf(outlines[o]);
  return path.some(
    (p) =>
      p[0] > minX - nearMm &&
      p[0] < maxX + nearMm &&
      p[1] > minY - nearMm &&
      p[1] < maxY + nearMm &&
      distance(p, nearestOn(outlines[o], p)) < nearMm,
  );
}

/** The line with every detour left out that the blade does not need. */
function taut({ walls, keepMm }: Waste, line: readonly Point2[]): Point2[] {
  const out = [line[0]];
  for (let at = 0; at < line.length - 1; ) {
    at = latest(at + 1, line.length - 1, (to) => walls.clear(line[at], line[to], keepMm));
    out.push(line[at]);
  }
  return out;
}

function graphOf(waste: Waste): Graph {
  const graph: Graph = { points: [], owner: [], links: [], exits: new Map() };
  const rings = waste.tracks.flatMap((tracks, owner) => tracks.map((ring) => ({ ring, owner })));
  const nodes = rings.map(({ ring, owner }) =>
    ring.map((p) => (onFace(waste, p) ? addNode(graph, p, owner) : -1)),
  );
  const tracks = wallsOf(
    rings.map((r) => r.ring),
    CELL_MM,
  );
  rings.forEach(({ ring }, r) => {
    for (let i = 0; i < ring.length; i++)
      link(waste, graph, nodes[r][i], nodes[r][(i + 1) % ring.length]);
  });
  rings.forEach(({ ring }, r) => {
    for (const { from, along } of looks(ring)) {
      if (nodes[r][from] < 0) continue;
      const seen = lookAcross(waste, tracks, ring[from], along);
      if (!seen) continue;
      if (seen.met === null) {
        graph.exits.set(nodes[r][from], nearer(graph, nodes[r][from], seen.at));
        continue;
      }
      const { ring: other, from: corner } = tracks.ringOf(seen.met);
      const there = addNode(graph, seen.at, rings[other].owner);
      const corners = nodes[other];
      for (const node of [nodes[r][from], corners[corner], corners[(corner + 1) % corners.length]])
        link(waste, graph, node, there);
    }
  });
  return graph;
}

function addNode(graph: Graph, point: Point2, owner: number): number {
  graph.points.push(point);
  graph.owner.push(owner);
  graph.links.push([]);
  return graph.points.length - 1;
}

function link({ walls, keepMm }: Waste, { points, links }: Graph, a: number, b: number): void {
  if (a < 0 || b < 0 || !walls.clear(points[a], points[b], keepMm)) return;
  links[a].push(b);
  links[b].push(a);
}

const nearer = ({ points, exits }: Graph, node: number, exit: Point2): Point2 => {
  const known = exits.get(node);
  return known && distance(points[node], known) <= distance(points[node], exit) ? known : exit;
};

const AXES: readonly Point2[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
];
/** Not along the track itself. */
const LEAST_OUTWARD = 0.2;

type Look = { readonly from: number; readonly along: Point2 };

/** From the four farthest points of a track along the axes, and about every 3 mm square to it and along the axes. */
function looks(ring: readonly Point2[]): Look[] {
  const out: Look[] = AXES.map((along) => {
    const reach = (i: number) => ring[i][0] * along[0] + ring[i][1] * along[1];
    return { from: ring.reduce((best, _, i) => (reach(i) > reach(best) ? i : best), 0), along };
  });
  let since = 0;
  ring.forEach((p, from) => {
    const before = ring[(from + ring.length - 1) % ring.length];
    since += distance(before, p);
    if (since < LOOKS_APART_MM) return;
    since = 0;
    const chord = sub(ring[(from + 1) % ring.length], before);
    const outward = times(quarterLeft(unit(chord)), -1);
    const facing = AXES.filter((a) => a[0] * outward[0] + a[1] * outward[1] > LEAST_OUTWARD);
    for (const along of [outward, ...facing]) out.push({ from, along });
  });
  return out;
}

/** What lies straight across from a point of a track: another track's edge, or the block's (`met` null). */
function lookAcross(
  waste: Waste,
  tracks: Walls,
  from: Point2,
  along: Point2,
): { readonly at: Point2; readonly met: number | null } | null {
  const start: Point2 = [from[0] + along[0] * OFF_TRACK_MM, from[1] + along[1] * OFF_TRACK_MM];
  const end = edgeAlong(waste, from, along);
  if (!end) return null;
  const { walls, keepMm } = waste;
  for (let reach = 2 * CELL_MM; ; reach *= 4) {
    const share = Math.min(1, reach / Math.max(distance(start, end), 1e-9));
    const to = mix(start, end, share);
    const met = tracks.firstMet(start, to);
    if (met) return { at: mix(start, to, met.share), met: met.edge };
    if (share === 1) return walls.clear(from, end, keepMm) ? { at: end, met: null } : null;
  }
}
