import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isFree } from '../../src/drawing/room.js';
import { wallGrid } from '../../src/drawing/wall-grid.js';

const mm = fc.double({ min: -60, max: 60, noNaN: true });
const point = fc.tuple(mm, mm);
const wall = fc.record({ from: point, to: point, room: fc.constantFrom(0, 0.8, 3) });

test('a grid finds a box free exactly when every wall, tried one by one, leaves it free', () => {
  const seen = { free: 0, taken: 0 };
  fc.assert(
    fc.property(
      fc.array(wall, { maxLength: 4 }),
      fc.array(wall, { maxLength: 4 }),
      point,
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      (first, later, [x, y], size) => {
        const box = [x, y, x + size, y + size] as const;
        const grid = wallGrid(first);
        grid.add(later);
        const free = isFree(box, [...first, ...later]);
        seen[free ? 'free' : 'taken']++;
        expect(grid.isFree(box)).toBe(free);
      },
    ),
    { seed: 1, numRuns: 1000 },
  );
  expect(Math.min(seen.free, seen.taken)).toBeGreaterThan(100);
});
