import { jigKind } from '../kind.js';
import { ifPrintable } from '../nozzle.js';
import { checkCradle } from './check.js';
import { type SandingCradle, sandingCradle } from './make.js';
import { type SandingCradleSetup, sandingCradleForm } from './setup.js';

export const sandingCradleKind = jigKind<SandingCradleSetup, SandingCradle>({
  ...sandingCradleForm,
  path: ['body'],
  isAid: true,
  make: (kernel, work, { setup, printer }) => {
    const { wallMm, floorMm, earThicknessMm } = setup;
    return ifPrintable({ wallMm, floorMm, earThicknessMm }, printer.nozzleMm, () =>
      sandingCradle(kernel, work, setup),
    );
  },
  measure: (kernel, jig, work, { setup }) => checkCradle(kernel, jig, work, setup),
});
