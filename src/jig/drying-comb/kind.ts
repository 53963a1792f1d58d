import { jigKind } from '../kind.js';
import { ifPrintable } from '../nozzle.js';
import { checkComb } from './check.js';
import { type DryingComb, dryingComb } from './make.js';
import { type DryingCombSetup, dryingCombForm } from './setup.js';

export const dryingCombKind = jigKind<DryingCombSetup, DryingComb>({
  ...dryingCombForm,
  path: ['tailEye'],
  isAid: true,
  make: (kernel, work, set) => {
    const { thicknessMm, toothMm } = set.setup;
    return ifPrintable({ thicknessMm, toothMm }, set.printer.nozzleMm, () =>
      dryingComb(kernel, work, set),
    );
  },
  measure: (kernel, jig, _work, { setup }) => checkComb(kernel, jig, setup),
});
