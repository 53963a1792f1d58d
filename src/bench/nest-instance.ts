/**
 * Open nesting instances: a file → a packing problem, a layout → the result file. The format is that of
 * the instances published with J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv:2509.13329 (2025).
 */
import { z } from 'zod';
import { movedRing, type Ring, ring, ringArea, ringBox, selfCrossing } from '../geometry/ring.js';
import {
  add,
  type Box,
  cosSinDeg,
  cross,
  type Point2,
  quarterLeft,
  sub,
  times,
  unit,
} from '../geometry/vec.js';
import { latticeStrip } from '../lattice/strip.js';
import type { LinearSolver } from '../linear/solver.js';
import { depthOfOverlap, outside } from '../pack/check.js';
import type { Places } from '../pack/crowd.js';
import { settled } from '../pack/settle.js';
import type { StripLayout, StripProblem } from '../pack/strip.js';
import { type Outline, type Table, tableOf } from '../pack/table.js';
import { Fault } from '../problem.js';

const positive = z.number().positive();
const instanceFile = z.object({
  name: z.string().optional(),
  strip_height: positive,
  items: z
    .array(
      z.object({
        demand: z.int().min(1).max(100_000),
        allowed_orientations: z.array(z.number()).min(1).optional(),
        shape: z.object({ data: z.array(z.tuple([z.number(), z.number()])).min(3) }),
      }),
    )
    .min(1),
});

/** JSON text as a value of that form. @throws with a line for the reader: the first thing wrong */
function parsedAs<T>(form: z.ZodType<T>, text: string): T {
  const parsed = form.safeParse(JSON.parse(text));
  if (parsed.success) return parsed.data;
  const [{ path, message }] = parsed.error.issues;
  throw new Error(`${path.length === 0 ? 'the file' : path.join('.')}: ${message}`);
}

const recordsFile = z.record(z.string(), positive);

/** Reads a table of the best densities published, percent by name. @throws with a line for the reader */
export const readRecords = (text: string): Readonly<Record<string, number>> =>
  parsedAs(recordsFile, text);

export type Instance = {
  readonly name: string;
  readonly height: number;
  /** Rings as in the file. */
  readonly rings: readonly Ring[];
  readonly turnsDeg: readonly (readonly number[])[];
  /** Ring of each item, items of one ring together. */
  readonly items: readonly number[];
  readonly area: number;
};

/** Reads an instance. @throws with a line for the reader if it is none, or an item fits in no turn. */
export function readInstance(name: string, text: string): Instance {
  const file = parsedAs(instanceFile, text);
  const rings = file.items.map((item, i) => {
    try {
      return ring(item.shape.data);
    } catch (error) {
      throw error instanceof Fault ? new Error(`item ${i}: ${error.message}`) : error;
    }
  });
  const turnsDeg = file.items.map((item) => [...new Set(item.allowed_orientations ?? [0])]);
  rings.forEach((r, i) => {
    const heights = turnsDeg[i].map((turnDeg) => heightOf(movedRing({ turnDeg, move: [0, 0] }, r)));
    const least = Math.min(...heights);
    if (least > file.strip_height * (1 + 1e-9))
      throw new Error(`item ${i} is ${least} high; the strip is ${file.strip_height} high`);
  });
  const items = file.items.flatMap(({ demand }, i) => Array<number>(demand).fill(i));
  const area = items.reduce((sum, i) => sum + ringArea(rings[i]), 0);
  return { name, height: file.strip_height, rings, turnsDeg, items, area };
}

const heightOf = (r: Ring): number => {
  const [, bottom, , top] = ringBox(r);
  return top - bottom;
};

/** Middle of a ring's box: the search moves rings about it, so that numbers stay small. */
const middleOf = (r: Ring): Point2 => {
  const [left, bottom, right, top] = ringBox(r);
  return [(left + right) / 2, (bottom + top) / 2];
};

/** A ring about the middle of its box. */
const centered = (r: Ring): Ring => {
  const [x, y] = middleOf(r);
  return movedRing({ turnDeg: 0, move: [-x, -y] }, r);
};

/**
 * Outlines are searched a little too small, as a share of the strip's height: so a groove just as wide
 * as what fits into it stays a place and does not vanish from the no-fit polygon. Settling makes good
 * for it.
 */
const INSET_SHARE = 1e-6;

/** A ring with every edge moved inward, so little that no edge is lost; as it is where it is too thin. */
function inset(r: Ring, by: number): Ring {
  const lines = r.map((p, i) => {
    const q = r[(i + 1) % r.length];
    const along = unit(sub(q, p));
    return { from: add(p, times(quarterLeft(along), by)), along };
  });
  const moved = lines.map((b, i) => {
    const a = lines[(i + lines.length - 1) % lines.length];
    const sine = cross(a.along, b.along);
    if (Math.abs(sine) < 1e-9) return b.from;
    return add(a.from, times(a.along, cross(sub(b.from, a.from), b.along) / sine));
  });
  return selfCrossing(moved) ? r : ring(moved);
}

/** The packing problem of an instance, its outlines inset by a share of the strip's height. */
export function problemOf(
  { rings, turnsDeg, items, height }: Instance,
  insetShare = INSET_SHARE,
): StripProblem {
  const outlines = rings.map(centered).map((r, i) => ({
    ring: r,
    grown: inset(r, insetShare * height),
    turnsDeg: turnsDeg[i],
  }));
  const table = tableOf(outlines);
  const start = rowsOf(outlines, table, items.length, height);
  return { table, areas: rings.map(ringArea), items, height, start };
}

/** Copies of one outline in rows, to start from; null for several outlines or other turns. */
function rowsOf(
  outlines: readonly Outline[],
  table: Table,
  count: number,
  height: number,
): Places | null {
  const [one] = outlines;
  if (outlines.length > 1 || ![0, 180].every((deg) => one.turnsDeg.includes(deg))) return null;
  const rows = latticeStrip({ outline: one.ring, grown: one.grown }, count, height);
  if (!rows) return null;
  const turned = [0, 180].map((deg) => table.turned.findIndex((t) => t.turnDeg === deg));
  return {
    turned: Int32Array.from(rows.copies, (c) => turned[c.turnDeg === 0 ? 0 : 1]),
    x: Float64Array.from(rows.copies, (c) => c.x),
    y: Float64Array.from(rows.copies, (c) => c.y),
  };
}

/** A layout of the problem, settled with the true outlines. */
export function settledLayout(
  solver: LinearSolver,
  { rings }: Instance,
  problem: StripProblem,
  layout: StripLayout,
): StripLayout {
  return settled(solver, problem, rings.map(centered), layout);
}

export type Result = {
  readonly name: string;
  readonly stripHeight: number;
  readonly length: number;
  readonly placements: readonly {
    readonly item: number;
    readonly turnDeg: number;
    readonly x: number;
    readonly y: number;
  }[];
};

/** A layout as a result: each item's ring turned about its own origin, then moved. */
export function resultOf(instance: Instance, problem: StripProblem, layout: StripLayout): Result {
  const { name, height, rings, items } = instance;
  const placements = items.map((item, i) => {
    const { turnDeg } = problem.table.turned[layout.places.turned[i]];
    const [x, y] = middleOf(rings[item]);
    const [cos, sin] = cosSinDeg(turnDeg);
    return {
      item,
      turnDeg,
      x: layout.places.x[i] - cos * x + sin * y,
      y: layout.places.y[i] - sin * x - cos * y,
    };
  });
  return { name, stripHeight: height, length: layout.length, placements };
}

/** Depths below this share of the strip's height are rounding. */
const ROUNDING = 1e-7;

/** What is wrong with a result, judged by a method of its own; null if nothing. */
export function flawOf(
  { rings, items, height, turnsDeg }: Instance,
  result: Result,
): string | null {
  const { length, placements } = result;
  const laid = placements.map(({ item, turnDeg, x, y }) =>
    movedRing({ turnDeg, move: [x, y] }, rings[item]),
  );
  const boxes = laid.map(ringBox);
  const order = laid.map((_, i) => i).sort((a, b) => boxes[a][0] - boxes[b][0]);
  const least = ROUNDING * height;
  if (placements.map((p) => p.item).join() !== items.join()) return 'not the items ordered';
  for (const [a, { item, turnDeg }] of placements.entries()) {
    if (!turnsDeg[item].includes(turnDeg)) return `item ${a} turned by ${turnDeg}`;
    const out = outside(laid[a], [0, 0, length, height]);
    if (!(out <= least)) return `item ${a} reaches ${out} out of the strip`;
  }
  for (const [k, a] of order.entries()) {
    for (let m = k + 1; m < order.length && boxes[order[m]][0] < boxes[a][2]; m++) {
      const b = order[m];
      if (!boxesMeet(boxes[a], boxes[b])) continue;
      const depth = depthOfOverlap(laid[a], laid[b]);
      if (depth > least) return `items ${a} and ${b} overlap by ${depth}`;
    }
  }
  return null;
}

const boxesMeet = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
