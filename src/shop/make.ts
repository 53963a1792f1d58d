/** The shop's values as one sentence: what was made gives the work on each pattern, that the totals and the finishes, and all of it the time. */
import { fillsOf, meltFor, weightsFor } from './ballast.js';
import { drillingOf } from './drilling.js';
import { finishesOf } from './finishes.js';
import { hardwareOf, hardwareTotals } from './hardware.js';
import type { Shop, ShopPattern } from './shop.js';
import { tasksOf } from './tasks.js';
import { tapeFor, timberToGet } from './timber.js';
import { timelineOf } from './timeline.js';
import { tubTestOf } from './tub.js';
import { weightsOf } from './weights.js';
import type { ShopLine, ShopWork } from './work.js';

/** Two-part coats must fit their pots: `potProblems` tells of that first. */
export function makeShop(work: ShopWork): Shop {
  const { wish, materials } = work;
  const patterns = work.lines.map((line) => patternOf(line, work));
  const finishes = finishesOf(work);
  return {
    ...wish,
    timber: timberToGet(work),
    tape: tapeFor(work),
    patterns,
    melt: meltFor(patterns, materials),
    weightsToBuy: weightsFor(patterns, materials),
    hardware: hardwareTotals(patterns.map((p) => p.hardware)),
    finishes,
    timeline: timelineOf(tasksOf(work, patterns, finishes), wish.benchHoursPerDay),
  };
}

function patternOf(line: ShopLine, work: ShopWork): ShopPattern {
  const { pattern, count, blank, floating, wire, gauged } = line;
  const ballast = fillsOf(line);
  const { slot } = blank;
  return {
    name: pattern.name,
    count,
    sawnCount: work.nest?.made[pattern.name] ?? count,
    drilling: drillingOf(line, work),
    ballast,
    weights: weightsOf(line),
    roundOver: floating.roundOver,
    gauges: (gauged?.gauges.sections ?? []).map(({ number, stationMm }) => ({ number, stationMm })),
    slot: slot && {
      angleDeg: slot.angleDeg,
      depthMm: slot.depthMm,
      widthMm: slot.widthMm,
      stationMm: slot.mouth[0],
    },
    wire: wire && { lengthToCutMm: wire.lengthToCutMm, diameterMm: wire.spec.diameterMm },
    hardware: hardwareOf(line, ballast, work),
    tub: tubTestOf(line),
  };
}
