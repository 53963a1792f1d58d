import { jigKind } from '../kind.js';
import { ifPrintable } from '../nozzle.js';
import { checkScribe } from './check.js';
import { type CenterScribe, centerScribe } from './make.js';
import { type CenterScribeSetup, centerScribeForm } from './setup.js';

export const centerScribeKind = jigKind<CenterScribeSetup, CenterScribe>({
  ...centerScribeForm,
  path: ['blockThicknessMm'],
  isAid: true,
  make: (kernel, work, { setup, printer }) => {
    const { wallMm, floorMm } = setup;
    return ifPrintable({ wallMm, floorMm }, printer.nozzleMm, () =>
      centerScribe(kernel, work, setup),
    );
  },
  measure: (kernel, jig, _work, { setup }) => checkScribe(kernel, jig, setup),
});
