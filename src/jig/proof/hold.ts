/**
 * Whether the jig holds its workpiece against what the tools do: wrench closure. Where jig and
 * workpiece bear on each other the jig can push, square to the surface and without friction (friction
 * only helps); hand or clamp can push where the jig says. A load is held if such forces, none of them
 * negative, balance its force and its moment. Found by a linear program of six equations that asks
 * for the least hand force.
 */
import type { Point3 } from '../../geometry/vec.js';
import { cross3, sub3 } from '../../geometry/vec3.js';
import { leastCost } from '../../linear/least-cost.js';
import type { Fit, Press } from '../fit.js';
import type { Faced } from './clearance.js';
import { outermost } from './contacts.js';
import { type Load, loadsOf } from './loads.js';
import type { Side } from './side.js';

export type Held = {
  readonly tool: string;
  readonly load: string;
  readonly unit: Load['unit'];
  /** False when no force of walls and hands balances it. */
  readonly held: boolean;
  /** Sides of the workpiece, in its own words, that take the load, the hardest pressed first. */
  readonly takenAt: readonly Side[];
  /** How far it moves before all of them bear; 0: it is pressed against them already. */
  readonly afterPlayMm: number;
  /** Hand or clamp, N for each unit of the load, by where it presses; empty where none is needed. */
  readonly hands: readonly { readonly called: string; readonly ratio: number }[];
};

/** A newton at a wall counts as little against one of the hand, but a wedge that needs hundreds counts. */
const WALL_COST = 0.01;
/** More than this many N of hand for 1 N is no hold; a twist of 1 N·mm has arms of millimeters. */
const MOST_HAND = 10;
/** Hands that need not press harder than this for 1 N are resting. */
const LEAST_HAND = 1e-3;
const LEAST_SHARE = 0.1; // of the hardest pressed side: sides under it are not named

/**
 * Every load of every tool. The walls that bear are tried alone, then with hands, then with the
 * walls that bear once the play is used up.
 * @param named the side of the workpiece that looks this way
 */
export function holds(
  faced: readonly Faced[],
  { pressed, tools }: Fit,
  named: (normal: Point3) => Side,
): Held[] {
  const all = outermost(faced);
  const seat = all.filter((f) => f.afterPlayMm === 0);
  return tools.flatMap(loadsOf).map((load) => {
    const tries: readonly [readonly Faced[], readonly Press[]][] = [
      [seat, []],
      [seat, pressed],
      [all, []],
      [all, pressed],
    ];
    for (const [walls, hands] of tries) {
      const held = balanced(load, walls, hands, named);
      if (held) return held;
    }
    return notHeld(load);
  });
}

const told = ({ tool, called, unit }: Load) => ({ tool, load: called, unit });

const notHeld = (load: Load): Held => ({
  ...told(load),
  held: false,
  takenAt: [],
  afterPlayMm: 0,
  hands: [],
});

/** Moments are about the tool, in arms of this length, so that they are about as large as forces. */
const ARM_MM = 30;

function balanced(
  load: Load,
  walls: readonly Faced[],
  hands: readonly Press[],
  named: (normal: Point3) => Side,
): Held | null {
  const wrench = (at: Point3, force: Point3): number[] => [
    ...force,
    ...cross3(sub3(at, load.at), force).map((moment) => moment / ARM_MM),
  ];
  const against = load.direction.map((v) => -v);
  const target = load.unit === 'N' ? [...against, 0, 0, 0] : [0, 0, 0, ...against];
  const found = leastCost(
    [
      ...walls.map(({ at, normal }) => wrench(at, [-normal[0], -normal[1], -normal[2]])),
      ...hands.map(({ at, direction }) => wrench(at, direction)),
    ],
    [...walls.map(() => WALL_COST), ...hands.map(() => 1)],
    target,
  );
  if (!found) return null;
  // A target of one stands for a twist of ARM_MM.
  const scale = load.unit === 'N' ? 1 : 1 / ARM_MM;
  const amounts = found.amounts.map((a) => scale * a);
  const hand = amounts.slice(walls.length);
  if (hand.reduce((a, b) => a + b, 0) > MOST_HAND) return null;
  const bearing = walls.flatMap((wall, i) =>
    amounts[i] > 0 ? [{ ...wall, force: amounts[i] }] : [],
  );
  return {
    ...told(load),
    held: true,
    takenAt: sidesOf(bearing, named),
    afterPlayMm: Math.max(0, ...bearing.map((b) => b.afterPlayMm)),
    hands: handsOf(hands, hand, scale * LEAST_HAND),
  };
}

function sidesOf(
  bearing: readonly { readonly normal: Point3; readonly force: number }[],
  named: (normal: Point3) => Side,
): Side[] {
  const forces = new Map<Side, number>();
  for (const { normal, force } of bearing) {
    const side = named(normal);
    forces.set(side, (forces.get(side) ?? 0) + force);
  }
  const hardest = Math.max(0, ...forces.values());
  return [...forces]
    .filter(([, force]) => force >= LEAST_SHARE * hardest)
    .sort((a, b) => b[1] - a[1])
    .map(([side]) => side);
}

function handsOf(hands: readonly Press[], amounts: Float64Array, least: number): Held['hands'] {
  const ratios = new Map<string, number>();
  hands.forEach(({ called }, i) => {
    if (amounts[i] > least) ratios.set(called, (ratios.get(called) ?? 0) + amounts[i]);
  });
  return [...ratios].map(([called, ratio]) => ({ called, ratio }));
}
