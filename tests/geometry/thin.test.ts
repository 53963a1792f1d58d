import { expect, test } from 'vitest';
import { circleRing, insideRing, rectRing, ring, ringArea } from '../../src/geometry/ring.js';
import { thinned, thinnedLine } from '../../src/geometry/thin.js';
import type { Point2 } from '../../src/geometry/vec.js';

test('points on straight edges go, corners stay', () => {
  const dense = ring([
    [0, 0],
    [1, 0],
    [2, 0],
    [4, 0],
    [4, 1],
    [4, 3],
    [1, 3],
    [0, 3],
    [0, 1.5],
  ]);
  const plain = thinned(dense, 1e-6);
  expect(plain.length).toBe(4);
  expect(ringArea(plain)).toBe(ringArea(rectRing(0, 0, 4, 3)));
});

test('a bulging outline stays within the tolerance, inside', () => {
  const dense = circleRing([0, 0], 10, { segments: 720 });
  const thin = thinned(dense, 0.05);
  // A chord with sagitta s spans acos(1 − s/r) twice: 31.4 chords of 0.05 on radius 10; halving at
  // the farthest point may use up to twice that.
  expect(thin.length).toBeGreaterThanOrEqual(31);
  expect(thin.length).toBeLessThanOrEqual(64);
  const sagitta = thin.map((p, i) => {
    const q = thin[(i + 1) % thin.length];
    return 10 - Math.hypot((p[0] + q[0]) / 2, (p[1] + q[1]) / 2);
  });
  expect(Math.max(...sagitta)).toBeLessThan(0.05 + 1e-9);
  expect(thin.every((p) => insideRing([p[0] * 0.999, p[1] * 0.999], dense))).toBe(true);
});

test('a closed stroke keeps its shape though its ends meet', () => {
  const loop: Point2[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
    [0, 0],
  ];
  expect(thinnedLine(loop, 0.1)).toEqual(loop);
});
