import { jigKind } from '../kind.js';
import { checkCradle } from './check.js';
import { type SandingCradle, sandingCradle } from './make.js';
import { type SandingCradleSetup, sandingCradleSchema, sandingCradleSections } from './setup.js';

export const sandingCradleKind = jigKind<SandingCradleSetup, SandingCradle>({
  kind: 'sanding-cradle',
  called: 'sanding cradle',
  path: ['body'],
  isAid: true,
  sections: sandingCradleSections,
  schema: sandingCradleSchema,
  make: (kernel, work, { setup }) => sandingCradle(kernel, work, setup),
  measure: (kernel, jig, work, { setup }) => checkCradle(kernel, jig, work, setup),
});
