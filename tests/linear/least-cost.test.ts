import { expect, test } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { leastCost } from '../../src/linear/least-cost.js';
import { loadSolver, solve } from '../../src/linear/solver.js';

test('two supports carry a load between them by the rule of the lever', () => {
  // Supports at 0 and 10, a load of 1 at 3: forces 0.7 and 0.3.
  const columns = [
    [1, 0],
    [1, 10],
  ];
  expect([...(leastCost(columns, [1, 1], [1, 3])?.amounts ?? [])]).toEqual([
    expect.closeTo(0.7, 12),
    expect.closeTo(0.3, 12),
  ]);
  // Beyond them it would have to pull.
  expect(leastCost(columns, [1, 1], [1, 12])).toBeNull();
});

test('the cheaper of two ways', () => {
  const found = leastCost([[1], [2]], [1, 5], [4]);
  expect(found?.cost).toBeCloseTo(4, 12);
  expect(leastCost([[1], [2]], [1, 1], [4])?.cost).toBeCloseTo(2, 12);
});

test('300 random programs of six equations as highs solves them', async () => {
  const solver = await loadSolver();
  const draw = seededDraws(11);
  const answers = { solved: 0, none: 0 };
  for (let i = 0; i < 300; i++) {
    const n = 4 + Math.floor(30 * draw());
    const columns = Array.from({ length: n }, () =>
      Array.from({ length: 6 }, () => Math.round(20 * draw() - 10) / 10),
    );
    const costs = columns.map(() => draw());
    const target = Array.from({ length: 6 }, () => Math.round(20 * draw() - 10) / 10);
    const ours = leastCost(columns, costs, target);
    const theirs = solve(
      solver,
      {
        unknowns: costs.map((cost) => ({ cost, most: Infinity, whole: false })),
        rows: target.map((t, r) => ({
          terms: columns.map((c, j) => [j, c[r]] as const),
          least: t,
          most: t,
        })),
      },
      { nodes: 1 },
    );
    expect(ours === null, `program ${i}`).toBe(theirs === null);
    if (!ours || !theirs) answers.none++;
    else {
      answers.solved++;
      expect(Math.abs(ours.cost - theirs.cost)).toBeLessThan(1e-5 * (1 + ours.cost));
    }
  }
  expect(answers.solved).toBeGreaterThan(50);
  expect(answers.none).toBeGreaterThan(50);
});
