/**
 * What every writer of drawings starts from: the strokes in the order of cutting, rounded to the
 * decimals that are written, and refused when a machine would stumble over them. A refusal is our
 * own fault: drawings are made right in `drawing/`.
 */
import { type Drawing, LAYERS, type Stroke } from '../drawing/drawing.js';
import { type ArcPath, segmentsOf } from '../geometry/arcpath.js';
import { distance } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { fixed } from './number.js';

/** Decimals of a coordinate in mm: a tenth of a micrometer, far below any tool, so nothing is lost. */
export const COORDINATE_DECIMALS = 4;

/** Decimals of a bulge: on a chord of 300 mm an error of 1e-8 lifts the arc by 1.5e-6 mm. */
export const BULGE_DECIMALS = 8;

/**
 * The drawing's strokes, layer by layer in the order of `LAYERS`, in their own order inside a layer.
 * @throws Fault on a drawing without strokes, a number that is not finite, a circle without radius,
 * and on segments that, as written, have no length or are drawn twice.
 */
export function writtenStrokes(drawing: Drawing): readonly Stroke[] {
  const strokes = LAYERS.flatMap((layer) =>
    drawing.strokes.filter((stroke) => stroke.layer === layer).map(rounded),
  );
  if (strokes.length === 0 || strokes.length !== drawing.strokes.length) {
    throw new Fault(`drawing "${drawing.title}" has ${strokes.length} strokes on known layers`);
  }
  const seen = new Set<string>();
  for (const key of strokes.flatMap(pieces)) {
    if (seen.has(key)) throw new Fault(`drawing "${drawing.title}": drawn twice: ${key}`);
    seen.add(key);
  }
  return strokes;
}

function rounded(stroke: Stroke): Stroke {
  if (stroke.kind === 'path') return { ...stroke, path: roundedPath(stroke.path) };
  const { center, radius } = stroke.circle;
  const circle = { center: [round(center[0]), round(center[1])], radius: round(radius) } as const;
  if (!(circle.radius > 0)) throw new Fault(`circle of radius ${radius}`);
  return { ...stroke, circle };
}

/** An arc that rises less than the last decimal can show is written as the line it looks like. */
function roundedPath(path: ArcPath): ArcPath {
  const flat = new Set(
    segmentsOf(path).flatMap(({ from, to, bulge }, i) =>
      (Math.abs(bulge) * distance(from, to)) / 2 < 0.5 * 10 ** -COORDINATE_DECIMALS ? [i] : [],
    ),
  );
  const vertices = path.vertices.map(({ x, y, bulge }, i) => ({
    x: round(x),
    y: round(y),
    bulge: flat.has(i) ? 0 : round(bulge, BULGE_DECIMALS),
  }));
  return { closed: path.closed, vertices };
}

const round = (value: number, decimals = COORDINATE_DECIMALS): number =>
  Number(fixed(value, decimals));

/** One spelling for each segment, whichever way it is traveled. */
function pieces(stroke: Stroke): string[] {
  if (stroke.kind === 'circle') {
    return [`circle ${stroke.circle.center} radius ${stroke.circle.radius}`];
  }
  if (stroke.path.vertices.length < 2) throw new Fault('path of fewer than two points');
  return segmentsOf(stroke.path).map(({ from, to, bulge }) => {
    if (from[0] === to[0] && from[1] === to[1]) throw new Fault(`no length at (${from})`);
    const forward = from[0] < to[0] || (from[0] === to[0] && from[1] < to[1]);
    return forward ? `(${from}) (${to}) bulge ${bulge}` : `(${to}) (${from}) bulge ${0 - bulge}`;
  });
}
