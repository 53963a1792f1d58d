import { expect, it } from 'vitest';
import { faceCase } from '../../src/bench/drawn-face.js';
import { type Ring, ringArea, ringBox } from '../../src/geometry/ring.js';
import { cross, sub } from '../../src/geometry/vec.js';

/** Corners of a counter-clockwise ring that turn right: where it is hollow. */
const inwardCorners = (r: Ring): number =>
  r.filter((p, i) => {
    const [before, after] = [r[(i + r.length - 1) % r.length], r[(i + 1) % r.length]];
    return cross(sub(p, before), sub(after, p)) < 0;
  }).length;

it('draws faces of the stated kind, each from its seed and number alone', () => {
  const seen = { outlines: 0, hollow: 0, knots: 0, small: 0, parts: new Set<number>() };
  for (let index = 0; index < 400; index++) {
    const { parts, block, rules } = faceCase(3, index);
    expect(faceCase(3, index)).toEqual({ parts, block, rules });
    for (const { outline, orderedCount } of parts) {
      const [left, , right] = ringBox(outline);
      expect(right - left).toBeGreaterThanOrEqual(39.9);
      expect(right - left).toBeLessThanOrEqual(250.1);
      expect(ringArea(outline)).toBeGreaterThan(50);
      expect(orderedCount).toBeGreaterThanOrEqual(1);
      seen.outlines++;
      if (inwardCorners(outline) > 3) seen.hollow++;
    }
    expect(rules.gapMm).toBeGreaterThanOrEqual(0.3);
    expect(rules.gapMm).toBeLessThanOrEqual(6);
    expect(block.knots.length).toBeLessThanOrEqual(8);
    seen.knots += block.knots.length;
    seen.parts.add(parts.length);
    if (block.lengthMm < 500) seen.small++;
  }
  expect(faceCase(4, 0)).not.toEqual(faceCase(3, 0));
  expect([...seen.parts].sort()).toEqual([1, 2, 3, 4]);
  expect(seen.outlines).toBeGreaterThan(800);
  // Two in five hollow, one in three notched, some bent.
  expect(seen.hollow / seen.outlines).toBeGreaterThan(0.5);
  expect(seen.hollow / seen.outlines).toBeLessThan(0.95);
  expect(seen.knots).toBeGreaterThan(1000);
  expect(seen.small).toBeGreaterThan(200);
});
