/** Orders for one face, drawn by chance: outlines, a block with knots, a gap. */

import { seededDraws } from '../geometry/random.js';
import { ringArea } from '../geometry/ring.js';
import type { Block, Knot, NestPart, NestRules } from '../nest/nest.js';
import { type Draw, drawnOutline } from './drawn-outline.js';

/** What a nest is asked for: one block, so one face at most. */
export type FaceCase = {
  readonly parts: readonly NestPart[];
  readonly block: Block;
  readonly rules: NestRules;
};

const THICKNESS_MM = 20;
/** Layouts tried, as in a build. */
/** Layouts tried for a plan. */
const LAYOUTS = 40;
const TRIES = 24;
/** Odd, and far from a power of two: neighboring seeds do not share cases. */
const SEED_STEP = 1_000_003;

/** The case with this number; every one can be drawn by itself. */
export function faceCase(seed: number, index: number): FaceCase {
  const draw = seededDraws(seed * SEED_STEP + index);
  const kinds = 1 + Math.floor(4 * draw());
  const outlines = Array.from({ length: kinds }, () => drawnOutline(draw, [40, 250]));
  const [lengthMm, widthMm] =
    draw() < 0.7
      ? [200 + 300 * draw(), 70 + 80 * draw()]
      : [500 + 700 * draw(), 100 + 200 * draw()];
  const block: Block = {
    name: 'block',
    lengthMm: tenths(lengthMm),
    widthMm: tenths(widthMm),
    thicknessMm: THICKNESS_MM,
    marginMm: tenths(8 * draw()),
    count: 1,
    knots: drawnKnots(draw, lengthMm, widthMm),
    splits: [],
    poorZones: [],
  };
  // From a sparse face to more than it can hold.
  const fullness = 0.2 + draw();
  const parts = outlines.map((outline, i): NestPart => {
    const share = (fullness * lengthMm * widthMm) / kinds / ringArea(outline);
    return {
      id: String.fromCharCode(97 + i),
      outline,
      thicknessMm: THICKNESS_MM,
      orderedCount: Math.max(1, Math.round(share)),
    };
  });
  const rules: NestRules = {
    gapMm: tenths(0.3 + 5.7 * draw()),
    layers: 1,
    tapeThicknessMm: 0,
    largestHeightMm: 100,
    tries: TRIES,
    clearNoseRatio: 0,
    largestTiltDeg: 0,
    layouts: LAYOUTS,
    seed: index,
  };
  return { parts, block, rules };
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;

const drawnKnots = (draw: Draw, lengthMm: number, widthMm: number): Knot[] =>
  Array.from({ length: Math.floor(9 * draw()) }, () => ({
    xMm: tenths(lengthMm * draw()),
    yMm: tenths(widthMm * draw()),
    radiusMm: tenths(1 + 11 * draw() ** 2),
  }));
