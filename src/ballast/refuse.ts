/** What the wood says to a set of holes. */

import { pointBeyondMm } from '../blank/blank.js';
import { holeProblems } from '../blank/hole-rules.js';
import { hangerProblems } from '../blank/rules.js';
import { floorOf } from '../mass/plug.js';
import type { ProblemCode } from '../messages.js';
import { Fault, type Problem } from '../problem.js';
import { bellyIn, type Hole, plugIn, type Workpiece, withBelly } from './workpiece.js';

/** Why a set of holes is not offered. */
export type Why =
  /** The tool for it is not there: a metal that is not poured, or is lighter than the wood; no bit for a weight, no weight of a metal. */
  | 'not-poured'
  | 'metal-too-light'
  | 'no-bit'
  | 'no-weight'
  /** The moment asks for a hole beyond the nose or the tail. */
  | 'station-outside'
  /** The wood does not allow it. */
  | 'outside'
  | 'too-wide'
  | 'through-back'
  | 'sanded-into'
  | 'meets-slot'
  | 'meets-hanger'
  | 'holes-meet'
  /** The water does not. */
  | 'gm-too-low'
  | 'rolls-over'
  | 'misses-wish';

export type Refusal = {
  readonly why: Why;
  readonly facts: Readonly<Record<string, string | number>>;
  /** Absent where it did not come to holes. */
  readonly holes: readonly Hole[];
  /** How far it is from being allowed, in the unit of its facts: the least is the example told. */
  readonly short: number;
};

/** Least metal over the floor of a hole at the worst place of the finished rim, and least wood or glue under a weight, mm: common practice, no source. */
export const LEAST_METAL_MM = 1;

/** The first thing that speaks against the holes, or null. */
export function woodRefusal(piece: Workpiece, holes: readonly Hole[]): Refusal | null {
  const { pattern, body, blank } = piece.design;
  const bored = holes.map((hole) => withBelly(piece, hole));
  // A hole that goes nowhere has no side view, which the rules of the wood look at.
  for (const hole of holes) {
    const refusal = hole.depthMm <= 0 ? coverRefusal(piece, hole) : null;
    if (refusal) return { ...refusal, holes };
  }
  const found = [
    ...holeProblems(bored, blank.slot, body.shape),
    ...hangerProblems({ ...pattern, ballast: holes }, null),
  ][0];
  if (found) return { ...fromProblem(found), holes };
  for (const hole of holes) {
    const refusal = coverRefusal(piece, hole);
    if (refusal) return { ...refusal, holes };
  }
  return null;
}

/** Wood along the axis between the nearest of the holes and the back, mm; the rim's shoulder at the sides included. */
export const woodLeftMm = (piece: Workpiece, holes: readonly Hole[]): number =>
  Math.min(
    ...holes.map((hole) => {
      const floorMm = floorOf(withBelly(piece, hole));
      const { shoulderMm, backMm } = bellyIn(piece, hole);
      return Math.min(shoulderMm - floorMm, backMm - pointBeyondMm(hole) - floorMm);
    }),
  );

function coverRefusal(piece: Workpiece, hole: Hole): Omit<Refusal, 'holes'> | null {
  const { highestMm } = bellyIn(piece, hole);
  const leftMm =
    hole.weight === null
      ? floorOf(withBelly(piece, hole)) - highestMm
      : plugIn(piece, hole).coverMm;
  if (leftMm >= LEAST_METAL_MM) return null;
  const { stationMm, depthMm } = hole;
  return {
    why: 'sanded-into',
    facts: { stationMm, depthMm, leftMm, limitMm: LEAST_METAL_MM },
    short: LEAST_METAL_MM - leftMm,
  };
}

const WHY: Partial<Readonly<Record<ProblemCode, Why>>> = {
  'hole-outside': 'outside',
  'hole-too-wide': 'too-wide',
  'hole-through-back': 'through-back',
  'hole-sanded-away': 'sanded-into',
  'hole-floor-outside': 'sanded-into',
  'hole-meets-slot': 'meets-slot',
  'hanger-meets': 'meets-hanger',
  'holes-meet': 'holes-meet',
};

function fromProblem({ code, facts }: Problem): Omit<Refusal, 'holes'> {
  const number = (name: string): number => Number(facts[name] ?? 0);
  const why = WHY[code];
  if (why === undefined) throw new Fault(`a hole refused by ${code}`);
  const short: Partial<Record<Why, number>> = {
    outside: Math.max(
      number('leastMm') - number('stationMm'),
      number('stationMm') - number('mostMm'),
    ),
    'too-wide': number('diameterMm') - number('limitMm'),
    'through-back': number('leastMm') - number('woodMm'),
    'sanded-into': number('limitMm') - number('depthMm'),
  };
  return { why, facts, short: short[why] ?? number('limitMm') - number('betweenMm') };
}

/** All refusals of one kind: how many sets of holes were tried, and the one nearest to being allowed. */
export type Refused = {
  readonly why: Why;
  readonly tried: number;
  readonly holes: readonly Hole[];
  readonly facts: Refusal['facts'];
};

/**
 * One entry a reason, the most frequent first; of equals the first found. What needed no holes to be
 * refused (a bit too wide for the body) counts once, however many trims it was looked at for.
 */
export function gathered(refusals: readonly Refusal[]): Refused[] {
  const kinds = new Map<Why, { tried: number; nearest: Refusal }>();
  const told = new Set<string>();
  for (const refusal of refusals) {
    const key = refusal.holes.length > 0 ? '' : `${refusal.why} ${JSON.stringify(refusal.facts)}`;
    if (told.has(key)) continue;
    if (key !== '') told.add(key);
    const known = kinds.get(refusal.why);
    if (!known) kinds.set(refusal.why, { tried: 1, nearest: refusal });
    else {
      known.tried++;
      if (refusal.short < known.nearest.short) known.nearest = refusal;
    }
  }
  return [...kinds]
    .map(([why, { tried, nearest }]) => ({
      why,
      tried,
      holes: nearest.holes,
      facts: nearest.facts,
    }))
    .sort((a, b) => b.tried - a.tried);
}
