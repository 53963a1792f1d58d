/**
 * A second kernel for the same trees: @jscad/modeling's own extrusions, transforms and booleans. It
 * is a judge and a yardstick, not a maker of prints: its booleans leave edges that no facet meets.
 */
import jscad from '@jscad/modeling';
import type { Mesh } from '../geometry/mesh.js';
import type { Region } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import type { Csg } from './csg.js';

type Solid = ReturnType<typeof jscad.primitives.cuboid>;
/** The package's own types name a default export that is not there. */
type Generalize = (
  options: Record<'snap' | 'simplify' | 'triangulate', true>,
  solid: Solid,
) => Solid;
const generalize = jscad.modifiers.generalize as unknown as Generalize;
const ROUND_SIDES = 8; // sides of the circles a pen's line is hulled from
type Mat4 = Parameters<typeof jscad.transforms.transform>[0];

export type SecondOpinion = {
  readonly volumeMm3: number;
  readonly triangles: number;
  /** Directed edges not met by exactly one the other way, after the library's own repair. */
  readonly openEdges: number;
};

/** The tree by the second kernel, with its own repair (`generalize`) before edges are counted. */
export function jscadEvaluate(csg: Csg): SecondOpinion {
  const solid = built(csg);
  const repaired = generalize({ snap: true, simplify: true, triangulate: true }, solid);
  const triangles = jscad.geometries.geom3.toPolygons(repaired).map((p) => p.vertices);
  return {
    volumeMm3: jscad.measurements.measureVolume(solid),
    triangles: triangles.length,
    openEdges: openEdges(triangles),
  };
}

/** Only the booleans and what they need, for timing against `evaluate`. */
export const jscadBooleans = (csg: Csg): number =>
  jscad.geometries.geom3.toPolygons(built(csg)).length;

function built(csg: Csg): Solid {
  switch (csg.kind) {
    case 'extrude':
      return prism(csg.regions, csg.fromZ, csg.toZ);
    case 'strokes':
      return penStrokes(csg);
    case 'cylinder':
      return jscad.primitives.cylinder({
        radius: csg.radius / Math.cos(Math.PI / csg.segments),
        height: csg.toZ - csg.fromZ,
        center: [0, 0, (csg.fromZ + csg.toZ) / 2],
        segments: csg.segments,
      });
    case 'mesh':
      return facets(csg.mesh);
    case 'moved':
      return jscad.transforms.transform([...csg.matrix] as unknown as Mat4, built(csg.part));
    case 'union':
      return jscad.booleans.union(csg.parts.map(built));
    case 'intersect':
      return jscad.booleans.intersect(csg.parts.map(built));
    case 'subtract':
      return jscad.booleans.subtract(built(csg.from), ...csg.parts.map(built));
  }
}

function prism(regions: readonly Region[], fromZ: number, toZ: number): Solid {
  const sides = regions.flatMap(({ outer, holes }) => [
    ...sidesOf(outer),
    ...holes.flatMap((hole) => sidesOf([...hole].reverse())),
  ]);
  const area = jscad.geometries.geom2.create(sides);
  const standing = jscad.extrusions.extrudeLinear({ height: toZ - fromZ }, area);
  return jscad.transforms.translate([0, 0, fromZ], standing);
}

/** Strokes as that library's own users make them: hulls of circles, united, extruded. */
function penStrokes({ lines, width, fromZ, toZ }: Extract<Csg, { kind: 'strokes' }>): Solid {
  const capsules = lines.flatMap((line) => segments(line).map((ends) => capsule(ends, width)));
  const area = jscad.booleans.union(capsules);
  const standing = jscad.extrusions.extrudeLinear({ height: toZ - fromZ }, area);
  return jscad.transforms.translate([0, 0, fromZ], standing);
}

/** The ends of each straight piece of a line; a dot is a piece with one end. */
const segments = (line: readonly Point2[]): Point2[][] =>
  line.length === 1 ? [[line[0]]] : line.slice(1).map((p, i) => [line[i], p]);

/** What the pen covers on one straight piece. The library does not check the numbers, so it is done here. */
function capsule(ends: readonly Point2[], width: number) {
  if (!ends.flat().every(Number.isFinite)) throw new Fault(`line through ${ends.join(' and ')}`);
  const dots = ends.map(([x, y]) =>
    jscad.primitives.circle({ center: [x, y], radius: width / 2, segments: ROUND_SIDES }),
  );
  return jscad.hulls.hull(dots);
}

const sidesOf = (points: readonly Point2[]) =>
  points.map((p, i): [[number, number], [number, number]] => {
    const q = points[(i + 1) % points.length];
    return [
      [p[0], p[1]],
      [q[0], q[1]],
    ];
  });

function facets({ positions, triangles }: Mesh): Solid {
  const corner = (v: number): [number, number, number] => [
    positions[3 * v],
    positions[3 * v + 1],
    positions[3 * v + 2],
  ];
  const polygons = Array.from({ length: triangles.length / 3 }, (_, t) =>
    jscad.geometries.poly3.create([0, 1, 2].map((k) => corner(triangles[3 * t + k]))),
  );
  return jscad.geometries.geom3.create(polygons);
}

function openEdges(triangles: readonly (readonly (readonly number[])[])[]): number {
  if (triangles.length === 0) throw new Fault('second opinion on nothing');
  const edges = new Map<string, number>();
  const name = (a: readonly number[], b: readonly number[]) => `${a.join(' ')} ${b.join(' ')}`;
  const all = triangles.flatMap((t) => t.map((p, i) => [p, t[(i + 1) % t.length]] as const));
  for (const [p, q] of all) edges.set(name(p, q), (edges.get(name(p, q)) ?? 0) + 1);
  return all.filter(([p, q]) => edges.get(name(p, q)) !== 1 || edges.get(name(q, p)) !== 1).length;
}
