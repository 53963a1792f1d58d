import { expect, test } from 'vitest';
import { asRegion } from '../../src/geometry/clip.js';
import { rectRing, regionArea, ring, ringBox } from '../../src/geometry/ring.js';
import { thinParts } from '../../src/jig/lip-slot-guide/thin-parts.js';

test('a block has corners but no thin part', () => {
  expect(thinParts([asRegion(rectRing(0, 0, 30, 20))], 4)).toEqual([]);
});

test('a wedge of 45° is an edge, not a wall', () => {
  const wedge = ring([
    [0, 0],
    [30, 0],
    [0, 30],
  ]);
  expect(thinParts([asRegion(wedge)], 4)).toEqual([]);
});

test('a wall too thin is found whole, a thick one is left', () => {
  const block = rectRing(0, 0, 30, 10);
  const walled = (thick: number) =>
    asRegion(
      ring([
        [0, 0],
        [30, 0],
        [30, 10],
        [12 + thick, 10],
        [12 + thick, 25],
        [12, 25],
        [12, 10],
        [0, 10],
      ]),
    );
  const [wall, ...others] = thinParts([walled(2)], 4);
  expect(others).toEqual([]);
  const [x0, y0, x1, y1] = ringBox(wall.outer);
  expect(x0).toBeLessThan(12);
  expect(x1).toBeGreaterThan(14);
  expect(y1).toBeGreaterThan(25);
  expect(y0).toBeGreaterThan(ringBox(block)[3] - 1);
  expect(thinParts([walled(4.2)], 4)).toEqual([]);
});

test('a feather of 8° goes back to where it is as thick as asked', () => {
  const slope = Math.tan((8 * Math.PI) / 180);
  const feather = ring([
    [0, 0],
    [60, 0],
    [0, 60 * slope],
  ]);
  const [tip] = thinParts([asRegion(feather)], 4);
  expect(regionArea(tip)).toBeGreaterThan(10);
  const [from] = ringBox(tip.outer);
  // 4 mm thick at 4 / tan 8° from the tip; the round end reaches half of that further.
  const thickAt = 60 - 4 / slope;
  expect(from).toBeGreaterThan(thickAt - 3);
  expect(from).toBeLessThan(thickAt + 5);
});
