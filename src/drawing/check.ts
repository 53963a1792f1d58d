/**
 * Judges a finished drawing by its strokes alone, as a maker would who lays a rule on it. It shares
 * nothing with what placed them.
 */
import { pathPoints } from '../geometry/arcpath.js';
import { insideRing } from '../geometry/ring.js';
import { type Box, boxOf, cross, distanceToPiece, type Point2, sub } from '../geometry/vec.js';
import type { Drawing, LayerName, Stroke } from './drawing.js';

export type DrawingFlaw =
  | { readonly kind: 'no-outline' }
  | { readonly kind: 'no-scale-bar' }
  | { readonly kind: 'open-cut'; readonly at: Point2 }
  | { readonly kind: 'outside-the-wood'; readonly layer: LayerName; readonly at: Point2 }
  | { readonly kind: 'label-meets'; readonly layer: LayerName; readonly at: Point2 }
  | { readonly kind: 'route-meets'; readonly layer: LayerName; readonly at: Point2 }
  | { readonly kind: 'rule-on-work'; readonly at: Point2 };

/** A stroke as points: a label that a 0.02 mm chord misses, it misses. */
type Trace = { readonly stroke: Stroke; readonly points: readonly Point2[]; readonly box: Box };

const CHORD_MM = 0.02;
const TURN_POINTS = 64;

/**
 * What is wrong with a drawing; empty when nothing is. Cuts must be closed (or by their neighbors), openings, marks and
 * labels must lie inside an outline, labels must meet no cut and no mark, a saw's ways in no cut,
 * and their numbers nothing at all; there must be a bar of exactly 100 mm, and it and the notes
 * must lie outside the work.
 */
export function checkDrawing({ strokes }: Drawing): readonly DrawingFlaw[] {
  const traces = strokes.map(trace);
  const on = (...layers: LayerName[]) => traces.filter((t) => layers.includes(t.stroke.layer));
  const outlines = on('CUT_OUTSIDE');
  const cuts = on('CUT_INSIDE', 'CUT_OUTSIDE');
  const ways = on('SAW_ROUTE').filter((t) => t.stroke.dashed);
  const numbers = on('SAW_ROUTE').filter((t) => !t.stroke.dashed);
  return [
    ...(outlines.length === 0 ? [{ kind: 'no-outline' } as const] : []),
    ...(on('RULE').some(isScaleBar) ? [] : [{ kind: 'no-scale-bar' } as const]),
    ...openCuts(cuts),
    ...outsideTheWood(on('CUT_INSIDE', 'MARK', 'LABEL'), outlines),
    ...meetings('label-meets', on('LABEL'), [...cuts, ...on('MARK')]),
    ...meetings('route-meets', ways, cuts),
    ...meetings('route-meets', numbers, [...cuts, ...ways, ...on('MARK', 'LABEL', 'STOCK')]),
    ...ruleOnWork(on('RULE'), on('CUT_INSIDE', 'CUT_OUTSIDE', 'MARK', 'LABEL', 'STOCK')),
  ];
}

function trace(stroke: Stroke): Trace {
  const points = stroke.kind === 'path' ? pathPoints(stroke.path, CHORD_MM) : around(stroke.circle);
  // A closed trace ends where it starts.
  const closed = stroke.kind === 'circle' || stroke.path.closed;
  return { stroke, points: closed ? [...points, points[0]] : points, box: boxOf(points) };
}

const around = ({ center, radius }: { center: Point2; radius: number }): Point2[] =>
  Array.from({ length: TURN_POINTS }, (_, i) => {
    const a = (2 * Math.PI * i) / TURN_POINTS;
    return [center[0] + radius * Math.cos(a), center[1] + radius * Math.sin(a)];
  });

const isScaleBar = ({ points }: Trace): boolean =>
  points.length === 2 &&
  points[0][1] === points[1][1] &&
  Math.abs(points[1][0] - points[0][0]) === 100;

const openCuts = (cuts: readonly Trace[]): DrawingFlaw[] =>
  cuts
    .filter(({ stroke }) => stroke.kind === 'path' && !stroke.path.closed)
    .filter((cut) => !isJoined(cut, cuts))
    .map(({ points }) => ({ kind: 'open-cut', at: points[0] }));

/** How near the ends of a joined cut must lie to other cuts, mm: below what a beam or bit can part. */
const JOINED_MM = 0.05;

const boxAround = ([x, y]: Point2, mm: number): Box => [x - mm, y - mm, x + mm, y + mm];

/** True when the cut says that its neighbors close it, and both its ends lie on other cuts. */
const isJoined = (cut: Trace, cuts: readonly Trace[]): boolean =>
  cut.stroke.kind === 'path' &&
  cut.stroke.joined === true &&
  [cut.points[0], cut.points[cut.points.length - 1]].every((end) =>
    cuts.some(
      ({ points, box }) =>
        points !== cut.points &&
        overlap(box, boxAround(end, JOINED_MM)) &&
        points.slice(1).some((p, i) => distanceToPiece(end, points[i], p) <= JOINED_MM),
    ),
  );

/** Every stroke's middle must be inside one outline. */
function outsideTheWood(inner: readonly Trace[], outlines: readonly Trace[]): DrawingFlaw[] {
  return inner.flatMap(({ stroke, points, box }): DrawingFlaw[] => {
    const half = Math.floor((points.length - 1) / 2);
    const [a, b] = [points[half], points[half + 1]];
    const at: Point2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const held = outlines.some((o) => overlap(o.box, box) && insideRing(at, o.points));
    return held ? [] : [{ kind: 'outside-the-wood', layer: stroke.layer, at }];
  });
}

function meetings(
  kind: 'label-meets' | 'route-meets',
  labels: readonly Trace[],
  others: readonly Trace[],
): DrawingFlaw[] {
  const near = byColumn(others);
  return labels.flatMap((label) =>
    near(label.box)
      .filter((other) => overlap(label.box, other.box) && cutsAcross(label, other))
      .map((other) => ({
        kind,
        layer: other.stroke.layer,
        at: label.points[0],
      })),
  );
}

/** Width of a column, mm: some letters. */
const COLUMN_MM = 10;

/** Finds the traces that share an upright column of the drawing with a box: few of very many. */
function byColumn(traces: readonly Trace[]): (box: Box) => Trace[] {
  const columns = new Map<number, Trace[]>();
  const under = ([minX, , maxX]: Box): number[] => {
    const first = Math.floor(minX / COLUMN_MM);
    const count = Math.floor(maxX / COLUMN_MM) - first + 1;
    return Array.from({ length: count }, (_, i) => first + i);
  };
  for (const trace of traces)
    for (const column of under(trace.box)) {
      const held = columns.get(column);
      if (held) held.push(trace);
      else columns.set(column, [trace]);
    }
  return (box) => [...new Set(under(box).flatMap((column) => columns.get(column) ?? []))];
}

function ruleOnWork(rules: readonly Trace[], work: readonly Trace[]): DrawingFlaw[] {
  const box = boxOf(work.flatMap((t) => t.points));
  return rules
    .filter((rule) => overlap(rule.box, box))
    .map(({ points }) => ({ kind: 'rule-on-work', at: points[0] }));
}

const overlap = (a: Box, b: Box): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

/** True when any piece of one line crosses or touches any piece of the other. */
function cutsAcross({ points: a }: Trace, { points: b, box }: Trace): boolean {
  const side = (p: Point2, q: Point2, r: Point2) => Math.sign(cross(sub(q, p), sub(r, p)));
  for (let i = 1; i < a.length; i++) {
    if (!overlap(boxOf([a[i - 1], a[i]]), box)) continue;
    for (let j = 1; j < b.length; j++) {
      const apart =
        side(a[i - 1], a[i], b[j - 1]) * side(a[i - 1], a[i], b[j]) > 0 ||
        side(b[j - 1], b[j], a[i - 1]) * side(b[j - 1], b[j], a[i]) > 0;
      if (!apart && overlap(boxOf([a[i - 1], a[i]]), boxOf([b[j - 1], b[j]]))) return true;
    }
  }
  return false;
}
