import { describe, expect, test } from 'vitest';
import { asRegion } from '../../src/geometry/clip.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import { meshBox, meshFlaws, meshVolume } from '../../src/geometry/mesh.js';
import { type Ring, rectRing } from '../../src/geometry/ring.js';
import { type Csg, extruded, movedBy, segmentsAround } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel, scoped } from '../../src/solid/kernel.js';
import { measure } from '../../src/solid/measure.js';
import { placement, translation } from '../../src/solid/placement.js';
import { aroundArea, box, through } from './shapes.js';

const kernel = await loadKernel();
const volume = (csg: Csg) => measure(kernel, csg).volumeMm3;
const centered = (csg: Csg) => movedBy(translation(-10, -10, 0), csg);
const plate = centered(box(20, 20, 10));
const drilled: Csg = { kind: 'subtract', from: plate, parts: [through(3)] };

describe('trees against closed forms', () => {
  // The kernel computes in doubles: 1e-12 of a thousand cubic millimeters.
  test('prism, cylinder, cut, union, intersection', () => {
    const n = segmentsAround(3, 0.01);
    expect(volume(plate)).toBeCloseTo(4000, 9);
    expect(volume(drilled)).toBeCloseTo(4000 - 10 * aroundArea(3, n), 8);
    const pair: Csg[] = [box(10, 10, 10), box(10, 10, 10, [5, 5, 5])];
    expect(volume({ kind: 'union', parts: pair })).toBeCloseTo(2000 - 125, 9);
    expect(volume({ kind: 'intersect', parts: pair })).toBeCloseTo(125, 9);
  });

  test('a region with a hole keeps it open', () => {
    const frame = extruded(
      [{ outer: rectRing(0, 0, 10, 10), holes: [rectRing(2, 2, 8, 8)] }],
      0,
      2,
    );
    expect(measure(kernel, frame)).toEqual({ volumeMm3: 128, pieces: 1, genus: 1 });
  });

  test('strokes: a straight line is a rectangle with round ends, flattened by at most a tenth of its width', () => {
    const line: Csg = {
      kind: 'strokes',
      lines: [
        [
          [0, 0],
          [10, 0],
        ],
      ],
      width: 2,
      fromZ: 0,
      toZ: 1,
    };
    // Between the stadium 20 + π and the one that chords 0.2 mm inside its ends could make of it.
    const { volumeMm3 } = measure(kernel, line);
    expect(volumeMm3).toBeLessThan(20 + Math.PI);
    expect(volumeMm3).toBeGreaterThan(20 + Math.PI - 0.2 * 2 * Math.PI);
  });

  test('moved: volume stays, box follows', () => {
    const turned = movedBy(placement([0, 1, 0], [0, 0, 1], [1, 0, 0], [5, 6, 7]), box(1, 2, 3));
    const [min, max] = meshBox(evaluate(kernel, turned));
    expect(min).toEqual([5, 6, 7]);
    expect(max).toEqual([8, 7, 9]);
  });

  test('a hole is never smaller than its circle, and larger by the tolerance at most', () => {
    const radii = [0.5, 2, 4.1, 12];
    expect(radii.length).toBe(4);
    for (const radius of radii) {
      const corner = radius / Math.cos(Math.PI / segmentsAround(radius, 0.01));
      expect(corner - radius).toBeGreaterThan(0);
      expect(corner - radius).toBeLessThanOrEqual(0.01);
    }
  });
});

describe('evaluated meshes', () => {
  test('are closed, in 32-bit floats, without −0', () => {
    const m = evaluate(kernel, movedBy(translation(0.1, 0.2, -0.3), drilled));
    expect(meshFlaws(m.positions, m.triangles)).toMatchObject({ openEdges: 0, degenerate: 0 });
    expect([...m.positions].every((v) => Math.fround(v) === v && !Object.is(v, -0))).toBe(true);
  });

  test('give the same bytes twice', () => {
    expect(evaluate(kernel, drilled)).toEqual(evaluate(kernel, drilled));
  });

  test('keep the volume to 1e-6 (float32 rounds 10 mm by 5e-7)', () => {
    expect(meshVolume(evaluate(kernel, drilled)) / volume(drilled)).toBeCloseTo(1, 6);
  });
});

describe('silent failures of the kernel are refused', () => {
  const refused = (csg: Csg, why: RegExp) => expect(() => evaluate(kernel, csg)).toThrow(why);

  test('a hole of radius NaN would be missing', () => {
    const hole: Csg = { kind: 'cylinder', radius: Number.NaN, fromZ: -1, toZ: 11, segments: 32 };
    refused({ kind: 'subtract', from: plate, parts: [hole] }, /cylinder of radius NaN/);
    expect(() => through(Number.NaN)).toThrow(/radius NaN/);
    refused({ ...hole, radius: -1 }, /radius -1/);
  });

  test('a prism without height, upside down or endless', () => {
    refused(box(1, 1, 0), /prism from 0 to 0/);
    refused(box(1, 1, -2), /prism from 0 to -2/);
    refused(box(1, 1, Number.NaN), /prism from 0 to NaN/);
    refused(box(1, 1, Infinity), /prism from 0 to Infinity/);
    refused(extruded([], 0, 1), /extrusion of nothing/);
  });

  // Rings are made right by `ring()`; these go round it on purpose.
  test('an outline wound the wrong way, or crossing itself', () => {
    const clockwise = [...rectRing(0, 0, 2, 2)].reverse() as unknown as Ring;
    refused(extruded([asRegion(clockwise)], 0, 1), /extrusion/);
    const bowTie = [
      [0, 0],
      [1, 1],
      [1, 0],
      [0, 1],
    ] as unknown as Ring;
    refused(extruded([asRegion(bowTie)], 0, 1), /extrusion/);
  });

  test('a mesh turned inside out, or open', () => {
    const { positions, triangles } = evaluate(kernel, plate);
    const inside = { positions, triangles: Uint32Array.from(triangles).reverse() } as Mesh;
    refused({ kind: 'mesh', mesh: inside }, /mesh: status .* volume -/);
    const open = { positions, triangles: triangles.slice(3) } as Mesh;
    refused({ kind: 'mesh', mesh: open }, /manifold/i);
    const lost = { positions: positions.map((v, i) => (i === 4 ? Number.NaN : v)), triangles };
    refused({ kind: 'mesh', mesh: lost as Mesh }, /finite/i);
  });

  test('a cut that misses, and one that leaves nothing', () => {
    const beside = movedBy(translation(100, 0, 0), through(3));
    refused({ kind: 'subtract', from: plate, parts: [through(3), beside] }, /cut 1 .* took away/);
    refused({ kind: 'subtract', from: plate, parts: [centered(box(20, 20, 10))] }, /cut 0/);
    refused({ kind: 'subtract', from: plate, parts: [through(3), through(3)] }, /cut 1/);
  });

  test('an intersection of solids that do not meet, and a boolean of nothing', () => {
    refused({ kind: 'intersect', parts: [plate, box(1, 1, 1, [50, 0, 0])] }, /intersection/);
    refused({ kind: 'union', parts: [] }, /boolean of nothing/);
  });

  test('a motion that mirrors, stretches or is not finite', () => {
    const matrix = (change: Record<number, number>) => {
      const m = [...translation(0, 0, 0)];
      for (const [i, v] of Object.entries(change)) m[Number(i)] = v;
      return m;
    };
    refused({ kind: 'moved', matrix: matrix({ 0: -1 }), part: plate }, /not a rigid motion/);
    refused({ kind: 'moved', matrix: matrix({ 5: 1.001 }), part: plate }, /not a rigid motion/);
    refused({ kind: 'moved', matrix: matrix({ 12: Number.NaN }), part: plate }, /not a rigid/);
  });
});

describe('memory of the kernel', () => {
  test('handles are freed in reverse order, also when the work throws', () => {
    const freed: number[] = [];
    const handle = (i: number) => ({ delete: () => freed.push(i) });
    expect(() =>
      scoped((keep) => {
        keep(handle(1));
        keep(handle(2));
        throw new Error('midway');
      }),
    ).toThrow('midway');
    expect(freed).toEqual([2, 1]);
  });

  test('two hundred solids leave nothing behind', () => {
    const held = () => {
      const { external, arrayBuffers } = process.memoryUsage();
      return (external + arrayBuffers) / 1e6;
    };
    const round: Csg = { kind: 'cylinder', radius: 20, fromZ: 0, toZ: 5, segments: 400 };
    const work = () => measure(kernel, { kind: 'subtract', from: round, parts: [through(3)] });
    for (let i = 0; i < 20; i++) work();
    const before = held();
    for (let i = 0; i < 200; i++) work();
    // Not freed, they hold about 0.5 MB each.
    expect(held() - before).toBeLessThan(20);
  });
});
