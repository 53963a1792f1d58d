/** Signs of the centers on one vertical: where they are, or beside it where they would lie on each other. */
import { add, type Box, distance, type Point2 } from '../../geometry/vec.js';
import { stroke } from './lure-view.js';
import type { Shape } from './picture.js';
import { isRoom, type Label } from './place.js';
import { buoyancySign, gravitySign, metacenterSign } from './signs.js';

export type Marked = { readonly shapes: readonly Shape[]; readonly labels: readonly Label[] };

/** On the sheet. */
export type Centers = { readonly g: Point2; readonly b: Point2; readonly m: Point2 | null };

const LETTER = { gapMm: 2.2, style: { size: 'mark', bold: true } } as const;
/** Signs whose middles are nearer than this lie on each other, mm: the two largest radii and some air. */
const APART_MM = 4.2;
/** How far beside the vertical a sign without room on it may stand, mm: the nearest place that is free, else the first. */
const ASIDE_MM = [8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28] as const;
const RADIUS_MM = 2.2;

/** The signs, to be drawn over `drawn`. */
export function centerMarks(centers: Centers, drawn: readonly Shape[], window: Box): Marked {
  const { g, b, m } = centers;
  const close =
    distance(g, b) < APART_MM ||
    (m !== null && Math.min(distance(g, m), distance(b, m)) < APART_MM);
  return close ? spread(centers, drawn, window) : onPoint(centers);
}

function onPoint({ g, b, m }: Centers): Marked {
  // The letter of the upper center goes up to the right, that of the lower down to the left.
  const up = g[1] >= b[1];
  return {
    shapes: [...buoyancySign(b), ...(m ? metacenterSign(m) : []), ...gravitySign(g)],
    labels: [
      { text: 'G', at: g, firstDeg: up ? 35 : -35, ...LETTER },
      { text: 'B', at: b, firstDeg: up ? 215 : 145, ...LETTER },
      ...(m ? [{ text: 'M', at: m, firstDeg: 0, ...LETTER }] : []),
    ],
  };
}

/** Small rings on the vertical, each tied to its sign: B left, G and M right, one over the other. */
function spread({ g, b, m }: Centers, drawn: readonly Shape[], window: Box): Marked {
  const lift = m ? Math.max(0, APART_MM + 1 - Math.abs(m[1] - g[1])) / 2 : 0;
  const above = m && m[1] < g[1] ? -lift : lift;
  const marks = [
    { text: 'B', point: b, way: -1, lift: 0, sign: buoyancySign },
    ...(m ? [{ text: 'M', point: m, way: 1, lift: above, sign: metacenterSign }] : []),
    { text: 'G', point: g, way: 1, lift: -above, sign: gravitySign },
  ];
  const signs: Shape[] = [];
  const leaders: Shape[] = [];
  const labels: Label[] = [];
  for (const { text, point, way, lift: up, sign } of marks) {
    const places = ASIDE_MM.map((aside) => within(add(point, [way * aside, up]), window));
    const at = firstFree(places, [...drawn, ...signs], window);
    signs.push(...sign(at));
    leaders.push({ ...stroke([point, at], 'line', 'hair'), clear: true });
    labels.push({ text, at, firstDeg: way < 0 ? 180 : 0, ...LETTER });
  }
  const rings = marks.map(
    ({ point }): Shape => ({
      kind: 'disc',
      center: point,
      radiusMm: 0.6,
      role: 'sheet',
      pen: 'hair',
    }),
  );
  return { shapes: [...leaders, ...rings, ...signs], labels };
}

/** The first place that is clear of everything, or at least of all but lines. */
function firstFree(places: readonly Point2[], taken: readonly Shape[], window: Box): Point2 {
  const solid = taken.filter(({ kind }) => kind !== 'line');
  return (
    places.find((p) => isRoom(taken, around(p), window)) ??
    places.find((p) => isRoom(solid, around(p), window)) ??
    places[0]
  );
}

const around = ([x, y]: Point2): Box => [
  x - RADIUS_MM,
  y - RADIUS_MM,
  x + RADIUS_MM,
  y + RADIUS_MM,
];

/** So far inside that the sign and its letter stand in the window. */
const within = ([x, y]: Point2, [minX, minY, maxX, maxY]: Box): Point2 => [
  Math.min(maxX - EDGE_MM, Math.max(minX + EDGE_MM, x)),
  Math.min(maxY - EDGE_MM, Math.max(minY + EDGE_MM, y)),
];
const EDGE_MM = 7;

/** The one vertical through all of them, a little longer than the body. */
export function verticalLine({ g, b, m }: Centers, body: Box, window: Box): Shape {
  const heights = [body[1], body[3], g[1], b[1], ...(m ? [m[1]] : [])];
  const low = Math.max(window[1], Math.min(...heights) - 4);
  const high = Math.min(window[3], Math.max(...heights) + 4);
  const foot: Point2 = [g[0], low];
  return { ...stroke([foot, add(foot, [0, high - low])], 'line', 'hair'), clear: true };
}
