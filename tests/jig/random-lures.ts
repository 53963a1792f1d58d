/** Random blanks and set-ups within what a shop may ask for. Fixed seeds, printed on failure. */
import { seededDraws } from '../../src/geometry/random.js';
import type { DrillStopSetup } from '../../src/jig/drill-stop/setup.js';
import type { JigBlank } from '../../src/jig/jig.js';
import type { LipSlotGuideSetup } from '../../src/jig/lip-slot-guide/setup.js';
import { lureBlank } from './lure-blanks.js';
import { drillStopSetup, lipSlotSetup } from './set-ups.js';

export type RandomLure = {
  readonly blank: JigBlank;
  readonly drillStop: DrillStopSetup;
  readonly lipSlotGuide: LipSlotGuideSetup;
};

export function randomLure(seed: number): RandomLure {
  const draw = seededDraws(seed);
  const between = (a: number, b: number) => a + (b - a) * draw();
  const one = <T>(...choices: readonly T[]): T => choices[Math.floor(draw() * choices.length)];
  const lengthMm = Math.round(between(40, 250));
  const thicknessMm = Math.round(Math.max(8, lengthMm * between(0.12, 0.25)));
  const first = between(0.3, 0.45) * lengthMm;
  const blank = lureBlank({
    lengthMm,
    backRatio: between(0.06, 0.2),
    bellyRatio: between(0.06, 0.2),
    thicknessMm,
    lipAngleDeg: Math.round(between(0, 90)),
    holeStations: one([first], [first, first + 22], [first, first + 16, first + 32]),
    allowanceMm: between(0.5, 3),
  });
  return {
    blank,
    drillStop: {
      ...drillStopSetup,
      clearanceMm: one(0.02, 0.1, 0.25, 0.5, 1, 3),
      seatClearanceMm: one(0.01, 0.05, 0.2, 1),
      wallMm: between(2, 8),
      floorMm: between(2, 8),
      proudMm: between(0, 2),
      guideLengthMm: between(5, 30),
      bushingOuterDiameterMm: one(0, 0, 12),
      collarDiameterMm: between(14, 30),
      reachMm: between(0, 80),
      pushHoleDiameterMm: one(0, 8, 12, 20),
    },
    lipSlotGuide: {
      ...lipSlotSetup,
      seatClearanceMm: one(0.01, 0.05, 0.2, 1),
      sideClearanceMm: one(0.01, 0.1, 0.15, 0.5, 2),
      reliefMm: one(0, 0.25, 1, 3),
      wallMm: between(2, 8),
      cheekMm: between(3, 10),
      cheekAboveMm: between(5, 25),
      reachMm: between(15, 80),
      sawKerfMm: one(0.8, 1.2, 2),
      stopHeightMm: between(30, 60),
    },
  };
}
