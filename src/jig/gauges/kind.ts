import { jigKind } from '../kind.js';
import { checkGauge } from './check.js';
import type { GaugeJig } from './jig.js';
import { gaugeJigs } from './make.js';
import { type GaugesSetup, gaugesSchema, gaugesSections } from './setup.js';

export const gaugesKind = jigKind<GaugesSetup, GaugeJig>({
  kind: 'gauges',
  called: 'set of gauges',
  path: ['body'],
  isAid: true,
  walls: ['thicknessMm'],
  sections: gaugesSections,
  schema: gaugesSchema,
  make: gaugeJigs,
  measure: (kernel, jig, work, { setup }) => checkGauge(kernel, jig, work, setup),
});
