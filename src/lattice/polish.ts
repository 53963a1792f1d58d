/**
 * A double lattice made denser until nothing near is: successive linear programs over the six
 * numbers of u, v and w, each within a distance that shrinks when there is no gain. What keeps two
 * copies apart is a line through an edge of their no-fit polygon.
 */
import { add, length, type Point2 } from '../geometry/vec.js';
import { type DoubleLattice, reduced } from './double.js';
import { barriers, distanceTo, distanceToBox, type Obstacle, type Pick } from './obstacle.js';
import { greatest } from './simplex.js';

/** What the steps of a double lattice must stay out of. */
export type Apart = {
  /** Places of a copy at the same turn that meet the one at the origin. */
  readonly same: Obstacle;
  /** Places of a turned copy that meet the one at the origin. */
  readonly turned: Obstacle;
};

/** Kept between copies, mm: no-fit polygons are rounded to 1e-6. */
const CLEAR_MM = 2e-6;
/** Distances the six numbers may move, first and last, as a share of the outline's reach. */
const FIRST_SHARE = 0.05;
const LAST_SHARE = 1e-8;
/** Ways of choosing edges where a point lies at a corner, tried before the distance is halved. */
const PICKS: readonly Pick[] = ['farthest', 'first', 'last', (n) => n >> 1];

/** A place of one copy beside the first: i·u + j·v, or w + i·u + j·v if turned. */
type Neighbor = { readonly i: number; readonly j: number; readonly turned: boolean };

/** All neighbors within reach; of two opposite ones at the same turn, one. */
function neighbors({ u, v, w, cellMm2 }: DoubleLattice, { same, turned }: Apart): Neighbor[] {
  const far = Math.max(same.reach, turned.reach + length(w)) * 1.2;
  const mostI = Math.ceil((far * length(v)) / cellMm2);
  const mostJ = Math.ceil((far * length(u)) / cellMm2);
  const out: Neighbor[] = [];
  for (let i = -mostI; i <= mostI; i++) {
    for (let j = -mostJ; j <= mostJ; j++) {
      if (j > 0 || (j === 0 && i > 0)) out.push({ i, j, turned: false });
      out.push({ i, j, turned: true });
    }
  }
  return out;
}

const placeOf = ({ u, v, w }: DoubleLattice, { i, j, turned }: Neighbor): Point2 => [
  i * u[0] + j * v[0] + (turned ? w[0] : 0),
  i * u[1] + j * v[1] + (turned ? w[1] : 0),
];

/** Least distance of a neighbor to what it must stay out of; negative if copies overlap. */
export function leastClearance(lattice: DoubleLattice, apart: Apart): number {
  let least = Infinity;
  for (const n of neighbors(lattice, apart)) {
    const obstacle = n.turned ? apart.turned : apart.same;
    const [x, y] = placeOf(lattice, n);
    if (distanceToBox(obstacle, [x, y]) >= least) continue;
    least = Math.min(least, distanceTo(obstacle, x, y));
  }
  return least;
}

/** The lattice changed as little as parts its copies, or null if that takes more than a few steps. */
function parted(lattice: DoubleLattice, apart: Apart): DoubleLattice | null {
  let at = lattice;
  for (let tries = 0; tries < 12; tries++) {
    const clearance = leastClearance(at, apart);
    if (clearance >= CLEAR_MM) return at;
    const distance = 4 * (2 * CLEAR_MM - clearance);
    const { rows, slacks } = linesApart(at, apart, { distance, pick: 'farthest' });
    // One more number, the clearance gained, is made greatest.
    const least = Math.min(...slacks);
    const gains = [...rows.map((row) => [...row, 1]), ...boxRows(13)];
    const limits = [...slacks.map((s) => s - least), ...new Array(12).fill(distance)];
    const gain = [...new Array(12).fill(0), 1];
    at = movedBy(at, greatest(gain, gains, [...limits, 2 * CLEAR_MM - least]));
  }
  return null;
}

/** The densest lattice found near this one, with its copies apart; null if they overlap here. */
export function polished(start: DoubleLattice, apart: Apart): DoubleLattice | null {
  let best = parted(start, apart);
  if (!best) return null;
  const { reach } = apart.same;
  for (let distance = FIRST_SHARE * reach; distance > LAST_SHARE * reach; ) {
    const better: DoubleLattice | null = nearest(best, apart, distance);
    const gain = better ? 1 - better.cellMm2 / best.cellMm2 : 0;
    if (better) best = better;
    // A gain far under what the distance allows is a zigzag.
    if (gain < (0.01 * distance) / reach) distance /= 2;
  }
  return best;
}

/** A denser lattice within the distance, by the first choice of edges that gives one. */
function nearest(from: DoubleLattice, apart: Apart, distance: number): DoubleLattice | null {
  for (const pick of PICKS) {
    const to = stepped(from, apart, { distance, pick });
    const gain = 1 - to.cellMm2 / from.cellMm2;
    if (gain > 1e-12 && leastClearance(to, apart) >= CLEAR_MM * (1 - 1e-3)) return to;
  }
  return null;
}

type Step = { readonly distance: number; readonly pick: Pick };

/** One linear program: the moves of u, v and w that make the cell's area, taken as linear, least. */
function stepped(from: DoubleLattice, apart: Apart, step: Step): DoubleLattice {
  const { u, v } = from;
  const { rows, slacks } = linesApart(from, apart, step);
  const limits = slacks.map((s) => Math.max(0, s - CLEAR_MM));
  const gain = bothWays([-v[1], v[0], u[1], -u[0], 0, 0]);
  const box = new Array(12).fill(step.distance);
  return movedBy(from, greatest(gain, [...rows, ...boxRows(12)], [...limits, ...box]));
}

/** The lines neighbors stay beyond, as rows over the moves of u, v and w, and what is left to each. */
function linesApart(
  from: DoubleLattice,
  apart: Apart,
  { distance, pick }: Step,
): { readonly rows: number[][]; readonly slacks: number[] } {
  const rows: number[][] = [];
  const slacks: number[] = [];
  for (const n of neighbors(from, apart)) {
    const obstacle = n.turned ? apart.turned : apart.same;
    const place = placeOf(from, n);
    const within = distance * Math.SQRT2 * (Math.abs(n.i) + Math.abs(n.j) + (n.turned ? 1 : 0));
    if (distanceToBox(obstacle, place) > within) continue;
    for (const { out, slack } of barriers(obstacle, place, { within, pick })) {
      rows.push(bothWays([n.i, n.j, n.turned ? 1 : 0].flatMap((k) => [-k * out[0], -k * out[1]])));
      slacks.push(slack);
    }
  }
  return { rows, slacks };
}

/** A row for numbers that may have either sign, told as differences of two that may not. */
const bothWays = (row: readonly number[]): number[] => [...row, ...row.map((a) => -a)];

/** Rows that bound each of some numbers. */
const boxRows = (count: number): number[][] =>
  Array.from({ length: count }, (_, k) =>
    Array.from({ length: count }, (_, at) => (at === k ? 1 : 0)),
  );

function movedBy({ u, v, w }: DoubleLattice, x: readonly number[]): DoubleLattice {
  const move = (k: number): Point2 => [x[k] - x[k + 6], x[k + 1] - x[k + 7]];
  return reduced(add(u, move(0)), add(v, move(2)), add(w, move(4)));
}
