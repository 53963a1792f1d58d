/**
 * Timber that any plan needs, whatever its layouts. Outlines a gap apart do not overlap when each is
 * grown by half the gap, and then lie inside the clear face grown as much. So on every line along or
 * across a face, their chords add up to no more than the face's length there; and that stays true
 * when each chord, as a share of that length, is put through a dual feasible function f (one with
 * Σ f(u) ≤ 1 wherever Σ u ≤ 1; S. Fekete and J. Schepers, 2001). f(u) = u gives areas; others know
 * that of chords longer than half the face only one fits on a line. Summed over the lines, each
 * function bounds what can be sawn from so many blocks, and the fewest blocks that keep all these
 * bounds are found as an integer program.
 */
import { asRegion, offset, subtract } from '../geometry/clip.js';
import { circleRing, rectRing, ringArea } from '../geometry/ring.js';
import { type LinearSolver, type Program, type Row, solve } from '../linear/solver.js';
import { type ChordBand, chordArea, chordBands } from './chords.js';
import { unitOf } from './master.js';
import type { Block, NestPart } from './nest.js';
import type { Pile } from './pile.js';

export type BoundOrder = {
  readonly parts: readonly NestPart[];
  /** Blanks to be made, by part. */
  readonly wanted: readonly number[];
  /** Blanks of these that may be left out, in all. */
  readonly missing: number;
  readonly gapMm: number;
  /** Chords are those of outlines along the grain: where they may tilt, only areas bound. */
  readonly mayTilt: boolean;
  readonly piles: readonly Pile[];
  readonly fits: (part: number, pile: number) => boolean;
};

/** Corners of the grown outlines are chords inside the true arc, so areas come out too small, never too large. */
const ARC_MM = 0.002;

/** Volume of whole blocks that no plan goes below, mm³; 0 if the solver finds nothing better. */
export function leastTimberMm3(solver: LinearSolver, order: BoundOrder, nodes: number): number {
  const unit = unitOf(order.piles.map((p) => p.volumeMm3));
  const solved = solve(solver, boundProgram(order, unit), { nodes });
  return unit * Math.max(0, solved?.bound ?? 0);
}

/** Unknowns: blocks of each pile, then blanks of each part from each pile, then blanks left out. */
function boundProgram(order: BoundOrder, unitMm3: number): Program {
  const { parts, wanted, missing, gapMm, mayTilt, piles, fits } = order;
  const chords = parts.map((part) => chordsOf(part, gapMm));
  const sawn = piles.flatMap((_, pile) =>
    parts.flatMap((_, part) => (fits(part, pile) && wanted[part] > 0 ? [{ part, pile }] : [])),
  );
  const [firstSawn, firstOut] = [piles.length, piles.length + sawn.length];
  const made = parts.map((_, part): Row => {
    const from = sawn.flatMap((s, i): Term[] => (s.part === part ? [[firstSawn + i, 1]] : []));
    return { terms: [...from, [firstOut + part, 1]], least: wanted[part], most: Infinity };
  });
  const room = piles.flatMap(({ like }, pile) => {
    const from = sawn.flatMap((s, i) => (s.pile === pile ? [{ part: s.part, i }] : []));
    const shares = sharesOf(
      like,
      gapMm,
      from.map(({ part }) => chords[part]),
      mayTilt ? [] : FUNCTIONS,
    );
    return shares.map((share): Row => {
      const taken = from.map(({ i }, k): Term => [firstSawn + i, share[k]]);
      return { terms: [...taken, [pile, -1]], least: -Infinity, most: 0 };
    });
  });
  const out = parts.map((_, part): Term => [firstOut + part, 1]);
  return {
    unknowns: [
      ...piles.map((p) => ({ cost: p.volumeMm3 / unitMm3, most: p.count, whole: true })),
      ...sawn.map(({ part }) => ({ cost: 0, most: wanted[part], whole: false })),
      ...wanted.map((most) => ({ cost: 0, most, whole: false })),
    ],
    rows: [...made, ...room, { terms: out, least: -Infinity, most: missing }],
  };
}

type Term = readonly [number, number];

/** Of an outline grown by half the gap. */
export type Chords = {
  readonly along: readonly ChordBand[];
  readonly across: readonly ChordBand[];
};

export function chordsOf({ outline }: NestPart, gapMm: number): Chords {
  // Growing what is in one piece leaves it so.
  const [grown] = offset([asRegion(outline)], gapMm / 2, ARC_MM);
  return { along: chordBands(grown, 0), across: chordBands(grown, 1) };
}

/**
 * What one outline of each part takes of a face, as a share of what there is, under each function that
 * tells more than areas do. Areas are shares of what the knots leave.
 */
function sharesOf(
  block: Block,
  gapMm: number,
  chords: readonly Chords[],
  functions: readonly DualFeasible[],
): readonly number[][] {
  const length = block.lengthMm - 2 * block.marginMm + gapMm;
  const width = block.widthMm - 2 * block.marginMm + gapMm;
  const under = (f: DualFeasible, along: boolean): number[] =>
    chords.map((c) => {
      const [bands, line, lines] = along ? [c.along, length, width] : [c.across, width, length];
      return bands.reduce((sum, band) => sum + integral(band, line, f), 0) / lines;
    });
  const free = Math.max(LEAST_FREE_MM2, freeArea(block, gapMm));
  const areas = chords.map((c) => chordArea(c.along) / free);
  const others = functions.flatMap((f) => [under(f, true), under(f, false)]);
  return [areas, ...others.filter((shares) => shares.some((s, i) => s > areas[i]))];
}

/** A face all covered by knots counts as this much free: no number grows beyond bounds, mm². */
const LEAST_FREE_MM2 = 1;

/** Of the clear face grown by half the gap, less its knots, mm². */
function freeArea({ lengthMm, widthMm, marginMm, knots }: Block, gapMm: number): number {
  const edge = marginMm - gapMm / 2;
  const face = asRegion(rectRing(edge, edge, lengthMm - edge, widthMm - edge));
  const circles = knots.map((k) =>
    asRegion(circleRing([k.xMm, k.yMm], k.radiusMm, { segments: 64, circumscribed: false })),
  );
  const free = knots.length > 0 ? subtract([face], circles) : [face];
  return free.reduce(
    (sum, { outer, holes }) => sum + ringArea(outer) - holes.reduce((s, h) => s + ringArea(h), 0),
    0,
  );
}

/** Not decreasing on 0..1, and Σ f(u) ≤ 1 wherever Σ u ≤ 1. */
type DualFeasible = (u: number) => number;

/** Each share is taken so much too small, that rounding never lifts one over a step of a function. */
const LESS = 1e-9;

/** 1 above 1 − least, 0 below least. */
const step =
  (least: number): DualFeasible =>
  (u) =>
    u - LESS > 1 - least ? 1 : u - LESS < least ? 0 : u - LESS;

/** The k-th below (k + 1)u / k. */
const stairs =
  (k: number): DualFeasible =>
  (u) =>
    Math.floor((k + 1) * Math.max(0, u - LESS)) / k;

const FUNCTIONS: readonly DualFeasible[] = [
  ...[1 / 2, 1 / 3, 1 / 4, 1 / 6, 1 / 8].map(step),
  ...[1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 16].map(stairs),
];

/** Parts a band is cut into; in each, the lesser of its ends stands for it, so the sum is never too large. */
const CUTS = 8;

function integral({ widthMm, fromMm, toMm }: ChordBand, line: number, f: DualFeasible): number {
  const at = (i: number): number => f(Math.min(1, (fromMm + ((toMm - fromMm) * i) / CUTS) / line));
  let sum = 0;
  for (let i = 0; i < CUTS; i++) sum += Math.min(at(i), at(i + 1));
  return (sum * widthMm) / CUTS;
}
