import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { threemf } from '../../src/formats/threemf.js';
import { readThreemf, threemfComplaints } from '../../src/formats/threemf-check.js';
import { type Mesh, mesh, meshFlaws, meshVolume } from '../../src/geometry/mesh.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { type Matrix, placement, pointBy, translation } from '../../src/solid/placement.js';
import { box, through } from '../solid/shapes.js';
import { readXml, type Tag } from './xml.js';

const kernel = await loadKernel();
const plate = evaluate(kernel, {
  kind: 'subtract',
  from: box(40, 30, 10, [-20, -15, 0]),
  parts: [through(7)],
});
const cube = evaluate(kernel, box(10, 10, 10));
/** A quarter turn counter-clockwise, then a move into the bed. */
const turned = placement([0, 1, 0], [-1, 0, 0], [0, 0, 1], [15, 20, 0]);
const set = {
  title: 'skerry & holm <2>',
  description: 'skerry 1.2, "holm" 3',
  application: 'blankwright 9.9.9',
  parts: [
    { name: 'plate', mesh: plate, at: turned },
    { name: "maker's cube", mesh: cube, at: translation(60.25, 0, 0) },
  ],
};
const bytes = threemf(set);
const text = (data: Uint8Array): string => new TextDecoder().decode(data);
const withoutHead = (xml: string): string => {
  expect(xml.startsWith('<?xml version="1.0" encoding="UTF-8"?>\n')).toBe(true);
  return xml.slice(xml.indexOf('?>') + 2);
};
const member = (file: Uint8Array, name: string): Tag =>
  readXml(withoutHead(text(unzipSync(file)[name])));
const model = (file = bytes): Tag => member(file, '3D/3dmodel.model');
const child = (tag: Tag, name: string): Tag => {
  const found = tag.children.filter((c) => c.name === name);
  expect(found.length, name).toBe(1);
  return found[0];
};

/** Corners and facets of an object, as the text says. */
function solidOf(object: Tag): { positions: Float64Array; triangles: Uint32Array } {
  const body = child(object, 'mesh');
  const rows = (tag: Tag, keys: string[]) =>
    tag.children.flatMap(({ attributes }) => keys.map((key) => Number(attributes[key])));
  return {
    positions: Float64Array.from(rows(child(body, 'vertices'), ['x', 'y', 'z'])),
    triangles: Uint32Array.from(rows(child(body, 'triangles'), ['v1', 'v2', 'v3'])),
  };
}

afterEach(() => vi.unstubAllEnvs());

describe('the package', () => {
  test('has the members of the Open Packaging Conventions, types first', () => {
    expect(Object.keys(unzipSync(bytes))).toEqual([
      '[Content_Types].xml',
      '_rels/.rels',
      '3D/3dmodel.model',
    ]);
    const types = member(bytes, '[Content_Types].xml');
    expect(types.children.map((c) => c.attributes.Extension)).toEqual(['rels', 'model']);
    const [relation] = member(bytes, '_rels/.rels').children;
    expect(relation.attributes.Target).toBe('/3D/3dmodel.model');
  });

  test('is the same, byte for byte, in any zone and twice', () => {
    for (const zone of ['UTC', 'America/Anchorage', 'Pacific/Auckland']) {
      vi.stubEnv('TZ', zone);
      expect(threemf(set)).toEqual(bytes);
    }
  });
});

describe('the model', () => {
  test('is in millimeters and says what it is', () => {
    const { attributes, children } = model();
    expect(attributes.unit).toBe('millimeter');
    expect(attributes.xmlns).toBe('http://schemas.microsoft.com/3dmanufacturing/core/2015/02');
    const told = children.filter((c) => c.name === 'metadata');
    expect(Object.fromEntries(told.map((c) => [c.attributes.name, c.text]))).toEqual({
      Title: set.title,
      Description: set.description,
      Application: set.application,
    });
  });

  test('holds every solid with shared corners, as the STL has them', () => {
    const objects = child(model(), 'resources').children;
    expect(objects.map((o) => o.attributes.name)).toEqual(['plate', "maker's cube"]);
    expect(objects.map((o) => o.attributes.id)).toEqual(['1', '2']);
    for (const [i, object] of objects.entries()) {
      const { positions, triangles } = solidOf(object);
      const given = set.parts[i].mesh;
      expect([...triangles]).toEqual([...given.triangles]);
      // Corners under 1 mm are kept to 5e-8 mm, others to the last bit of a 32-bit float.
      for (const [k, v] of positions.entries())
        expect(Math.abs(v - given.positions[k])).toBeLessThan(6e-8);
      const far = [...positions.keys()].filter((k) => Math.abs(positions[k]) >= 1);
      expect(far.length).toBeGreaterThan(8);
      expect(far.every((k) => Math.fround(positions[k]) === given.positions[k])).toBe(true);
      expect(meshFlaws(positions, triangles)).toMatchObject({ openEdges: 0, degenerate: 0 });
      expect(meshVolume(mesh(positions, triangles)) / meshVolume(given)).toBeCloseTo(1, 7);
    }
    // Euler: a cube has 8 corners and 12 facets.
    expect(solidOf(objects[1]).positions.length / 3).toBe(8);
  });

  test('places each solid: a point is a row before the matrix', () => {
    const items = child(model(), 'build').children;
    expect(items.map((i) => i.attributes.objectid)).toEqual(['1', '2']);
    for (const [i, item] of items.entries()) {
      const m = item.attributes.transform.split(' ').map(Number);
      expect(m.length).toBe(12);
      const [x, y, z] = [3, -4, 5];
      const read = [0, 1, 2].map((k) => x * m[k] + y * m[3 + k] + z * m[6 + k] + m[9 + k]);
      expect(read).toEqual([...pointBy(set.parts[i].at, [x, y, z])]);
    }
  });
});

describe('what is refused or mended', () => {
  const changed = (change: { name?: string; mesh?: Mesh; at?: Matrix }) => () =>
    threemf({ ...set, parts: [{ ...set.parts[0], ...change }] });

  test('nothing, no name, text XML cannot hold', () => {
    expect(() => threemf({ ...set, parts: [] })).toThrow(/without parts/);
    expect(changed({ name: '' })).toThrow(/without a name/);
    expect(changed({ name: 'a\u0001b' })).toThrow(/XML cannot hold/);
  });

  test('a placement that mirrors, an open mesh, a number that is none', () => {
    const mirror = [...translation(0, 0, 0)];
    mirror[0] = -1;
    expect(changed({ at: mirror })).toThrow(/not a rigid motion/);
    const open = { ...cube, triangles: cube.triangles.slice(3) } as Mesh;
    expect(changed({ mesh: open })).toThrow(/3 open edges/);
    const lost = { ...cube, positions: cube.positions.map(() => Number.NaN) } as Mesh;
    expect(changed({ mesh: lost })).toThrow(/number NaN/);
  });

  test('corners that are one as written are one', () => {
    // An edge of the cube split 1e-8 mm from its end: two corners where the text can hold but one.
    const near = 1e-9;
    const positions = Float64Array.from(cube.positions);
    const at = [0, 1, 2, 3, 4, 5, 6, 7].findIndex((v) =>
      [0, 1, 2].every((k) => positions[3 * v + k] === 0),
    );
    const others = [...cube.triangles];
    const first = others.indexOf(at) - (others.indexOf(at) % 3);
    // The facet at that corner is split by a new corner on its edge, and so is its neighbor.
    const [a, b, c] = rotated(others.slice(first, first + 3), at);
    const twin = facetWith(others, b, a);
    const e = positions.length / 3;
    const split = [...others];
    split.splice(first, 3, a, e, c);
    const [, , d] = rotated(others.slice(twin, twin + 3), b);
    split.splice(twin, 3, e, a, d);
    split.push(e, b, c, b, e, d);
    const toward = [0, 1, 2].map((k) => positions[3 * b + k] * near);
    const fine = mesh(Float64Array.from([...positions, ...toward]), Uint32Array.from(split));
    const file = threemf({
      ...set,
      parts: [{ name: 'cube', mesh: fine, at: translation(0, 0, 0) }],
    });
    const read = solidOf(child(child(model(file), 'resources'), 'object'));
    expect([read.positions.length / 3, read.triangles.length / 3]).toEqual([8, 12]);
  });
});

describe('the check on every file that is written', () => {
  const changed = (from: string | RegExp, to: string): Uint8Array => {
    const members = unzipSync(bytes);
    const written = strFromU8(members['3D/3dmodel.model']);
    expect(written.replace(from, to)).not.toBe(written);
    return zipSync({ ...members, '3D/3dmodel.model': strToU8(written.replace(from, to)) });
  };
  const told = (from: string | RegExp, to: string) =>
    threemfComplaints(set, changed(from, to)).join();

  test('finds what was meant', () => {
    expect(threemfComplaints(set, bytes)).toEqual([]);
    const [, read] = readThreemf(bytes).parts;
    expect(read).toEqual({
      name: "maker's cube",
      openEdges: 0,
      low: [60.25, 0, 0],
      high: [70.25, 10, 10],
      volumeMm3: 1000,
    });
  });

  test('complains of another unit, name, size, place, of a facet and a part left out', () => {
    expect(told('unit="millimeter"', 'unit="inch"')).toMatch(/in inch/);
    expect(told('name="plate"', 'name="late"')).toMatch(/named late/);
    expect(told('y="15"', 'y="15.1"')).toMatch(/mm³.*off its place/);
    expect(told(' 15 20 0"', ' 15 20.001 0"')).toMatch(/0\.00\d+ mm off/);
    expect(told(/<triangle [^>]*>/, '')).toMatch(/3 open edges/);
    expect(told(/<item [^>]*>/, '')).toMatch(/of 1 parts instead of 2/);
    const below = { ...set, parts: [{ ...set.parts[1], at: translation(0, 0, -1) }] };
    expect(threemfComplaints(below, threemf(below)).join()).toMatch(/reaches below zero/);
  });

  test('is not fooled by a file that builds nothing, or something that is not there', () => {
    expect(() => told(/<item[\s\S]*<\/build>/, '</build>')).toThrow(/builds nothing/);
    expect(() => told('objectid="2"', 'objectid="7"')).toThrow(/item of no object/);
  });
});

const rotated = (facet: readonly number[], first: number): number[] => {
  const k = facet.indexOf(first);
  return [facet[k], facet[(k + 1) % 3], facet[(k + 2) % 3]];
};
const facetWith = (triangles: readonly number[], from: number, to: number): number => {
  for (let t = 0; t < triangles.length; t += 3) {
    const facet = triangles.slice(t, t + 3);
    const k = facet.indexOf(from);
    if (k >= 0 && facet[(k + 1) % 3] === to) return t;
  }
  throw new Error('no such edge');
};
