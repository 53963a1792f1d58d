import { describe, expect, it } from 'vitest';
import { asRegion, intersect } from '../../src/geometry/clip.js';
import { seededDraws } from '../../src/geometry/random.js';
import {
  insideRing,
  movedRing,
  rectRing,
  ring,
  ringArea,
  signedArea,
} from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { bandAround, bandPoints, heightAt, rectBand } from '../../src/nest/band.js';
import { bandSum, turnedBand } from '../../src/nest/bandsum.js';
import { crossings, isInside } from '../../src/nest/contact.js';
import { drawnOutline, lure } from './outlines.js';

const area = (points: readonly Point2[]): number => signedArea(points);

describe('band', () => {
  it('is the polygon itself when nothing hangs over, upright ends included', () => {
    const square = rectRing(0, 0, 3, 2);
    expect(area(bandPoints(bandAround(square)))).toBe(6);
    const outline = lure(120, 30, 4);
    // The same points summed in another order: rounding of some 3600 mm².
    expect(area(bandPoints(bandAround(outline)))).toBeCloseTo(ringArea(outline), 9);
  });

  it('fills what hangs over: a fork open aft becomes its box', () => {
    const fork = ring([
      [0, 0],
      [10, 0],
      [10, 2],
      [4, 5],
      [10, 8],
      [10, 10],
      [0, 10],
    ]);
    expect(area(bandPoints(bandAround(fork)))).toBeCloseTo(100, 9);
  });

  it('keeps a hollow open upward, its step on the outer side', () => {
    const notched = ring([
      [0, 0],
      [10, 0],
      [10, 6],
      [7, 6],
      [7, 2],
      [3, 2],
      [3, 6],
      [0, 6],
    ]);
    const band = bandAround(notched);
    // Each upright step leans 1e-4 into the hollow: 2 · ½ · 1e-4 · 4 more than 60 − 16.
    expect(area(bandPoints(band))).toBeCloseTo(44.0004, 9);
    expect(heightAt(band.high, 5)).toBe(2);
    expect(heightAt(band.high, 3)).toBe(6);
    expect(heightAt(band.high, 7)).toBe(6);
  });

  it('tells inside from touching', () => {
    const at = { band: rectBand(0, 0, 4, 2), dx: 10, dy: 5 };
    expect(isInside(at, 12, 6)).toBe(true);
    for (const [x, y] of [
      [10, 6],
      [14, 6],
      [12, 5],
      [12, 7],
      [10, 5],
      [9, 6],
    ]) {
      expect(isInside(at, x, y)).toBe(false);
    }
  });

  it('agrees with the even-odd rule at points level with corners', () => {
    const draw = seededDraws(4);
    let compared = 0;
    for (let k = 0; k < 50; k++) {
      const outline = drawnOutline(draw);
      const band = { band: bandAround(outline), dx: 0, dy: 0 };
      for (const [x, y] of outline) {
        for (const p of [
          [x + 7 * draw(), y],
          [x, y + 5 * draw()],
        ] as Point2[]) {
          const { low, high, minX, maxX } = band.band;
          const within = p[0] > minX && p[0] < maxX;
          const near = within
            ? Math.min(Math.abs(heightAt(low, p[0]) - p[1]), Math.abs(heightAt(high, p[0]) - p[1]))
            : Math.min(Math.abs(p[0] - minX), Math.abs(p[0] - maxX));
          if (near < 1e-6) continue; // on the edge either answer is right
          expect(isInside(band, ...p)).toBe(insideRing(p, outline));
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(5000);
  });

  it('finds the two crossings of two shifted squares', () => {
    const square = rectBand(0, 0, 2, 2);
    const found: string[] = [];
    crossings({ band: square, dx: 0, dy: 0 }, { band: square, dx: 1, dy: 1 }, (x, y) =>
      found.push(`${x} ${y}`),
    );
    expect(new Set(found)).toEqual(new Set(['1 2', '2 1']));
  });
});

describe('sum of bands', () => {
  it('of two boxes is the box of both sizes', () => {
    const sum = bandSum(rectBand(0, 0, 3, 2), rectBand(-1, -1, 4, 0));
    expect([sum.minX, sum.minY, sum.maxX, sum.maxY]).toEqual([-1, -1, 7, 2]);
    expect(area(bandPoints(sum))).toBe(24);
  });

  it('of a convex outline with itself has four times its area', () => {
    const outline = lure(120, 30);
    const band = bandAround(outline);
    // Exact but for rounding of some 10⁴ mm².
    expect(area(bandPoints(bandSum(band, band)))).toBeCloseTo(4 * ringArea(outline), 7);
  });

  it('is where two outlines overlap, told by clipping them (second opinion)', () => {
    const draw = seededDraws(9);
    let asked = 0;
    for (let k = 0; k < 5; k++) {
      const [a, b] = [drawnOutline(draw), drawnOutline(draw)];
      const sum = bandSum(bandAround(a), turnedBand(bandAround(b)));
      for (let i = 1; i < 40; i++) {
        const x = sum.minX + ((sum.maxX - sum.minX) * i) / 40;
        const overlapsAt = (y: number): boolean =>
          intersect([asRegion(a)], [asRegion(movedRing({ turnDeg: 0, move: [x, y] }, b))]).length >
          0;
        const [low, high] = [heightAt(sum.low, x), heightAt(sum.high, x)];
        // Outside by rounding only: never an overlap.
        expect(overlapsAt(low - 1e-4)).toBe(false);
        expect(overlapsAt(high + 1e-4)).toBe(false);
        // Hollows are followed to 0.05 mm for each outline and 0.02 mm for the sum, upright to the
        // edge; the edges here are no steeper than 4 : 1.
        expect(overlapsAt(low + 0.5)).toBe(true);
        expect(overlapsAt(high - 0.5)).toBe(true);
        asked++;
      }
    }
    expect(asked).toBe(195);
  });
});
