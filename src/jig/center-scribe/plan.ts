import { insideRing, type Ring, ring, ringBox } from '../../geometry/ring.js';
import { add, betweenEdges, type Point2, quarterLeft, sub, times } from '../../geometry/vec.js';
import { seatOutline } from '../outline.js';
import type { CenterScribeSetup } from './setup.js';
import { LEAST_SLOPE, type Tick } from './ticks.js';

/** Outlines of the tray in its own X and Y, and heights above the bed. */
export type Tray = {
  readonly cavity: Ring;
  readonly wall: Ring;
  readonly apron: Ring;
  readonly rimZ: number;
  /** From the blank's side view to X and Y. */
  readonly toTray: (p: Point2) => Point2;
};

export function trayOf(profile: Ring, setup: CenterScribeSetup, rimMm: number) {
  const { clearanceMm, wallMm, apronMm, floorMm, seatClearanceMm } = setup;
  const outside = (by: number): Ring => seatOutline(profile, by, seatClearanceMm);
  const apron = outside(clearanceMm + wallMm + apronMm);
  const [left, , , top] = ringBox(apron);
  const corner: Point2 = [left, top];
  const toTray = ([x, z]: Point2): Point2 => [x - corner[0], corner[1] - z];
  const flat = (r: Ring): Ring => ring(r.map(toTray));
  const tray: Tray = {
    cavity: flat(outside(clearanceMm)),
    wall: flat(outside(clearanceMm + wallMm)),
    apron: flat(apron),
    rimZ: floorMm + seatClearanceMm + rimMm,
    toTray,
  };
  return { tray, corner };
}

/** Least plastic between two notches, mm: thinner fins of the rim would break off. */
export const LEAST_FIN_MM = 2;

type Crowded = Tick & { readonly beside: string };

/** The ticks whose notches leave each other a fin of rim, first come first served, and the others. */
export function apart(ticks: readonly Tick[], setup: CenterScribeSetup) {
  const kept: { tick: Tick; ring: Ring }[] = [];
  const crowded: Crowded[] = [];
  for (const tick of ticks) {
    const own = notch(tick, setup);
    const near = kept.find((k) => gapBetween(k.ring, own) < LEAST_FIN_MM);
    if (near) crowded.push({ ...tick, beside: near.tick.what });
    else kept.push({ tick, ring: own });
  }
  return { ticks: kept.map((k) => k.tick), crowded };
}

/** Between two outlines that do not cross; 0 where a corner of one lies in the other. */
function gapBetween(a: Ring, b: Ring): number {
  if (a.some((p) => insideRing(p, b)) || b.some((p) => insideRing(p, a))) return 0;
  return betweenEdges(a, b);
}

/** Side view of a slot through the wall along the line that is marked, from inside the blank out past the wall. */
export function notch({ at, outward }: Tick, setup: CenterScribeSetup): Ring {
  const half = times(quarterLeft(outward), setup.tickMm / 2);
  const beyond = setup.clearanceMm + setup.wallMm / LEAST_SLOPE + setup.tickMm;
  // The wall bends back beside a mark on a round end.
  const [from, to] = [-1 - setup.tickMm, beyond].map((d) => add(at, times(outward, d)));
  return ring([add(from, half), add(to, half), sub(to, half), sub(from, half)]);
}
