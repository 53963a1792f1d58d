import { jigKind } from '../kind.js';
import { checkWireForm } from './check.js';
import { type WireForm, wireForm } from './make.js';
import { type WireFormSetup, wireFormForm } from './setup.js';

export const wireFormKind = jigKind<WireFormSetup, WireForm>({
  ...wireFormForm,
  path: ['throughWire'],
  isAid: true,
  walls: ['boardMm', 'webMm'],
  make: (kernel, work, { setup }) => wireForm(kernel, work, setup),
  measure: (kernel, jig, work, { setup }) => checkWireForm(kernel, jig, work, setup),
});
