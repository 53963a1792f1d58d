import { jigKind } from '../kind.js';
import { checkScribe } from './check.js';
import { type CenterScribe, centerScribe } from './make.js';
import { type CenterScribeSetup, centerScribeSchema, centerScribeSections } from './setup.js';

export const centerScribeKind = jigKind<CenterScribeSetup, CenterScribe>({
  kind: 'center-scribe',
  called: 'center scribe',
  path: ['blockThicknessMm'],
  isAid: true,
  sections: centerScribeSections,
  schema: centerScribeSchema,
  make: (kernel, work, { setup }) => centerScribe(kernel, work, setup),
  measure: (kernel, jig, _work, { setup }) => checkScribe(kernel, jig, setup),
});
