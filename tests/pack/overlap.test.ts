/** Depth of overlap and the shortest way out, against brute force and two other libraries. */
import { describe, expect, test } from 'vitest';
import { minkowskiSum } from '../../src/geometry/clip.js';
import { seededDraws } from '../../src/geometry/random.js';
import {
  insideRing,
  movedRing,
  type Region,
  type Ring,
  rectRing,
  ring,
  ringBox,
} from '../../src/geometry/ring.js';
import { cosSinDeg, distanceToPiece, type Point2 } from '../../src/geometry/vec.js';
import { noFit, piecesOf } from '../../src/pack/nofit.js';
import { overlapOf } from '../../src/pack/overlap.js';
import { type Outline, type Table, tableOf } from '../../src/pack/table.js';
import { commonArea } from './second-opinion.js';
import { GRID_SHAPES, outlineOf, star } from './stars.js';

const draw = seededDraws(5);
const between = (least: number, most: number): number => least + draw() * (most - least);

/** Outlines at odd turns, and the table of them. */
function drawnPair(): { readonly rings: readonly Ring[]; readonly table: Table } {
  const rings = [star(draw, 3 + Math.floor(9 * draw())), star(draw, 3 + Math.floor(9 * draw()))];
  const turns = [0, 90, 180, 360 * draw()];
  return { rings, table: tableOf(rings.map((r) => outlineOf(r, turns))) };
}

const turnedRing = ({ turned }: Table, rings: readonly Ring[], k: number): Ring =>
  movedRing({ turnDeg: turned[k].turnDeg, move: [0, 0] }, rings[turned[k].outline]);
const shifted = (r: Ring, x: number, y: number): Ring => movedRing({ turnDeg: 0, move: [x, y] }, r);

/** Depth of a point in regions: even-odd over all edges, distance to the nearest of all. */
function naiveDepth(regions: readonly Region[], p: Point2): number {
  const loops = regions.flatMap((r) => [r.outer, ...r.holes]);
  if (loops.filter((loop) => insideRing(p, loop)).length % 2 === 0) return 0;
  return edgeDistance(loops, p);
}
const edgeDistance = (loops: readonly (readonly Point2[])[], p: Point2): number =>
  Math.min(
    ...loops.flatMap((loop) =>
      loop.map((a, i) => distanceToPiece(p, a, loop[(i + 1) % loop.length])),
    ),
  );

/** Clipping keeps 1e-6. */
const GRID = 3e-6;

describe('depth', () => {
  test('is that of the no-fit polygon of the turned outlines, over all its edges', () => {
    let inside = 0;
    for (let n = 0; n < 8; n++) {
      const { rings, table } = drawnPair();
      const { depth } = overlapOf(table);
      const kinds = table.turned.length;
      for (let m = 0; m < 8; m++) {
        const [k, j] = [Math.floor(kinds * draw()), Math.floor(kinds * draw())];
        const [moving, fixed] = [turnedRing(table, rings, k), turnedRing(table, rings, j)];
        const regions = noFit(piecesOf(fixed), piecesOf(moving));
        for (let s = 0; s < 25; s++) {
          const p: Point2 = [between(-20, 20), between(-20, 20)];
          const found = depth(k * kinds + j, ...p);
          expect(Math.abs(found - naiveDepth(regions, p))).toBeLessThan(GRID);
          if (found > 0) inside++;
        }
      }
    }
    expect(inside).toBeGreaterThan(150);
  });

  test('agrees with clipper’s own Minkowski sum wherever that has no hole', () => {
    let compared = 0;
    for (let n = 0; n < 20; n++) {
      const { rings, table } = drawnPair();
      const [fixed, moving] = rings;
      const sum = minkowskiSum(fixed, ring(moving.map(([x, y]): Point2 => [-x, -y])));
      const own = noFit(piecesOf(fixed), piecesOf(moving));
      if (own.length !== 1 || own[0].holes.length > 0) continue;
      const kinds = table.turned.length;
      const { depth } = overlapOf(table);
      for (let s = 0; s < 30; s++) {
        const p: Point2 = [between(-20, 20), between(-20, 20)];
        const other = naiveDepth([{ outer: sum, holes: [] }], p);
        expect(Math.abs(depth((kinds / 2) * kinds, ...p) - other)).toBeLessThan(GRID);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(300);
  });

  test('is above 0 just where polyclip finds common area, and no move shorter than it parts', () => {
    let overlapping = 0;
    let apart = 0;
    for (let n = 0; n < 20; n++) {
      const { rings, table } = drawnPair();
      const kinds = table.turned.length;
      const [k, j] = [Math.floor(kinds * draw()), Math.floor(kinds * draw())];
      const [moving, fixed] = [turnedRing(table, rings, k), turnedRing(table, rings, j)];
      const [x, y] = [between(-14, 14), between(-14, 14)];
      const found = overlapOf(table).depth(k * kinds + j, x, y);
      if (found === 0) {
        expect(commonArea(shifted(moving, x, y), fixed)).toBeLessThan(1e-4);
        apart++;
        continue;
      }
      overlapping++;
      for (let a = 0; a < 8; a++) {
        const [cos, sin] = cosSinDeg(45 * a);
        const by = found - 1e-3;
        if (by <= 0) continue;
        expect(commonArea(shifted(moving, x + by * cos, y + by * sin), fixed)).toBeGreaterThan(0);
      }
    }
    expect(overlapping).toBeGreaterThan(5);
    expect(apart).toBeGreaterThan(1);
  });

  test('does not depend on which of the two moves', () => {
    const { table } = drawnPair();
    const { depth } = overlapOf(table);
    const kinds = table.turned.length;
    for (let s = 0; s < 2000; s++) {
      const [k, j] = [Math.floor(kinds * draw()), Math.floor(kinds * draw())];
      const [x, y] = [between(-18, 18), between(-18, 18)];
      const [one, other] = [depth(k * kinds + j, x, y), depth(j * kinds + k, -x, -y)];
      expect(Math.abs(one - other)).toBeLessThan(GRID);
    }
  });

  test('is the same on the lines between cells', () => {
    for (let n = 0; n < 10; n++) {
      const rings = [star(draw, 7), star(draw, 9)];
      const table = tableOf(rings.map((r) => outlineOf(r)));
      const regions = noFit(piecesOf(rings[0]), piecesOf(rings[1]));
      // The second moves, the first lies still: pair 1 × 2 + 0.
      const polygon = table.polygon[2];
      const [left, bottom, acrossX, acrossY] = table.origin.subarray(4 * polygon);
      const [columns, rows] = table.grid.subarray(3 * polygon);
      for (let column = 0; column <= columns; column++) {
        for (let row = 0; row <= rows; row += 2) {
          const p: Point2 = [left + column / acrossX, bottom + row / acrossY];
          const found = overlapOf(table).depth(2, ...p);
          expect(Math.abs(found - naiveDepth(regions, p))).toBeLessThan(GRID);
        }
      }
    }
  });

  test('on whole-number grids: level with corners, on edges, on corners', () => {
    const rings = GRID_SHAPES;
    const table = tableOf(rings.map((r) => outlineOf(r, [0, 90, 180, 270])));
    const { depth } = overlapOf(table);
    const kinds = table.turned.length;
    let [touching, inside] = [0, 0];
    for (let k = 0; k < kinds; k++) {
      for (let j = 0; j < kinds; j++) {
        const [moving, fixed] = [turnedRing(table, rings, k), turnedRing(table, rings, j)];
        const [left, low, right, top] = table.boxes.subarray(4 * (k * kinds + j));
        // Unit squares: they overlap where one square of each coincides (the shapes are unions of such).
        for (let s = 0; s < 12; s++) {
          const [x, y] = [between(left, right + 1), between(low, top + 1)].map(Math.floor);
          const common = squaresOf(fixed).filter(([a, b]) =>
            squaresOf(moving).some(([c, d]) => c + x === a && d + y === b),
          ).length;
          const found = depth(k * kinds + j, x, y);
          expect(found > 0).toBe(common > 0);
          // Integer places lie at whole distances from edges that are whole, or on their diagonals.
          if (common > 0) {
            expect(found ** 2).toBeCloseTo(Math.round(found ** 2), 6);
            inside++;
          } else touching++;
        }
      }
    }
    expect([inside > 300, touching > 300]).toEqual([true, true]);
  });

  test('of squares is known: the least of the four ways out', () => {
    const table = tableOf([outlineOf(rectRing(0, 0, 2, 2)), outlineOf(rectRing(0, 0, 3, 1))]);
    const { depth } = overlapOf(table);
    for (let s = 0; s < 500; s++) {
      // The bar at (x, y) from the square overlaps for −3 < x < 2, −1 < y < 2.
      const [x, y] = [between(-4, 3), between(-2, 3)];
      const known = Math.max(0, Math.min(x + 3, 2 - x, y + 1, 2 - y));
      expect(depth(1 * 2 + 0, x, y)).toBeCloseTo(known, 12);
    }
    for (const [x, y] of [
      [-3, 0],
      [2, 0.5],
      [0, -1],
      [0, 2],
      [-3, -1],
      [2, 2],
    ]) {
      expect(depth(2, x, y)).toBe(0);
    }
  });

  test('a groove wider than what fits into it keeps its places', () => {
    const u = GRID_SHAPES[1];
    const table = tableOf([outlineOf(u), outlineOf(rectRing(0, 0, 1.5, 1.5))]);
    const { depth } = overlapOf(table);
    // The groove is 2 wide, from x = 1 to 3, and open above y = 1.
    expect(depth(2, 1.25, 1)).toBe(0);
    expect(depth(2, 1.25, 2)).toBe(0);
    expect(depth(2, 0.9, 1.2)).toBeCloseTo(0.1, 9);
    expect(depth(2, 1.25, 0.7)).toBeCloseTo(0.3, 9);
  });
});

describe('the way out', () => {
  test('is as long as the depth, leads to touching, and no less of it does', () => {
    const exit = new Float64Array(2);
    let left = 0;
    for (let n = 0; n < 20; n++) {
      const { rings, table } = drawnPair();
      const overlap = overlapOf(table);
      const kinds = table.turned.length;
      for (let s = 0; s < 40; s++) {
        const pair = Math.floor(kinds * kinds * draw());
        const [x, y] = [between(-15, 15), between(-15, 15)];
        const depth = overlap.exit(pair, x, y, exit);
        expect(depth).toBe(overlap.depth(pair, x, y));
        if (depth === 0) continue;
        const [dx, dy] = exit;
        expect(Math.hypot(dx, dy)).toBeCloseTo(depth, 10);
        expect(overlap.depth(pair, x + dx, y + dy)).toBeLessThan(1e-8);
        expect(overlap.depth(pair, x + 0.999 * dx, y + 0.999 * dy)).toBeCloseTo(0.001 * depth, 9);
        if (s % 8 === 0) {
          const [k, j] = [Math.floor(pair / kinds), pair % kinds];
          const fixed = turnedRing(table, rings, j);
          const moving = shifted(turnedRing(table, rings, k), x + dx, y + dy);
          // Clipping keeps 1e-6, along edges of some twenty.
          expect(commonArea(moving, fixed)).toBeLessThan(1e-4);
        }
        left++;
      }
    }
    expect(left).toBeGreaterThan(200);
  });
});

describe('keep-outs', () => {
  const bar = ring([
    [0, 0],
    [10, 0],
    [10, 2],
    [0, 2],
  ]);
  const zone = rectRing(0, 0, 1, 1);
  const keepOut = (kind: 'all' | 'nose'): Outline => ({ ...outlineOf(zone), keepsOut: kind });
  const fish: Outline = { ...outlineOf(bar, [0, 180]), nose: rectRing(0, 0, 3, 2) };

  test('"all" keeps whole outlines out, "nose" noses only', () => {
    const table = tableOf([fish, keepOut('all'), keepOut('nose')]);
    const { depth } = overlapOf(table);
    const [ahead, , all, nose] = table.turned.map((_, k) => k);
    const at = (moving: number, fixed: number, x: number, y: number): number =>
      depth(moving * table.turned.length + fixed, x, y);
    // The zone under the tail, then under the nose.
    expect(at(ahead, all, -6.5, -0.5)).toBeCloseTo(1.5, 9);
    expect(at(ahead, nose, -6.5, -0.5)).toBe(0);
    expect(at(ahead, all, -1, -0.75)).toBeCloseTo(1.25, 9);
    expect(at(ahead, nose, -1, -0.75)).toBeCloseTo(1.25, 9);
    // Turned about its origin it lies from x − 10 to x, its nose from x − 3.
    expect(at(1, nose, 1.5, 1.5)).toBeCloseTo(1.5, 9);
    expect(at(1, nose, 7.5, 1.5)).toBe(0);
  });

  test('are not moved: they overlap nothing, nor each other', () => {
    const table = tableOf([fish, keepOut('all'), keepOut('nose')]);
    const { depth } = overlapOf(table);
    const kinds = table.turned.length;
    for (const moving of [2, 3])
      for (let fixed = 0; fixed < kinds; fixed++)
        expect(depth(moving * kinds + fixed, 0.1, 0.1)).toBe(0);
  });

  test('"nose" is nothing to an outline where poor wood does no harm', () => {
    const table = tableOf([{ ...fish, nose: null }, keepOut('nose')]);
    expect(overlapOf(table).depth(0 * 3 + 2, 0.1, 0.1)).toBe(0);
  });
});

/** Lower left corners of the unit squares of a shape on a grid. */
function squaresOf(r: Ring): Point2[] {
  const [left, bottom, right, top] = ringBox(r);
  const out: Point2[] = [];
  for (let x = left; x < right; x++)
    for (let y = bottom; y < top; y++) if (insideRing([x + 0.5, y + 0.5], r)) out.push([x, y]);
  return out;
}
