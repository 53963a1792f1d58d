/** One constructor makes a drawing right for machines, so that no writer has to mend it. */
import {
  type ArcPath,
  arcOf,
  type Circle,
  type PathVertex,
  segmentsOf,
  sweep,
} from '../geometry/arcpath.js';
import { distance } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import type { Drawing, Stroke } from './drawing.js';

/** Neighboring vertices nearer than this are one, mm: a hundredth of what any tool can show. */
const MERGE_MM = 0.001;

/**
 * The drawing with crumbs merged into their neighbors (points move by at most 0.001 mm), full
 * circles as circles, and strokes that repeat an earlier one exactly left out.
 * @throws Fault on a path that has no length.
 */
export function tidied(drawing: Drawing): Drawing {
  const seen = new Set<string>();
  const strokes = drawing.strokes.map(tidiedStroke).filter((stroke) => {
    const key = spelled(stroke);
    return seen.has(key) ? false : seen.add(key);
  });
  return { ...drawing, strokes };
}

function tidiedStroke(stroke: Stroke): Stroke {
  if (stroke.kind === 'circle') return stroke;
  const path = withoutCrumbs(stroke.path);
  if (path.vertices.length < 2) throw new Fault(`path without length on ${stroke.layer}`);
  const circle = asCircle(path);
  if (!circle) return { ...stroke, path };
  const { path: _, ...rest } = stroke;
  return { ...rest, kind: 'circle', circle };
}

function withoutCrumbs({ closed, vertices }: ArcPath): ArcPath {
  const kept: PathVertex[] = [];
  for (const next of vertices) {
    const last = kept[kept.length - 1];
    // Of two that are one, the first keeps its place and takes the bulge that leaves the second.
    if (last && isCrumb(last, next)) kept[kept.length - 1] = { ...last, bulge: next.bulge };
    else kept.push(next);
  }
  while (closed && kept.length > 1 && isCrumb(kept[kept.length - 1], kept[0])) kept.pop();
  return { closed, vertices: kept };
}

/** A nearly full circle also ends where it starts, but is no crumb. */
const isCrumb = (a: PathVertex, b: PathVertex): boolean =>
  Math.abs(a.bulge) <= 1 && distance([a.x, a.y], [b.x, b.y]) < MERGE_MM;

/** The circle that a closed path runs round exactly once, or null. */
function asCircle(path: ArcPath): Circle | null {
  const segments = segmentsOf(path);
  if (!path.closed || segments.some((s) => s.bulge === 0)) return null;
  const [first, ...others] = segments.map(arcOf);
  const same = others.every(
    (c) =>
      distance(c.center, first.center) < MERGE_MM && Math.abs(c.radius - first.radius) < MERGE_MM,
  );
  const turns = segments.reduce((sum, s) => sum + sweep(s.bulge), 0) / (2 * Math.PI);
  return same && Math.abs(Math.abs(turns) - 1) < 1e-6 ? first : null;
}

/** Equal for strokes that are written alike, whatever their layer. */
function spelled(stroke: Stroke): string {
  const digits = (value: number) => Math.round(value * 1e4);
  if (stroke.kind === 'circle') {
    return [...stroke.circle.center, stroke.circle.radius].map(digits).join(' ');
  }
  const { closed, vertices } = stroke.path;
  return `${closed} ${vertices.map(({ x, y, bulge }) => [x, y, bulge].map(digits).join(' '))}`;
}
