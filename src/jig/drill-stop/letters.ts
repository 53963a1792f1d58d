/** What is written on a drill-stop jig, and where. */

import type { JigBlank } from '../jig.js';
import { NO_POURING, type Place, placed, type Wish } from '../letters.js';
import { titleOf, told } from '../wording.js';
import { fromBelly } from './boring.js';
import { base, besideEye, besideGuide, floor, freeStopFace, underside, wallTops } from './faces.js';
import type { DrillGuide } from './jig.js';
import type { DrillStopPlan } from './plan.js';
import type { DrillStopSetup } from './setup.js';

/**
 * Beside each guide its bit and collar setting ("D8 L40.0"), or over it on the top of its wall. Where somebody might pour, raised, that
 * nobody shall. Name and version. The last two on the stop face if they fit there, else on the top of
 * the belly wall, on the floor, on the base; the name at last on the side that lies on the bed.
 */
export function drillStopLetters(
  blank: JigBlank,
  setup: DrillStopSetup,
  plan: DrillStopPlan,
  guides: readonly DrillGuide[],
) {
  const anywhere: Place[] = [freeStopFace(plan), ...wallTops(plan), floor(plan, setup), base(plan)];
  const title = titleOf(blank);
  const wishes: Wish[] = [
    ...plan.guides.map((guide, i): Wish => {
      const setting = settingOf(guides[i]);
      const places = fromBelly(guide.boring)
        ? [besideGuide(plan, guide), ...wallTops(plan, guide.boring.mouth[0])]
        : [besideEye(plan, guide)];
      return { breaks: [[setting.join(' ')], setting], places };
    }),
    { breaks: NO_POURING, places: anywhere, raised: true },
    { breaks: [[title.join(' ')], title], places: [...anywhere, underside(plan)] },
  ];
  return placed(wishes, setup.letters);
}

/** Bit and collar setting as cut into the jig: "D8 L40.0". */
const settingOf = ({ bitDiameterMm, collarSettingMm }: DrillGuide): string[] => [
  `D${told(bitDiameterMm, 2)}`,
  `L${collarSettingMm.toFixed(1)}`,
];
