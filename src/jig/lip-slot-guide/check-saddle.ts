/** The saddle on the mesh, with what sits in it. */
import { offsetAt } from '../../body/shape.js';
import { type Ring, ring } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { movedBy } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse, placement, pointBy } from '../../solid/placement.js';
import type { GuideWork, LipSlotGuide } from './jig.js';
import type { Saddle } from './seat.js';
import type { LipSlotGuideSetup } from './setup.js';

/** The section through the middle of the guide, with the side view of the workpiece as it sits there. */
export function saddleOf(
  kernel: SolidKernel,
  jig: LipSlotGuide,
  work: GuideWork,
  setup: LipSlotGuideSetup,
): Saddle {
  const toJig = inverse(jig.jigToBlank);
  const middleY = pointBy(toJig, [0, 0, 0])[1];
  const lying = placement([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, 0, 0]);
  // Beside the marks of the center line.
  const aside = setup.letters.strokeMm / 2 + ASIDE;
  const solid = movedBy(lying, { kind: 'mesh', mesh: jig.mesh });
  const [section] = sectionsAt(kernel, solid, [-(middleY + aside)]);
  const profile = ring(
    sideView(jig, work).map(([x, z]): Point2 => {
      const [px, , pz] = pointBy(toJig, [x, 0, z]);
      return [px, pz];
    }),
  );
  const toX = Math.max(...section.flatMap(({ outer }) => outer.map(([x]) => x)));
  return { section, profile, press: [toX / 2, setup.stopHeightMm] };
}

const ASIDE = 0.01; // mm
const STATIONS = 100;

function sideView(jig: LipSlotGuide, { blank, body }: GuideWork): Ring | readonly Point2[] {
  if (jig.workpiece === 'sawn') return blank.profileRing;
  if (!body) throw new Fault('guide of a shaped body held against none');
  const { lengthMm, backSquared, bellySquared } = body.shape;
  const stations = Array.from(
    { length: STATIONS - 1 },
    (_, k) => (lengthMm / 2) * (1 - Math.cos((Math.PI * (k + 1)) / STATIONS)),
  );
  const belly = stations.map((x): Point2 => [x, -offsetAt(bellySquared, x)]);
  const back = stations.map((x): Point2 => [x, offsetAt(backSquared, x)]);
  return [[0, 0], ...belly, [lengthMm, 0], ...back.reverse()];
}
