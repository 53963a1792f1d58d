import { expect, test } from 'vitest';
import type { Point3 } from '../../src/geometry/vec.js';
import { dot3, sub3, unit3 } from '../../src/geometry/vec3.js';
import { drawnApart } from '../../src/shade/apart.js';
import { modelOf } from '../../src/shade/model.js';
import type { Body } from '../../src/shade/scene.js';
import { body, box, movedTo, scene, turnedTo } from './shapes.js';

const along = (bodies: readonly Body[], d: Point3): number[] => {
  const { corners } = modelOf(scene(...bodies));
  return Array.from({ length: corners.length / 3 }, (_, v) =>
    dot3([corners[3 * v], corners[3 * v + 1], corners[3 * v + 2]], d),
  );
};

const staying = [body(box(20, 20, 5)), body(box(3, 3, 9), 'metal')];
const moving = [
  body(box(6, 6, 6), 'wood', movedTo(7, 7, 2)),
  body(box(1, 9, 1), 'wood', turnedTo([1, 1, 0], [0, 0, 1], [5, 5, 5])),
];

test.each<Point3>([
  [0, 0, 1],
  [2, -1, 1],
  [0, 5, 0],
])('what moves is drawn clear of what stays by the gap, along %s', (...free) => {
  const apart = drawnApart(staying, moving, { free, toward: [1, 1, 1], gapMm: 4 });
  const out = unit3(free);
  const far = Math.max(...along(staying, out));
  const near = Math.min(...along(apart.bodies.slice(2), out));
  expect(near - far).toBeCloseTo(4, 9);
  expect(apart.bodies.slice(0, 2)).toEqual(staying);
  // Nothing moves aside.
  const before = along(moving, [out[1], -out[0], 0]);
  expect(along(apart.bodies.slice(2), [out[1], -out[0], 0])).toEqual(
    before.map((v) => expect.closeTo(v, 9)),
  );
});

test('two ways, each a corner from its place to where it is drawn', () => {
  const apart = drawnApart(staying, moving, { free: [0, 0, 1], toward: [1, -2, 1], gapMm: 4 });
  expect(apart.ways).toHaveLength(2);
  for (const { from, to } of apart.ways) {
    expect(sub3(to, from)).toEqual([0, 0, expect.closeTo(apart.bodies[2].matrix[14] - 2, 9)]);
    const { corners } = modelOf(scene(...moving));
    const gaps = Array.from({ length: corners.length / 3 }, (_, v) =>
      Math.hypot(...sub3([corners[3 * v], corners[3 * v + 1], corners[3 * v + 2]], from)),
    );
    expect(Math.min(...gaps)).toBeLessThan(1e-9);
  }
});

test('seen along the way there is none to draw; with nothing to move it is a fault', () => {
  expect(
    drawnApart(staying, moving, { free: [0, 0, 1], toward: [0, 0, 2], gapMm: 4 }).ways,
  ).toEqual([]);
  expect(() => drawnApart(staying, [], { free: [0, 0, 1], toward: [1, 0, 0], gapMm: 4 })).toThrow();
});
