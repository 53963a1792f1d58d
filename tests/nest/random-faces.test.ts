import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../src/geometry/random.js';
import { checkNest } from '../../src/nest/check.js';
import { planNest } from '../../src/nest/plan.js';
import { block, drawnOutline, part, RULES, SEARCH } from './outlines.js';

const SEED = 20240;

describe('random faces', () => {
  it('keeps margin, gap and knots on 100 random faces', () => {
    const draw = seededDraws(SEED);
    let outlines = 0;
    let pairs = 0;
    for (let k = 0; k < 100; k++) {
      const size = [170 + 180 * draw(), 60 + 60 * draw()] as const;
      const knots = Array.from({ length: Math.floor(4 * draw()) }, () => ({
        xMm: size[0] * draw(),
        yMm: size[1] * draw(),
        radiusMm: 2 + 10 * draw(),
      }));
      const blocks = [block('b', size, 9, { knots, marginMm: 5 * draw() })];
      const parts = Array.from({ length: k % 3 === 0 ? 2 : 1 }, (_, i) =>
        part(`p${i}`, drawnOutline(draw), 8),
      );
      const rules = {
        ...RULES,
        gapMm: k % 10 === 0 ? 0 : 5 * draw(),
        layers: 1,
        tries: 3,
        seed: k,
      };
      const nest = planNest(parts, blocks, rules, SEARCH);
      const check = checkNest(nest, parts, blocks, rules);
      expect(check.complaints).toEqual([]);
      const placed = nest.faces.map((f) => f.placements.length);
      expect(check.pairs).toBe(placed.reduce((sum, n) => sum + (n * (n - 1)) / 2, 0));
      outlines += placed.reduce((sum, n) => sum + n, 0);
      pairs += check.pairs;
    }
    // So that the loop is known to have measured something.
    expect(outlines).toBeGreaterThan(500);
    expect(pairs).toBeGreaterThan(1000);
  });
});
