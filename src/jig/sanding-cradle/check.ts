/** Measures a sanding cradle against the body that lies in it. */
import { asRegion, offset, subtract } from '../../geometry/clip.js';
import { meshBox } from '../../geometry/mesh.js';
import { areaOf } from '../../geometry/ring.js';
import { movedBy } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { JigWork } from '../jig.js';
import type { SandingCradle } from './make.js';
import type { SandingCradleSetup } from './setup.js';

const LINED = 0.9; // share of the lining that must have room everywhere: corners of the hollow are flattened
const SLIVER_MM2 = 0.01;

/**
 * The floor under the body is as thick as asked, and at a quarter, half and three quarters of its
 * depth the hollow holds the body's own section grown by the lining.
 */
export function checkCradle(
  kernel: SolidKernel,
  jig: SandingCradle,
  { body }: { readonly body: Pick<JigWork['body'], 'mesh'> },
  { floorMm, liningMm }: SandingCradleSetup,
): JigCheck {
  const lowestZ = meshBox(body.mesh)[0][1] - jig.jigToBlank[13];
  const floorOff = Math.abs(lowestZ - liningMm - floorMm);
  const heights = [0.25, 0.5, 0.75].map((share) => lowestZ + share * jig.depthMm);
  const lying = movedBy(inverse(jig.jigToBlank), { kind: 'mesh', mesh: body.mesh });
  const hollows = sectionsAt(kernel, { kind: 'mesh', mesh: jig.mesh }, heights);
  const bodies = sectionsAt(kernel, lying, heights);
  const tight = bodies.map((section, i) => {
    const open = hollows[i].flatMap(({ holes }) => holes.map(asRegion));
    return areaOf(subtract(offset(section, LINED * liningMm), open));
  });
  const most = Math.max(...tight);
  return {
    flaws: flawsOf([
      [floorOff > 0.01, 'cradle-floor', floorOff, 0.01],
      [most > SLIVER_MM2, 'cradle-tight', most, SLIVER_MM2],
    ]),
    measured: { cradleFloorMm: lowestZ - liningMm },
  };
}
