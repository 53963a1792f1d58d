/**
 * From a tree to a solid in the kernel, every node proved: leaves by their volume in closed form,
 * booleans by what they must add or take away. The silent failures this closes: a hole of radius NaN
 * removes nothing, an outline wound the wrong way or a mesh turned inside out counts negative, an
 * operation that finds nothing returns an empty solid and says all is well.
 */
import { meshVolume } from '../geometry/mesh.js';
import { areaOf, type Region } from '../geometry/ring.js';
import { Fault } from '../problem.js';
import { type Csg, strokeAreas } from './csg.js';
import { type Keep, type KernelSolid, type Polygons, sound, type Wasm } from './kernel.js';
import { assertRigid } from './placement.js';

/** A cutter that takes less than this from a part has missed it, mm³. */
const LEAST_CUT = 1e-6;

type Node<K extends Csg['kind']> = Extract<Csg, { kind: K }>;

/** Builds the solid in the kernel's memory. @throws Fault where a node is not what it should be. */
export function build(wasm: Wasm, keep: Keep, csg: Csg): KernelSolid {
  switch (csg.kind) {
    case 'extrude':
      return buildExtrude(wasm, keep, csg);
    case 'strokes':
      return buildExtrude(wasm, keep, { ...csg, regions: strokeAreas(csg.lines, csg.width) });
    case 'cylinder':
      return buildCylinder(wasm, keep, csg);
    case 'mesh':
      return buildMesh(wasm, keep, csg);
    case 'moved':
      return buildMoved(wasm, keep, csg);
    case 'union':
      return buildUnion(wasm, keep, csg);
    case 'intersect':
      return buildIntersection(wasm, keep, csg);
    case 'subtract':
      return buildDifference(wasm, keep, csg);
  }
}

function buildExtrude(
  wasm: Wasm,
  keep: Keep,
  { regions, fromZ, toZ }: Omit<Node<'extrude'>, 'kind'>,
) {
  const height = heightOf(fromZ, toZ);
  if (regions.length === 0) throw new Fault('extrusion of nothing');
  const area = areaOf(regions);
  const prism = keep(wasm._Extrude(polygonsOf(wasm, keep, regions), height, 0, 0, { x: 1, y: 1 }));
  return sound('extrusion', raised(keep, prism, fromZ), area * height);
}

function buildCylinder(wasm: Wasm, keep: Keep, { radius, fromZ, toZ, segments }: Node<'cylinder'>) {
  const height = heightOf(fromZ, toZ);
  if (!(radius > 0 && radius < Infinity && Number.isInteger(segments) && segments >= 3)) {
    throw new Fault(`cylinder of radius ${radius} with ${segments} sides`);
  }
  const corner = radius / Math.cos(Math.PI / segments);
  const prism = keep(wasm.Manifold.cylinder(height, corner, corner, segments));
  const area = segments * radius * radius * Math.tan(Math.PI / segments);
  return sound('cylinder', raised(keep, prism, fromZ), area * height);
}

function buildMesh(wasm: Wasm, keep: Keep, { mesh }: Node<'mesh'>) {
  const given = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.positions),
    triVerts: mesh.triangles,
  });
  const solid = keep(wasm.Manifold.ofMesh(given));
  return sound('mesh', solid, meshVolume(mesh));
}

function buildMoved(wasm: Wasm, keep: Keep, { matrix, part }: Node<'moved'>) {
  assertRigid(matrix);
  const solid = build(wasm, keep, part);
  return sound('moved solid', keep(solid.transform(matrix)), solid.volume());
}

function buildUnion(wasm: Wasm, keep: Keep, { parts }: Node<'union'>) {
  const solids = allBuilt(wasm, keep, parts);
  const result = sound('union', keep(wasm.Manifold.union(solids)));
  const volumes = solids.map((s) => s.volume());
  const sum = volumes.reduce((a, b) => a + b, 0);
  const slack = LEAST_CUT + 1e-9 * sum;
  const volume = result.volume();
  if (volume < Math.max(...volumes) - slack || volume > sum + slack) {
    throw new Fault(`union of ${volumes.join(', ')} mm³ gave ${volume}`);
  }
  return result;
}

function buildIntersection(wasm: Wasm, keep: Keep, { parts }: Node<'intersect'>) {
  const solids = allBuilt(wasm, keep, parts);
  return sound('intersection', keep(wasm.Manifold.intersection(solids)));
}

function buildDifference(wasm: Wasm, keep: Keep, { from, parts }: Node<'subtract'>) {
  let rest = build(wasm, keep, from);
  for (const [i, part] of parts.entries()) {
    const cutter = build(wasm, keep, part);
    const before = rest.volume();
    rest = sound(`cut ${i}`, keep(rest.subtract(cutter)));
    const taken = before - rest.volume();
    if (!(taken > LEAST_CUT)) throw new Fault(`cut ${i} (${part.kind}) took away ${taken} mm³`);
  }
  return rest;
}

function allBuilt(wasm: Wasm, keep: Keep, parts: readonly Csg[]): KernelSolid[] {
  if (parts.length === 0) throw new Fault('boolean of nothing');
  return parts.map((part) => build(wasm, keep, part));
}

const raised = (keep: Keep, solid: KernelSolid, z: number): KernelSolid =>
  keep(solid.translate([0, 0, z]));

function heightOf(fromZ: number, toZ: number): number {
  const height = toZ - fromZ;
  if (!(height > 0 && height < Infinity)) throw new Fault(`prism from ${fromZ} to ${toZ}`);
  return height;
}

/** Outer rings counter-clockwise and holes clockwise: the kernel reads a hole by its winding. */
function polygonsOf(wasm: Wasm, keep: Keep, regions: readonly Region[]): Polygons {
  const list = keep(new wasm.Vector2_vec2());
  const add = (points: readonly (readonly [number, number])[]) => {
    const polygon = keep(new wasm.Vector_vec2());
    for (const [x, y] of points) polygon.push_back({ x, y });
    list.push_back(polygon);
  };
  for (const { outer, holes } of regions) {
    add(outer);
    for (const hole of holes) add([...hole].reverse());
  }
  return list;
}
