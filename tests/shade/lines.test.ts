import { describe, expect, test } from 'vitest';
import { type Mesh, mesh } from '../../src/geometry/mesh.js';
import { seededDraws } from '../../src/geometry/random.js';
import { circleRing, rectRing } from '../../src/geometry/ring.js';
import { distance, type Point2, type Point3 } from '../../src/geometry/vec.js';
import { cross3, dot3, sub3, unit3 } from '../../src/geometry/vec3.js';
import type { SeenLine } from '../../src/shade/lines.js';
import { modelOf } from '../../src/shade/model.js';
import type { Scene } from '../../src/shade/scene.js';
import { shaded } from '../../src/shade/shade.js';
import { axesOf, type View } from '../../src/shade/view.js';
import { extruded } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { turned } from '../geometry/prism.js';
import { body, box, ISOMETRIC, movedTo, scene, sphere, TOP, turnedTo } from './shapes.js';

const PIXEL = 0.1;
const lines = (of: Scene, view: View): readonly SeenLine[] =>
  shaded(modelOf(of), view, PIXEL).lines;

const lengthOf = (points: readonly Point2[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + distance(points[i], p), 0);
const total = (some: readonly SeenLine[]): number =>
  some.reduce((sum, { points }) => sum + lengthOf(points), 0);

describe('a cube', () => {
  const a = 10;
  const cube = scene(body(box(a, a, a)));

  test('shows 9 of its 12 edges, each √(2/3) as long, in an isometric view', () => {
    const found = lines(cube, ISOMETRIC);
    expect(total(found)).toBeCloseTo(9 * a * Math.sqrt(2 / 3), 6);
    const outline = found.filter(({ kind }) => kind === 'outline');
    expect(total(outline)).toBeCloseTo(6 * a * Math.sqrt(2 / 3), 6);
  });

  test.each<Point3>([
    [3, 1, 2],
    [-2, 1, 1.5],
    [1, -4, -3],
  ])('shows three edges along each axis from %s', (...toward) => {
    const v = unit3(toward);
    const want = v.reduce((sum, c) => sum + 3 * a * Math.sqrt(1 - c * c), 0);
    expect(total(lines(cube, { toward, up: [0.1, 0.2, 1] }))).toBeCloseTo(want, 6);
  });

  test('seen straight on is a square', () => {
    expect(total(lines(cube, TOP))).toBeCloseTo(4 * a, 6);
  });
});

test('what stands before a bar hides just that much of it', () => {
  const bar = body(box(30, 2, 2));
  const block = body(box(6, 10, 2), 'wood', movedTo(10, -4, 5));
  const found = lines(scene(bar, block), TOP);
  // Of the bar's 2 (30 + 2) mm the block hides twice its width; its own 2 (6 + 10) mm are whole.
  expect(total(found)).toBeCloseTo(64 - 12 + 32, 1);
  expect(total(lines(scene(bar, { ...block, tone: 'ghost' }), TOP))).toBeCloseTo(64 + 32, 6);
});

test('bodies that touch do not hide each other’s edges', () => {
  const plate = body(box(20, 20, 2));
  const block = body(box(5, 5, 5), 'wood', movedTo(6, 6, 2));
  const k = Math.sqrt(2 / 3);
  const apart = total(lines(scene(body(box(5, 5, 5))), ISOMETRIC));
  // Isometric, the block stands inside the plate's top as seen: hidden is nothing but plate faces.
  const found = lines(scene(plate, block), ISOMETRIC).filter(({ kind }) => kind !== 'seam');
  expect(total(found)).toBeCloseTo(apart + k * (3 * 2 + 6 * 20), 1);
});

test('through a hole its far rim is seen as far as the near one lets it', async () => {
  const [r, h] = [4, 3];
  const plate = {
    outer: rectRing(-10, -10, 10, 10),
    holes: [circleRing([0, 0], r, { segments: 360 })],
  };
  const hole = evaluate(await loadKernel(), extruded([plate], 0, h));
  const a = (30 * Math.PI) / 180;
  const view: View = { toward: [0, -Math.sin(a), Math.cos(a)], up: [0, 1, 0] };
  const outside = 2 * 20 + 2 * 20 * Math.cos(a) + 20 + 2 * h * Math.sin(a) - 20;
  // Near rim: a whole ellipse. Far rim, h sin a lower as seen: the part of it inside the near one.
  const ellipse = (from: number, to: number): number => {
    const n = 20_000;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const t = from + ((i + 0.5) * (to - from)) / n;
      sum += Math.hypot(r * Math.sin(t), r * Math.cos(a) * Math.cos(t)) * ((to - from) / n);
    }
    return sum;
  };
  // They cross where y = ±h sin a / 2 of their middles: sin t = (h tan a) / (2 r).
  const t = Math.asin((h * Math.tan(a)) / (2 * r));
  const want = ellipse(0, 2 * Math.PI) + ellipse(t, Math.PI - t);
  const bare = total(lines(scene(body(box(20, 20, h))), view));
  expect(bare).toBeCloseTo(outside + 20, 6);
  expect(Math.abs(total(lines(scene(body(hole)), view)) - bare - want)).toBeLessThan(2 * PIXEL);
});

describe('which edges are drawn', () => {
  const rod = (segments: number): Scene =>
    scene(
      body(
        turned(
          [
            [0, 0],
            [5, 0],
            [5, 20],
            [0, 20],
          ],
          segments,
        ),
      ),
    );
  const view: View = { toward: [0.3, -1, 0.4], up: [0, 0, 1] };
  const upright = (kind: SeenLine['kind'], some: readonly SeenLine[]): number =>
    some
      .filter((line) => line.kind === kind)
      .flatMap(({ points }) => points.slice(1).map((p, i) => distance(points[i], p)))
      .filter((mm) => mm > 15).length;

  test('facets that meet at 30 degrees have an edge, at 15 degrees none', () => {
    // Six facets of twelve are seen, with five edges between them.
    const [edged, smooth] = [rod(12), rod(24)].map((r) => lines(r, view));
    expect(upright('crease', edged)).toBe(5);
    expect(upright('crease', smooth)).toBe(0);
    expect([edged, smooth].map((some) => upright('outline', some))).toEqual([2, 2]);
  });

  test('a needle that rounding left does not make one', () => {
    const cube = box(10, 10, 10);
    expect(total(lines(scene(body(withNeedle(cube))), ISOMETRIC))).toBeCloseTo(
      total(lines(scene(body(cube)), ISOMETRIC)),
      3,
    );
  });
});

describe('where one body goes into another', () => {
  const seams = (of: Scene, view: View): number =>
    total(lines(of, view).filter(({ kind }) => kind === 'seam'));

  test('a ball half sunk into a plate shows a circle', () => {
    const of = scene(body(sphere(6, 90)), body(box(30, 30, 4), 'wood', movedTo(-15, -15, -2)));
    const r = Math.sqrt(36 - 4);
    // Found sample by sample, 700 round: it may step aside by a part of one where facets end.
    expect(Math.abs(seams(of, TOP) / (2 * Math.PI * r) - 1)).toBeLessThan(0.02);
  });

  test('a post through a slanting plate: a line on the side that is seen', () => {
    const post = body(box(2, 2, 20));
    const plate = body(box(30, 30, 1), 'wood', turnedTo([1, 0, 0.5], [0, 1, 0], [-15, -14, 3]));
    const view: View = { toward: [0, -1, 0.6], up: [0, 0, 1] };
    // The front side cuts the plate's top along (2, 0, 1), seen at (2, cos a): cos a = 1 / √1.36.
    const want = Math.hypot(2, 1 / Math.sqrt(1.36));
    expect(Math.abs(seams(scene(post, plate), view) - want)).toBeLessThan(PIXEL);
  });

  test('there is none where bodies stand apart, and on touching ones none but on their edges', () => {
    expect(
      seams(scene(body(box(5, 5, 5)), body(box(5, 5, 5), 'wood', movedTo(3, 2, 7))), TOP),
    ).toBe(0);
    const stood = scene(body(box(20, 20, 2)), body(box(5, 5, 5), 'wood', movedTo(6, 6, 2)));
    // Two edges of its foot are seen; the seam may run along them.
    expect(seams(stood, ISOMETRIC)).toBeLessThan(2 * 5 * Math.sqrt(2 / 3) + PIXEL);
  });
});

/** The mesh with a corner set into the middle of an inner edge of its top, a hair beside it and over it. */
function withNeedle({ positions, triangles }: Mesh): Mesh {
  const v = positions.length / 3;
  const top = (t: number) => [0, 1, 2].every((k) => positions[3 * triangles[3 * t + k] + 2] === 10);
  const t = Array.from({ length: triangles.length / 3 }, (_, i) => i).find(top) as number;
  const corner = [0, 1, 2].map((k) => triangles[3 * t + k]);
  const at = (c: number): Point3 => [positions[3 * c], positions[3 * c + 1], positions[3 * c + 2]];
  const k = [0, 1, 2].find((i) => {
    const [p, q] = [at(corner[i]), at(corner[(i + 1) % 3])];
    return p[0] !== q[0] && p[1] !== q[1];
  }) as number;
  const [a, b, c] = [corner[k], corner[(k + 1) % 3], corner[(k + 2) % 3]];
  const [p, q, r] = [at(a), at(b), at(c)];
  const near = [0, 1, 2].map(
    (i) => 0.5 * (p[i] + q[i]) + 1e-6 * (r[i] - p[i]),
  ) as unknown as Point3;
  const rest = [...triangles].filter((_, i) => Math.floor(i / 3) !== t);
  return mesh(
    Float64Array.from([...positions, near[0], near[1], near[2] + 1e-5]),
    Uint32Array.from([...rest, a, b, v, b, c, v, c, a, v]),
  );
}

describe('a second opinion by rays', () => {
  const draw = seededDraws(20);
  const between = (low: number, high: number) => low + (high - low) * draw();
  const somewhere = (size: number): Point3 => [
    between(-size, size),
    between(-size, size),
    between(-size, size),
  ];

  test.each([1, 2, 3, 4, 5, 6])('of boxes thrown together, scene %s', () => {
    const bodies = Array.from({ length: 6 }, () =>
      body(
        box(between(2, 12), between(2, 12), between(2, 12)),
        'plastic',
        turnedTo(somewhere(1), somewhere(1), somewhere(8)),
      ),
    );
    const view: View = { toward: somewhere(1), up: somewhere(1) };
    const drawn = lines(scene(...bodies), view).filter(({ kind }) => kind !== 'seam');
    const { drawnMm, hiddenMm, missingMm } = judged(scene(...bodies), view, drawn);
    expect(drawnMm).toBeGreaterThan(100);
    // Within two samples of where something begins to hide, both may be right.
    expect(hiddenMm / drawnMm).toBeLessThan(0.01);
    expect(missingMm / drawnMm).toBeLessThan(0.01);
  });
});

/** Every edge of every box looked at along its way: seen by rays or not, drawn or not. */
function judged({ bodies }: Scene, view: View, drawn: readonly SeenLine[]) {
  const { right, up, toward } = axesOf(view);
  const facets = bodies.flatMap(({ mesh: { positions, triangles }, matrix: m }) => {
    const at = (v: number): Point3 =>
      [0, 1, 2].map(
        (k) =>
          m[k] * positions[3 * v] +
          m[4 + k] * positions[3 * v + 1] +
          m[8 + k] * positions[3 * v + 2] +
          m[12 + k],
      ) as unknown as Point3;
    return Array.from({ length: triangles.length / 3 }, (_, t) =>
      [0, 1, 2].map((k) => at(triangles[3 * t + k])),
    );
  });
  const STEP = 0.1;
  const near = new Set<string>();
  const cell = (x: number, y: number) => `${Math.floor(x / STEP)} ${Math.floor(y / STEP)}`;
  let drawnMm = 0;
  for (const { points } of drawn)
    for (let i = 1; i < points.length; i++) {
      const [p, q] = [points[i - 1], points[i]];
      drawnMm += distance(p, q);
      const n = Math.ceil(distance(p, q) / (STEP / 4));
      for (let k = 0; k <= n; k++) {
        const [x, y] = [p[0] + ((q[0] - p[0]) * k) / n, p[1] + ((q[1] - p[1]) * k) / n];
        for (const dx of [-1, 0, 1])
          for (const dy of [-1, 0, 1]) near.add(cell(x + dx * STEP, y + dy * STEP));
      }
    }
  const seenCells = new Set<string>();
  let missingMm = 0;
  for (const facet of facets)
    for (let k = 0; k < 3; k++) {
      const [a, b, c] = [facet[k], facet[(k + 1) % 3], facet[(k + 2) % 3]];
      // The slanting edge of a rectangle's two triangles is none.
      const isEdge = Math.abs(dot3(sub3(c, b), sub3(c, a))) > 1e-6;
      if (!isEdge) continue;
      const n = Math.ceil(Math.hypot(...sub3(b, a)) / STEP);
      for (let i = 1; i < n; i++) {
        const p = a.map((v, j) => v + ((b[j] - v) * i) / n) as unknown as Point3;
        if (facets.some((f) => isStruck(p, toward, f))) continue;
        const [x, y] = [dot3(p, right), dot3(p, up)];
        for (const dx of [-1, 0, 1])
          for (const dy of [-1, 0, 1]) seenCells.add(cell(x + dx * STEP, y + dy * STEP));
        if (!near.has(cell(x, y))) missingMm += STEP;
      }
    }
  let hiddenMm = 0;
  for (const { points } of drawn)
    for (let i = 1; i < points.length; i++) {
      const [p, q] = [points[i - 1], points[i]];
      const n = Math.ceil(distance(p, q) / STEP);
      for (let k = 1; k < n; k++) {
        const [x, y] = [p[0] + ((q[0] - p[0]) * k) / n, p[1] + ((q[1] - p[1]) * k) / n];
        if (!seenCells.has(cell(x, y))) hiddenMm += distance(p, q) / n;
      }
    }
  return { drawnMm, hiddenMm, missingMm };
}

/** A ray from just before p toward the viewer meets the triangle (T. Möller and B. Trumbore, 1997). */
function isStruck(p: Point3, way: Point3, [a, b, c]: readonly Point3[]): boolean {
  const [e, f] = [sub3(b, a), sub3(c, a)];
  const h = cross3(way, f);
  const det = dot3(e, h);
  if (Math.abs(det) < 1e-9) return false;
  const s = sub3(p, a);
  const u = dot3(s, h) / det;
  const q = cross3(s, e);
  const v = dot3(way, q) / det;
  return u >= 0 && v >= 0 && u + v <= 1 && dot3(f, q) / det > 1e-3;
}
