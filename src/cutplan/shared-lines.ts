/** Stretches where two contours run as one, so that the later of them need not be cut there again. */
import { boxOf, distance, distanceToPiece, mix, type Point2 } from '../geometry/vec.js';
import type { SharedLine } from './cutplan.js';

/** Contours this near to each other are one line, mm: below what a beam or bit can part. */
const SAME_MM = 0.02;
/** Shorter ones are two contours that touch, mm. */
const LEAST_LENGTH_MM = 1;
/** Between the points at which contours are compared, mm. */
const STEP_MM = 0.1;

/** `contours` by placement, `order` of cutting: a shared stretch belongs to the later contour. */
export function sharedLines(
  contours: readonly (readonly Point2[])[],
  order: readonly number[],
): SharedLine[] {
  const boxes = contours.map((c) => boxOf(c));
  const near = (i: number, j: number): boolean =>
    boxes[i][0] <= boxes[j][2] + SAME_MM &&
    boxes[j][0] <= boxes[i][2] + SAME_MM &&
    boxes[i][1] <= boxes[j][3] + SAME_MM &&
    boxes[j][1] <= boxes[i][3] + SAME_MM;
  return order.flatMap((placement, k) =>
    order
      .slice(0, k)
      .filter((cutWith) => near(placement, cutWith))
      .flatMap((cutWith) =>
        stretches(contours[placement], contours[cutWith]).map((path) => ({
          placement,
          cutWith,
          path,
        })),
      ),
  );
}

/** The stretches of a closed line that lie on another one, in the line's own direction. */
function stretches(line: readonly Point2[], other: readonly Point2[]): Point2[][] {
  const [minX, minY, maxX, maxY] = boxOf(other);
  const lies = ([x, y]: Point2): boolean =>
    x >= minX - SAME_MM &&
    x <= maxX + SAME_MM &&
    y >= minY - SAME_MM &&
    y <= maxY + SAME_MM &&
    other.some((p, i) => distanceToPiece([x, y], p, other[(i + 1) % other.length]) <= SAME_MM);
  const points = line.flatMap((a, i) => {
    const b = line[(i + 1) % line.length];
    const pieces = Math.max(1, Math.ceil(distance(a, b) / STEP_MM));
    return Array.from({ length: pieces }, (_, k) => ({
      at: mix(a, b, k / pieces),
      corner: k === 0,
    }));
  });
  const on = points.map((p) => lies(p.at));
  const first = on.indexOf(false);
  if (first < 0) return [[...line, line[0]]];
  const found: Point2[][] = [];
  let run: typeof points = [];
  for (let k = 1; k <= points.length; k++) {
    const i = (first + k) % points.length;
    if (on[i]) {
      run.push(points[i]);
      continue;
    }
    const path = run.filter((p, n) => p.corner || n === 0 || n === run.length - 1).map((p) => p.at);
    const longMm = path.reduce((sum, p, n) => (n === 0 ? 0 : sum + distance(path[n - 1], p)), 0);
    if (longMm >= LEAST_LENGTH_MM) found.push(path);
    run = [];
  }
  return found;
}
