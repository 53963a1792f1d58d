import { jigKind } from '../kind.js';
import { checkComb } from './check.js';
import { type DryingComb, dryingComb } from './make.js';
import { type DryingCombSetup, dryingCombForm } from './setup.js';

export const dryingCombKind = jigKind<DryingCombSetup, DryingComb>({
  ...dryingCombForm,
  path: ['tailEye'],
  isAid: true,
  walls: ['thicknessMm', 'toothMm'],
  make: (kernel, work, set) => dryingComb(kernel, work, set),
  measure: (kernel, jig, _work, { setup }) => checkComb(kernel, jig, setup),
});
