/** A measure of overlap that shares nothing with no-fit polygons: points along one edge, deep in the other. */
import { insideRing, movedRing, type Ring } from '../../src/geometry/ring.js';
import { boxOf, distance, distanceToPiece, mix, type Point2 } from '../../src/geometry/vec.js';
import type { DoubleLattice, LatticeCopy } from '../../src/lattice/double.js';

export const placed = (outline: Ring, { turnDeg, x, y }: LatticeCopy): Ring =>
  movedRing({ turnDeg, move: [x, y] }, outline);

const edgesOf = (r: Ring) => r.map((p, i) => [p, r[(i + 1) % r.length]] as const);

const pointsAlong = (r: Ring, stepMm: number): Point2[] =>
  edgesOf(r).flatMap(([p, q]) => {
    const parts = Math.ceil(distance(p, q) / stepMm);
    return Array.from({ length: parts }, (_, k) => mix(p, q, k / parts));
  });

export const distanceToRing = (p: Point2, r: Ring): number =>
  Math.min(...edgesOf(r).map(([a, b]) => distanceToPiece(p, a, b)));

/** How deep points of a's edge, `stepMm` apart, lie in b; 0 if none does. */
export function depthIn(a: Ring, b: Ring, stepMm = 1): number {
  const [minX, minY, maxX, maxY] = boxOf(b);
  return Math.max(
    0,
    ...pointsAlong(a, stepMm)
      .filter(([x, y]) => x > minX && x < maxX && y > minY && y < maxY)
      .filter((p) => insideRing(p, b))
      .map((p) => distanceToRing(p, b)),
  );
}

/** Greatest depth over all pairs. */
export function worstDepth(rings: readonly Ring[], stepMm = 1): number {
  const boxes = rings.map(boxOf);
  let worst = 0;
  rings.forEach((a, i) => {
    rings.forEach((b, j) => {
      const [p, q] = [boxes[i], boxes[j]];
      const meet = p[0] < q[2] && q[0] < p[2] && p[1] < q[3] && q[1] < p[3];
      if (i !== j && meet) worst = Math.max(worst, depthIn(a, b, stepMm));
    });
  });
  return worst;
}

/** The copies of a lattice around the first, as many steps away as may touch it. */
export function patch({ u, v, w }: DoubleLattice, steps = 3): LatticeCopy[] {
  const out: LatticeCopy[] = [];
  for (let i = -steps; i <= steps; i++) {
    for (let j = -steps; j <= steps; j++) {
      const [x, y] = [i * u[0] + j * v[0], i * u[1] + j * v[1]];
      out.push({ turnDeg: 0, x, y }, { turnDeg: 180, x: x + w[0], y: y + w[1] });
    }
  }
  return out;
}

/** Depth of overlap of the first copy of a lattice with those around it. */
export function latticeDepth(outline: Ring, lattice: DoubleLattice, stepMm = 1): number {
  const around = patch(lattice).filter(({ turnDeg, x, y }) => turnDeg || x || y);
  return Math.max(
    ...around.flatMap((copy) => {
      const other = placed(outline, copy);
      return [depthIn(outline, other, stepMm), depthIn(other, outline, stepMm)];
    }),
  );
}
