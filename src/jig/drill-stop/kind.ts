import { jigKind } from '../kind.js';
import { checkDrillGuides } from './check.js';
import type { DrillStopJig } from './jig.js';
import { drillStopJig } from './make.js';
import { type DrillStopSetup, drillStopSchema, drillStopSections } from './setup.js';

export const drillStop = jigKind<DrillStopSetup, DrillStopJig>({
  kind: 'drill-stop',
  called: 'drill-stop jig',
  path: ['ballast'],
  isAid: false,
  sections: drillStopSections,
  schema: drillStopSchema,
  walls: ['wallMm', 'floorMm', 'webMm'],
  make: (kernel, { blank }, { setup }) => drillStopJig(kernel, blank, setup),
  measure: (kernel, jig, { blank }, { setup }) => checkDrillGuides(kernel, jig, blank, setup),
});
