/** Outlines and orders the nest is tried on: invented, lure-like. */
import { type Ring, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';
import { loadSolver } from '../../src/linear/solver.js';
import type { Block, Flaws, NestPart, NestRules } from '../../src/nest/nest.js';
import type { Search } from '../../src/nest/search.js';

/**
 * Full belly, thin tail: y = ±0.4·ξ^½(1−ξ)^¾, 0 ≤ ξ ≤ 1 (shared/references.md §10), scaled to a
 * length and a height; its middle line may be bent upward by `bendMm`.
 */
export function lure(lengthMm: number, heightMm: number, bendMm = 0, points = 120): Ring {
  const sides = Array.from({ length: points + 1 }, (_, i) => {
    const share = (1 - Math.cos((Math.PI * i) / points)) / 2;
    // 0.172466 is the half-breadth of the formula at its widest, ξ = 0.4.
    const half = ((heightMm / 2) * 0.4 * share ** 0.5 * (1 - share) ** 0.75) / 0.172466;
    return { x: lengthMm * share, half, middle: bendMm * Math.sin(Math.PI * share) };
  });
  return ring([
    ...sides.map((s): Point2 => [s.x, s.middle - s.half]),
    ...sides
      .slice(1, -1)
      .reverse()
      .map((s): Point2 => [s.x, s.middle + s.half]),
  ]);
}

/** A lure-like outline drawn by chance: 50 to 160 mm long, 16 to 40 mm high, some with a hollow belly. */
export function drawnOutline(draw: () => number): Ring {
  const points = 60;
  const [lengthMm, heightMm] = [50 + 110 * draw(), 16 + 24 * draw()];
  const [nose, tail] = [0.35 + 0.5 * draw(), 0.5 + 0.5 * draw()];
  const bend = 8 * (draw() - 0.3);
  const hollow = draw() < 0.4 ? 3 * draw() : 0;
  const widest = nose / (nose + tail);
  const full = widest ** nose * (1 - widest) ** tail;
  const at = (i: number) => {
    const share = (1 - Math.cos((Math.PI * i) / points)) / 2;
    const half = ((heightMm / 2) * share ** nose * (1 - share) ** tail) / full;
    const dent = hollow * Math.sin(Math.PI * share) ** 4 * Math.min(1, half / 6);
    return { x: lengthMm * share, half, dent, middle: bend * Math.sin(Math.PI * share) };
  };
  const sides = Array.from({ length: points + 1 }, (_, i) => at(i));
  return ring([
    ...sides.map((s): Point2 => [s.x, s.middle - s.half + s.dent]),
    ...sides
      .slice(1, -1)
      .reverse()
      .map((s): Point2 => [s.x, s.middle + s.half]),
  ]);
}

export const part = (
  id: string,
  outline: Ring,
  orderedCount: number,
  thicknessMm = 20,
): NestPart => ({ id, outline, thicknessMm, orderedCount });

export const block = (
  name: string,
  [lengthMm, widthMm]: readonly [number, number],
  count: number,
  more: Partial<Flaws> & { readonly thicknessMm?: number; readonly marginMm?: number } = {},
): Block => ({
  name,
  lengthMm,
  widthMm,
  count,
  thicknessMm: 20,
  marginMm: 4,
  knots: [],
  splits: [],
  poorZones: [],
  ...more,
});

export const RULES: NestRules = {
  gapMm: 3,
  clearNoseRatio: 0.35,
  largestTiltDeg: 0,
  layers: 2,
  tapeThicknessMm: 0.2,
  largestHeightMm: 90,
  tries: 4,
  seed: 1,
  layouts: 20,
};

/** The started solver, and nobody to ask or to tell. */
export const SEARCH: Search = { solver: await loadSolver() };
