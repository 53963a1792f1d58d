import { jigKind } from '../kind.js';
import { ifPrintable } from '../nozzle.js';
import { checkWireForm } from './check.js';
import { type WireForm, wireForm } from './make.js';
import { type WireFormSetup, wireFormForm } from './setup.js';

export const wireFormKind = jigKind<WireFormSetup, WireForm>({
  ...wireFormForm,
  path: ['throughWire'],
  isAid: true,
  make: (kernel, work, { setup, printer }) => {
    const { boardMm, webMm } = setup;
    return ifPrintable({ boardMm, webMm }, printer.nozzleMm, () => wireForm(kernel, work, setup));
  },
  measure: (kernel, jig, work, { setup }) => checkWireForm(kernel, jig, work, setup),
});
