/** What is told of a guide: to the maker, to the record, to the check. */

import { tipDepthMm } from '../../blank/hole.js';
import type { Point2 } from '../../geometry/vec.js';
import type { JigSet } from '../kind.js';
import { leanDeg } from './boring.js';
import type { Faced } from './guided.js';
import type { DrillGuide } from './jig.js';
import type { DrillStopSetup } from './setup.js';
import { holeSpread } from './spread.js';

export function guideTold(guide: Faced, set: JigSet<DrillStopSetup>): DrillGuide {
  const { boring, radius, seatRadius, faceMm, face, floorMm, endMm } = guide;
  const { diameterMm, depthMm, inward, mouth } = boring;
  const collarSettingMm = floorMm - faceMm;
  const lengthMm = seatLength(guide, set.setup);
  return {
    for: boring.for,
    stationMm: mouth[0],
    heightMm: mouth[1],
    tiltDeg: leanDeg(boring),
    bitDiameterMm: diameterMm,
    holeDiameterMm: 2 * radius,
    sleeve: lengthMm > 0 ? { seatDiameterMm: 2 * seatRadius, lengthMm } : null,
    depthMm,
    tipDepthMm: tipDepthMm(boring),
    collarSettingMm,
    collarFromTipMm: collarSettingMm + tipDepthMm(boring) - depthMm,
    collarDiameterMm: guide.collarMm,
    guideLengthMm: endMm - faceMm,
    axis: { originMm: inSpace(face), direction: inSpace(inward) },
    spread: spreadOf(guide, set),
  };
}

const inSpace = ([x, z]: Point2) => [x, 0, z + 0] as const;

/** How deep a sleeve sits; 0 where there is none. */
export function seatLength({ boring, endMm, faceMm }: Faced, setup: DrillStopSetup): number {
  if (boring.for !== 'ballast' || setup.bushingOuterDiameterMm === 0) return 0;
  return setup.bushingLengthMm || endMm - faceMm - setup.bushingShoulderMm;
}

/** Greatest play of a bit in a drill bush of its size: F7 over h8 at 6 to 10 mm (DIN 179, ISO 286; from memory). */
const SLEEVE_PLAY_MM = 0.05;

function spreadOf(guide: Faced, { setup, printer }: JigSet<DrillStopSetup>) {
  const { boring, radius, endMm, faceMm, mouthMm } = guide;
  const sleeveMm = seatLength(guide, setup);
  const isFromNose = boring.inward[0] > 0 && boring.inward[1] === 0;
  // A sleeve leads alone, and ends before its shoulder.
  const leadsTo = sleeveMm > 0 ? faceMm + sleeveMm : endMm;
  return holeSpread({
    guideLengthMm: leadsTo - faceMm,
    playMm:
      sleeveMm > 0
        ? SLEEVE_PLAY_MM + Math.max(0, setup.bushingFitMm)
        : 2 * radius - boring.diameterMm,
    gapMm: mouthMm - leadsTo,
    depthMm: boring.depthMm,
    runOutMm: setup.spread.runOutMm,
    collarErrorMm: setup.spread.collarErrorMm,
    printerErrorMm: printer.errorMm,
    seatMm: setup.seatClearanceMm,
    pushedMm: isFromNose ? 2 * setup.clearanceMm : 0,
  });
}
