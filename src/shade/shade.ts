/** A scene from one side → tones and lines. */
import { type Box, boxOf, type Point2, type Point3 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { depthsOf, type Grid } from './depth.js';
import { linesOf, type SeenLine } from './lines.js';
import { type Model, type Seen, seenCorners, seenFrom } from './model.js';
import { type Raster, rasterOf, SUPER } from './raster.js';
import { axesOf, type View, viewedAt } from './view.js';

/** Right and up in mm of the scene, from the foot of its origin. */
export type Shaded = {
  readonly raster: Raster;
  /** Of the raster: whole pixels. */
  readonly box: Box;
  readonly lines: readonly SeenLine[];
  /** Where a point of the scene is seen. */
  readonly at: (p: Point3) => Point2;
};

/** Lines of grain are this many pixels apart, about. */
const GRAIN_PIXELS = 9;

/** More would need a gigabyte. */
const GREATEST_SAMPLES = 5e7;

/**
 * A scene as seen, `pixelMm` of the scene a pixel.
 * @throws Fault without a solid body, and on a picture too large to hold.
 */
export function shaded(model: Model, view: View, pixelMm: number): Shaded {
  const axes = axesOf(view);
  const seen = seenFrom(model, axes);
  const grid = gridOver(solidBox(seen), pixelMm);
  const depths = depthsOf(seen, grid);
  return {
    raster: rasterOf(seen, depths, GRAIN_PIXELS * pixelMm),
    box: [
      grid.minX,
      grid.maxY - grid.rows * grid.pitch,
      grid.minX + grid.columns * grid.pitch,
      grid.maxY,
    ],
    lines: linesOf(seen, depths),
    at: (p) => viewedAt(axes, p),
  };
}

/** The box round all that is seen of a scene, ghosts and ways too. */
export function seenBox(model: Model, view: View): Box {
  const axes = axesOf(view);
  const corners = seenCorners(model, axes);
  const ways = model.ways.flatMap(({ from, to }) => [from, to]).map((p) => viewedAt(axes, p));
  return boxOf([...extremes(corners, 0, corners.length), ...ways]);
}

/** Lower left and upper right of some corners; none for none. */
function extremes(corners: Float64Array, from: number, to: number): Point2[] {
  if (from === to) return [];
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = from; i < to; i += 3) {
    minX = Math.min(minX, corners[i]);
    minY = Math.min(minY, corners[i + 1]);
    maxX = Math.max(maxX, corners[i]);
    maxY = Math.max(maxY, corners[i + 1]);
  }
  return [
    [minX, minY],
    [maxX, maxY],
  ];
}

function solidBox({ bodies, corners }: Seen): Box {
  let at = 0;
  const points = bodies.flatMap(({ mesh, tone }) => {
    const from = at;
    at += mesh.positions.length;
    return tone === 'ghost' ? [] : extremes(corners, from, at);
  });
  if (points.length === 0) throw new Fault('a picture without a solid body');
  return boxOf(points);
}

/** Whole pixels with one to spare all round. */
function gridOver([minX, minY, maxX, maxY]: Box, pixelMm: number): Grid {
  const columns = SUPER * (Math.ceil((maxX - minX) / pixelMm) + 2);
  const rows = SUPER * (Math.ceil((maxY - minY) / pixelMm) + 2);
  if (!(columns * rows <= GREATEST_SAMPLES))
    throw new Fault(`a picture of ${columns * rows} samples`);
  return { minX: minX - pixelMm, maxY: maxY + pixelMm, pitch: pixelMm / SUPER, columns, rows };
}
