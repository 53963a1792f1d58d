import { jigKind } from '../kind.js';
import { checkGauge } from './check.js';
import type { GaugeJig } from './jig.js';
import { gaugeJigs } from './make.js';
import { type GaugesSetup, gaugesForm } from './setup.js';

export const gaugesKind = jigKind<GaugesSetup, GaugeJig>({
  ...gaugesForm,
  path: ['body'],
  isAid: true,
  make: gaugeJigs,
  measure: (kernel, jig, work, { setup }) => checkGauge(kernel, jig, work, setup),
});
