import { describe, expect, it } from 'vitest';
import { checkCutPlan } from '../../src/cutplan/check.js';
import { lineLength } from '../../src/cutplan/cutplan.js';
import { planCuts } from '../../src/cutplan/plan.js';
import { pathLength } from '../../src/geometry/arcpath.js';
import { seededDraws } from '../../src/geometry/random.js';
import { planNest } from '../../src/nest/plan.js';
import { block, drawnOutline, part, RULES, SEARCH } from '../nest/outlines.js';
import { box, disc, face, fromRing, LASER, MATERIALS, partFrom } from './faces.js';

const { blades } = MATERIALS;
const { kerfMm } = LASER;

describe('a tool that follows', () => {
  it('two boards a kerf apart: their shared side is cut once', () => {
    const parts = new Map([['b', partFrom(box(60, 20), kerfMm / 2)]]);
    const f = face([200, 60], kerfMm, parts, [
      { part: 'b', at: [10, 5] },
      { part: 'b', at: [10, 25 + kerfMm] },
    ]);
    const { plan } = planCuts(f, parts, LASER, blades);
    expect(checkCutPlan(f, plan, LASER)).toEqual([]);
    expect(plan.sharedLines).toHaveLength(1);
    const [shared] = plan.sharedLines;
    expect(plan.cutOrder.indexOf(shared.cutWith)).toBeLessThan(
      plan.cutOrder.indexOf(shared.placement),
    );
    // The contours' rounded corners leave the line within 0.02 mm after √(2·0.2·0.02) = 0.09 mm.
    expect(Math.abs(lineLength(shared.path) - 60)).toBeLessThan(0.4);
    for (const [, y] of shared.path) expect(y).toBeCloseTo(25 + kerfMm / 2, 1);
    const contour = pathLength((parts.get('b') as ReturnType<typeof partFrom>).path);
    const leads = plan.entryPaths.map(lineLength).reduce((a, b) => a + b, 0);
    expect(plan.sawnMm).toBeCloseTo(2 * contour + leads - lineLength(shared.path), 9);
  });

  it('discs that touch by a point share nothing', () => {
    const parts = new Map([['d', partFrom(disc(10), kerfMm / 2)]]);
    const f = face([100, 60], kerfMm, parts, [
      { part: 'd', at: [20, 30] },
      { part: 'd', at: [40 + kerfMm, 30] },
    ]);
    const { plan } = planCuts(f, parts, LASER, blades);
    expect(checkCutPlan(f, plan, LASER)).toEqual([]);
    expect(plan.sharedLines).toEqual([]);
  });

  it('leads in along the tangent, 2 mm or the bit’s width, clear of the wood', () => {
    for (const width of [0.4, 6]) {
      const parts = new Map([['d', partFrom(disc(10), width / 2)]]);
      const saw = { ...LASER, kerfMm: width };
      const f = face([100, 80], width, parts, [{ part: 'd', at: [40, 40] }]);
      const { plan } = planCuts(f, parts, saw, blades);
      expect(checkCutPlan(f, plan, saw)).toEqual([]);
      const [[from, at]] = plan.entryPaths;
      expect(lineLength([from, at])).toBeCloseTo(Math.max(2, width), 9);
      const out = [at[0] - 40, at[1] - 40];
      expect(Math.hypot(...out)).toBeCloseTo(10 + width / 2, 6);
      expect((at[0] - from[0]) * out[0] + (at[1] - from[1]) * out[1]).toBeCloseTo(0, 6);
    }
  });

  it('boards turned together, by any angle, share the same line, and the contours stay half a kerf off', () => {
    const parts = new Map([['b', partFrom(box(60, 20), kerfMm / 2)]]);
    for (const turnDeg of [0, 7, 33, 90, 187]) {
      const beside = 20 + kerfMm;
      const a = (turnDeg * Math.PI) / 180;
      const f = face([200, 200], kerfMm, parts, [
        { part: 'b', at: [100, 100], turnDeg },
        { part: 'b', at: [100 - beside * Math.sin(a), 100 + beside * Math.cos(a)], turnDeg },
      ]);
      const { plan } = planCuts(f, parts, LASER, blades);
      expect(checkCutPlan(f, plan, LASER)).toEqual([]);
      expect(plan.sharedLines).toHaveLength(1);
      expect(Math.abs(lineLength(plan.sharedLines[0].path) - 60)).toBeLessThan(0.4);
    }
  });

  it('openings count as cut, and travel runs from the corner of the block', () => {
    const openings = [{ center: [0, 0] as const, radius: 3 }];
    const part = { ...partFrom(disc(10), kerfMm / 2), openings };
    const parts = new Map([['d', part]]);
    const f = face([100, 60], 2, parts, [{ part: 'd', at: [40, 30] }]);
    const { plan } = planCuts(f, parts, LASER, blades);
    const contour = 2 * Math.PI * (10 + kerfMm / 2);
    expect(plan.sawnMm).toBeCloseTo(contour + 2 * Math.PI * 3 + 2, 6);
    expect(plan.travelMm).toBeCloseTo(Math.hypot(...plan.entryPaths[0][0]), 9);
  });

  it('random faces: every contour once, lead-ins clear, the round no longer than row by row', () => {
    const draw = seededDraws(314);
    let outlines = 0;
    for (let k = 0; k < 12; k++) {
      const shape = part('p', drawnOutline(draw), 30);
      const gapMm = k % 2 === 0 ? kerfMm : 2;
      const blocks = [block('b', [200 + 200 * draw(), 80 + 60 * draw()], 1)];
      const rules = {
        ...RULES,
        gapMm,
        largestTiltDeg: k % 3,
        layers: 1,
        tries: 2,
        layouts: 0,
        seed: k,
      };
      const nest = planNest([shape], blocks, rules, SEARCH);
      const parts = new Map([['p', fromRing(shape.outline, kerfMm / 2)]]);
      for (const f of nest.faces) {
        const { plan } = planCuts(f, parts, LASER, blades);
        expect(checkCutPlan(f, plan, LASER)).toEqual([]);
        outlines += f.placements.length;
        const starts = plan.entryPaths.map((p) => p[0]);
        const rowByRow = starts.reduce(
          (sum, [x, y], i) =>
            sum +
            (i === 0 ? Math.hypot(x, y) : Math.hypot(x - starts[i - 1][0], y - starts[i - 1][1])),
          0,
        );
        // Placements come from left to right; a lead-in may lie 2 mm off the contour it belongs to.
        expect(plan.travelMm).toBeLessThan(rowByRow + 2 * 2 * f.placements.length);
      }
    }
    expect(outlines).toBeGreaterThan(60);
  });
});
