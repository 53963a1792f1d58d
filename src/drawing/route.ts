/**
 * How a saw led by hand goes through a face: ways in, relief cuts and parting cuts as broken lines,
 * in rings the number of each outline in the order, beside its way in, and a letter at each parting
 * cut.
 */
import { polyline } from '../geometry/arcpath.js';
import { lettering } from '../geometry/lettering.js';
import { insideRing } from '../geometry/ring.js';
import { type Box, boxOf, distance, mix, type Point2 } from '../geometry/vec.js';
import type { Stroke } from './drawing.js';
import { cutLetter } from './notes.js';
import { walled } from './room.js';
import { circleStroke, textStrokes } from './strokes.js';
import { type WallGrid, wallGrid } from './wall-grid.js';

/** The plan of cuts as a drawing needs it; `entryPaths` by placement, face frame. */
export type FaceCuts = {
  readonly entryPaths: readonly (readonly Point2[])[];
  readonly partingCuts: readonly (readonly Point2[])[];
  readonly reliefCuts: readonly (readonly Point2[])[];
  readonly cutOrder: readonly number[];
  /** What an earlier contour has cut of a placement's. */
  readonly sharedLines: readonly { readonly placement: number; readonly path: readonly Point2[] }[];
  readonly kerfMm: number;
};

/** Lines that numbers keep away from: outlines and marks, labels by their boxes, flaws, the block. */
export type Taken = {
  readonly outlines: readonly (readonly Point2[])[];
  readonly lines: readonly (readonly Point2[])[];
  readonly boxes: readonly Box[];
};

/** Letters of numbers, the largest that fit, mm. */
const HEIGHTS_MM = [3.5, 3, 2.5, 2];
/** Between a number and the ring round it, mm. */
const RING_ROOM_MM = 0.8;
/** Between a ring and any line, mm. */
const ROOM_MM = 0.8;
/** Between a ring and a label, so that the number is not read with it, mm. */
const LABEL_ROOM_MM = 3;
const STEP_MM = 1;
/** A number stands as near as it can to where the blade comes to its outline; looked for up to these reaches, mm, each beyond the last. */
const REACHES_MM = [22, 45, 90];
const AROUND = REACHES_MM.map((reachMm, i) => nearestFirst(reachMm, REACHES_MM[i - 1]));
/** A letter stands no further than this from its parting cut, mm, else beyond the block's upper edge. */
const BESIDE = nearestFirst(6);
/** Shorter lines are not drawn, mm. */
const CRUMB_MM = 0.2;

export function routeStrokes(cuts: FaceCuts, taken: Taken): Stroke[] {
  // The last piece of a way in, square onto the outline, is not sawn; nor does a drawn line touch one.
  const ways = cuts.entryPaths.map((path) => path.slice(0, -1));
  const reliefs = cuts.reliefCuts.map((path) => stoppedShort(path, cuts.kerfMm / 2));
  const dashed = brokenLines([...ways, ...reliefs, ...cuts.partingCuts]);
  const walls = wallGrid([
    ...taken.outlines.flatMap((o) => walled(o, true, ROOM_MM)),
    ...[...taken.lines, ...ways, ...reliefs, ...cuts.partingCuts].flatMap((line) =>
      walled(line, false, ROOM_MM),
    ),
    ...taken.boxes.flatMap((box) => walled(cornersOf(box), true, LABEL_ROOM_MM)),
  ]);
  const woods = taken.outlines.map((ring) => ({ ring, box: boxOf(ring) }));
  const signs: Stroke[] = [];
  const put = (text: string, found: Found | null): void => {
    if (!found) return;
    const { at, heightMm, center, radius } = found;
    signs.push(...textStrokes('SAW_ROUTE', { text, heightMm, at }));
    signs.push(circleStroke('SAW_ROUTE', center, radius));
    walls.add(walled(cornersOf(boxAround(found)), true, ROOM_MM));
  };
  cuts.cutOrder.forEach((i, k) => {
    const path = cuts.entryPaths[i];
    if (path.length === 0) return;
    const text = String(k + 1);
    const labels = taken.boxes.filter((box) => overlap(box, woods[i].box));
    const inWood = (p: Point2) => holds(woods[i], p) && !labels.some((box) => inBox(p, box));
    const near = path[path.length - 1];
    put(
      text,
      firstOf(AROUND, (steps) => placed(text, { near, steps, walls, may: inWood })),
    );
  });
  cuts.partingCuts.forEach((path, k) => {
    const text = cutLetter(k);
    const top = path[path.length - 1];
    const inWaste = (p: Point2) => !woods.some((wood) => holds(wood, p));
    const beside = firstOf([0.5, 0.25, 0.75], (share) =>
      placed(text, {
        near: mix(path[0], top, share),
        steps: BESIDE,
        walls,
        may: inWaste,
      }),
    );
    put(text, beside ?? beyond(text, top));
  });
  return [...dashed, ...signs];
}

function firstOf<T>(tries: readonly T[], find: (t: T) => Found | null): Found | null {
  for (const t of tries) {
    const found = find(t);
    if (found) return found;
  }
  return null;
}

function stoppedShort(path: readonly Point2[], byMm: number): Point2[] {
  const [from, to] = [path[path.length - 2], path[path.length - 1]];
  return [...path.slice(0, -1), mix(to, from, Math.min(1, byMm / distance(from, to)))];
}

/** Lines as dashed strokes, each piece once: ways that run together are one line. */
function brokenLines(lines: readonly (readonly Point2[])[]): Stroke[] {
  const seen = new Set<string>();
  const spelled = ([x, y]: Point2) => `${Math.round(x * 1e4)} ${Math.round(y * 1e4)}`;
  return lines.flatMap((line) => {
    const runs: Point2[][] = [];
    let run: Point2[] = [];
    line.slice(1).forEach((to, i) => {
      const ends = [spelled(line[i]), spelled(to)].sort();
      const key = ends.join(' ');
      if (seen.has(key) || ends[0] === ends[1]) {
        run = [];
        return;
      }
      seen.add(key);
      if (run.length === 0) {
        run = [line[i]];
        runs.push(run);
      }
      run.push(to);
    });
    return runs
      .filter((points) => points.slice(1).some((p, i) => distance(p, points[i]) >= CRUMB_MM))
      .map(
        (points): Stroke => ({
          kind: 'path',
          layer: 'SAW_ROUTE',
          path: polyline(points, false),
          dashed: true,
        }),
      );
  });
}

/** A sign in its ring; `at` is the lower left of its letters. */
type Found = Ringed & { readonly at: Point2; readonly heightMm: number };
type Ringed = { readonly center: Point2; readonly radius: number };

const boxAround = ({ center: [x, y], radius: r }: Ringed): Box => [x - r, y - r, x + r, y + r];

/** The letters so high, in their ring round a middle. */
function ringed(text: string, heightMm: number, center: Point2): Found {
  const [minX, minY, maxX, maxY] = boxOf(lettering(text, { heightMm }).flat());
  return {
    center,
    radius: distance([minX, minY], [maxX, maxY]) / 2 + RING_ROOM_MM,
    heightMm,
    at: [center[0] - (minX + maxX) / 2, center[1] - (minY + maxY) / 2],
  };
}

type Search = {
  readonly near: Point2;
  /** Where to look, from there. */
  readonly steps: readonly Point2[];
  readonly walls: WallGrid;
  /** Whether the middle of the ink may lie there. */
  readonly may: (p: Point2) => boolean;
};

/** The largest letters that fit near a point, as near to it as they can. */
function placed(text: string, { near, steps, walls, may }: Search): Found | null {
  const middles = steps.map(([dx, dy]): Point2 => [near[0] + dx, near[1] + dy]).filter(may);
  for (const heightMm of HEIGHTS_MM) {
    const { radius } = ringed(text, heightMm, near);
    const center = middles.find((p) => walls.isFree(boxAround({ center: p, radius })));
    if (center) return ringed(text, heightMm, center);
  }
  return null;
}

/** Steps of a millimeter from a point, beyond a distance and as far as the reach, the nearest first. */
function nearestFirst(reachMm: number, beyondMm = -1): Point2[] {
  const steps = Math.floor(reachMm / STEP_MM);
  const out: Point2[] = [];
  for (let i = -steps; i <= steps; i++)
    for (let j = -steps; j <= steps; j++) {
      const farMm = Math.hypot(i, j) * STEP_MM;
      if (farMm > beyondMm && farMm <= reachMm) out.push([i * STEP_MM, j * STEP_MM]);
    }
  return out.sort((a, b) => a[0] ** 2 + a[1] ** 2 - b[0] ** 2 - b[1] ** 2);
}

/** Above the block's edge, over the end of the cut. */
function beyond(text: string, [x, y]: Point2): Found {
  const [heightMm] = HEIGHTS_MM;
  const { radius } = ringed(text, heightMm, [x, y]);
  return ringed(text, heightMm, [x, y + radius + ROOM_MM]);
}

const cornersOf = ([minX, minY, maxX, maxY]: Box): Point2[] => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
];

const inBox = ([x, y]: Point2, b: Box): boolean => x >= b[0] && x <= b[2] && y >= b[1] && y <= b[3];

const overlap = (a: Box, b: Box): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

const holds = ({ ring, box }: { ring: readonly Point2[]; box: Box }, p: Point2): boolean =>
  inBox(p, box) && insideRing(p, ring);
