import { jigKind } from '../kind.js';
import { checkComb } from './check.js';
import { type DryingComb, dryingComb } from './make.js';
import { type DryingCombSetup, dryingCombSchema, dryingCombSections } from './setup.js';

export const dryingCombKind = jigKind<DryingCombSetup, DryingComb>({
  kind: 'drying-comb',
  called: 'drying comb',
  path: ['tailEye'],
  isAid: true,
  sections: dryingCombSections,
  schema: dryingCombSchema,
  make: (kernel, work, set) => dryingComb(kernel, work, set),
  measure: (kernel, jig, _work, { setup }) => checkComb(kernel, jig, setup),
});
