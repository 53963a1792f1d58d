import { jigKind } from '../kind.js';
import { ballastBorings } from './boring.js';
import { checkDrillGuides } from './check.js';
import type { DrillStopJig } from './jig.js';
import { drillStopJig } from './make.js';
import { pilotBorings } from './pilots.js';
import { type DrillStopSetup, drillStopForm } from './setup.js';

export const drillStop = jigKind<DrillStopSetup, DrillStopJig>({
  ...drillStopForm,
  path: ['ballast'],
  isAid: false,
  make: (kernel, work, set) => {
    const { pilots } = set.setup;
    const { borings, problems } = pilots
      ? pilotBorings(work, pilots)
      : { borings: [], problems: [] };
    const made = drillStopJig(kernel, work.blank, set, borings);
    return { jigs: made.jigs, problems: [...problems, ...made.problems] };
  },
  measure: (kernel, jig, work, { setup }) => {
    const pilots = setup.pilots ? pilotBorings(work, setup.pilots).borings : [];
    const borings = [...ballastBorings(work.blank.holes), ...pilots];
    return checkDrillGuides(kernel, jig, borings, setup);
  },
});
