import { describe, expect, it } from 'vitest';
import { loadSolver, type Program, solve } from '../../src/linear/solver.js';

const solver = await loadSolver();
const free = (cost: number, whole = false) => ({ cost, most: Infinity, whole });

describe('the solver', () => {
  it('finds the corner of two lines, and what a row is worth', () => {
    // Least 2x + 3y with x + y ≥ 3.5 and x ≤ 2: x = 2, y = 1.5. One more asked for costs 3; one more x saves 1.
    const program: Program = {
      unknowns: [free(2), free(3)],
      rows: [
        {
          terms: [
            [0, 1],
            [1, 1],
          ],
          least: 3.5,
          most: Infinity,
        },
        { terms: [[0, 1]], least: -Infinity, most: 2 },
      ],
    };
    const solved = solve(solver, program, { nodes: 0 });
    expect(solved?.values).toEqual([2, 1.5]);
    expect(solved?.cost).toBeCloseTo(8.5, 12);
    expect(solved?.duals[0]).toBeCloseTo(3, 12);
    expect(solved?.duals[1]).toBeCloseTo(-1, 12);
  });

  it('gives whole numbers whole, and the bound that proves them', () => {
    // Least x + y with 3x + 5y ≥ 22, whole: relaxed 22/5 = 4.4; whole 5.
    const program: Program = {
      unknowns: [free(1, true), free(1, true)],
      rows: [
        {
          terms: [
            [0, 3],
            [1, 5],
          ],
          least: 22,
          most: Infinity,
        },
      ],
    };
    const solved = solve(solver, program, { nodes: 100 });
    expect(solved?.values.every(Number.isInteger)).toBe(true);
    expect(solved?.cost).toBe(5);
    expect(solved?.bound).toBe(5);
    expect(solved?.proved).toBe(true);
  });

  it('says that there is nothing', () => {
    const rows = [{ terms: [[0, 1] as const], least: 3, most: Infinity }];
    const unknowns = [{ cost: 1, most: 2, whole: true }];
    expect(solve(solver, { unknowns, rows }, { nodes: 100 })).toBeNull();
  });

  it('gives the same answer every time', () => {
    const counts = [7, 11, 13, 17, 19, 23];
    const program: Program = {
      unknowns: counts.map((_, i) => ({ cost: 5 + (i % 3), most: 9, whole: true })),
      rows: [{ terms: counts.map((n, i) => [i, n] as const), least: 211, most: Infinity }],
    };
    const [a, b] = [0, 1].map(() => solve(solver, program, { nodes: 100 }));
    expect(a).toEqual(b);
  });
});
