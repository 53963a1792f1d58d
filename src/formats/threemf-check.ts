/** Reads a 3MF file as written, by a reader that shares nothing with the writer but the ZIP, and compares it with what was meant. */
import { strFromU8, unzipSync } from 'fflate';
import { type Mesh, meshFlaws, meshVolume } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { type Matrix, pointBy } from '../solid/placement.js';
import type { ThreemfSet } from './threemf.js';

export type ReadPart = {
  readonly name: string;
  /** Edges where the solid is not closed. */
  readonly openEdges: number;
  /** Where it is built. */
  readonly low: Point3;
  readonly high: Point3;
  readonly volumeMm3: number;
};

export type ReadThreemf = { readonly unit: string; readonly parts: readonly ReadPart[] };

const VOLUME = 1e-6; // relative: corners are written to 1e-7 mm
const PLACE_MM = 1e-4; // a turn by any angle is written to 1e-7 of up to a meter

/** What the file holds that is not in the set, and the other way round; none when all is well. */
export function threemfComplaints({ parts }: ThreemfSet, bytes: Uint8Array): string[] {
  const read = readThreemf(bytes);
  if (read.unit !== 'millimeter') return [`3MF in ${read.unit}`];
  if (read.parts.length !== parts.length) {
    return [`3MF of ${read.parts.length} parts instead of ${parts.length}`];
  }
  return parts.flatMap(({ name, mesh, at }, i) => {
    const found = read.parts[i];
    const [low, high] = reach(mesh, at);
    const off = Math.max(
      ...[0, 1, 2].map((k) =>
        Math.max(Math.abs(found.low[k] - low[k]), Math.abs(found.high[k] - high[k])),
      ),
    );
    const wrong: [boolean, string][] = [
      [found.name !== name, `is named ${found.name}`],
      [found.openEdges > 0, `${found.openEdges} open edges`],
      [!(Math.abs(found.volumeMm3 / meshVolume(mesh) - 1) <= VOLUME), `${found.volumeMm3} mm³`],
      [!(off <= PLACE_MM), `${off} mm off its place`],
      [!(Math.min(...found.low) >= -PLACE_MM), `reaches below zero to ${found.low.join(', ')}`],
    ];
    return wrong.filter(([is]) => is).map(([, what]) => `3MF part ${name}: ${what}`);
  });
}

/** @throws Fault on a model without objects or with an item that builds none of them */
export function readThreemf(bytes: Uint8Array): ReadThreemf {
  const model = strFromU8(unzipSync(bytes)['3D/3dmodel.model'] ?? new Uint8Array());
  const objects = new Map(
    model
      .split('<object ')
      .slice(1)
      .map((text) => [attribute(text, 'id'), text.split('</object>')[0]] as const),
  );
  const parts = [...model.matchAll(/<item [^>]*>/g)].map(([item]) => {
    const object = objects.get(attribute(item, 'objectid'));
    if (object === undefined) throw new Fault(`3MF item of no object: ${item}`);
    return partOf(object, attribute(item, 'transform').split(' ').map(Number));
  });
  if (parts.length === 0) throw new Fault('3MF that builds nothing');
  return { unit: attribute(model, 'unit'), parts };
}

/** A point is a row and stands before the matrix of four rows. */
function partOf(object: string, m: readonly number[]): ReadPart {
  const corners = rows(object, /<vertex x="([^"]*)" y="([^"]*)" z="([^"]*)"/g).map(
    ([x, y, z]): Point3 => [
      x * m[0] + y * m[3] + z * m[6] + m[9],
      x * m[1] + y * m[4] + z * m[7] + m[10],
      x * m[2] + y * m[5] + z * m[8] + m[11],
    ],
  );
  const facets = rows(object, /<triangle v1="([^"]*)" v2="([^"]*)" v3="([^"]*)"/g);
  const { openEdges, volume } = meshFlaws(
    Float64Array.from(corners.flat()),
    Uint32Array.from(facets.flat()),
  );
  const [low, high] = boxOf(corners);
  return { name: attribute(object, 'name'), openEdges, low, high, volumeMm3: volume };
}

const rows = (text: string, pattern: RegExp): number[][] =>
  [...text.matchAll(pattern)].map(([, ...values]) => values.map(Number));

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};

/** The first attribute of this name in the text. */
function attribute(text: string, name: string): string {
  const [, value] = new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(text) ?? [];
  if (value === undefined) throw new Fault(`3MF without ${name}`);
  return value.replace(/&(\w+);/g, (_, entity: string) => ENTITIES[entity] ?? '');
}

function reach({ positions: p }: Mesh, at: Matrix): readonly [Point3, Point3] {
  const corners = Array.from({ length: p.length / 3 }, (_, v) =>
    pointBy(at, [p[3 * v], p[3 * v + 1], p[3 * v + 2]]),
  );
  return boxOf(corners);
}

function boxOf(points: readonly Point3[]): readonly [low: Point3, high: Point3] {
  const fold = (pick: (a: number, b: number) => number, from: number): Point3 =>
    points.reduce<Point3>(
      (box, p) => [pick(box[0], p[0]), pick(box[1], p[1]), pick(box[2], p[2])],
      [from, from, from],
    );
  return [fold(Math.min, Infinity), fold(Math.max, -Infinity)];
}
