import { jigKind } from '../kind.js';
import { checkCradle } from './check.js';
import { type SandingCradle, sandingCradle } from './make.js';
import { type SandingCradleSetup, sandingCradleForm } from './setup.js';

export const sandingCradleKind = jigKind<SandingCradleSetup, SandingCradle>({
  ...sandingCradleForm,
  path: ['body'],
  isAid: true,
  walls: ['wallMm', 'floorMm', 'earThicknessMm'],
  make: (kernel, work, { setup }) => sandingCradle(kernel, work, setup),
  measure: (kernel, jig, work, { setup }) => checkCradle(kernel, jig, work, setup),
});
