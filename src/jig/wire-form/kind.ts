import { jigKind } from '../kind.js';
import { checkWireForm } from './check.js';
import { type WireForm, wireForm } from './make.js';
import { type WireFormSetup, wireFormSchema, wireFormSections } from './setup.js';

export const wireFormKind = jigKind<WireFormSetup, WireForm>({
  kind: 'wire-form',
  called: 'wire form',
  path: ['throughWire'],
  isAid: true,
  sections: wireFormSections,
  schema: wireFormSchema,
  make: (kernel, work, { setup }) => wireForm(kernel, work, setup),
  measure: (kernel, jig, work, { setup }) => checkWireForm(kernel, jig, work, setup),
});
