import { jigKind } from '../kind.js';
import { checkScribe } from './check.js';
import { type CenterScribe, centerScribe } from './make.js';
import { type CenterScribeSetup, centerScribeForm } from './setup.js';

export const centerScribeKind = jigKind<CenterScribeSetup, CenterScribe>({
  ...centerScribeForm,
  path: ['blockThicknessMm'],
  isAid: true,
  walls: ['wallMm', 'floorMm'],
  make: (kernel, work, { setup }) => centerScribe(kernel, work, setup),
  measure: (kernel, jig, _work, { setup }) => checkScribe(kernel, jig, setup),
});
