/** Measures a center scribe on sections of its mesh: the height of the rim, the notches on their lines. */
import { insideRing, type Region } from '../../geometry/ring.js';
import { add, type Point2, quarterLeft, times } from '../../geometry/vec.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { CenterScribe } from './make.js';
import type { CenterScribeSetup } from './setup.js';

const PLACE = 0.01; // mm

/**
 * Rim and pencil together must reach half the thickness. In the middle of the ticks' height each
 * notch must be open on its line from the blank out, and closed just beside it on both sides; under
 * the ticks the wall must stand.
 */
export function checkScribe(
  kernel: SolidKernel,
  jig: CenterScribe,
  setup: CenterScribeSetup,
): JigCheck {
  const toJig = inverse(jig.jigToBlank);
  const rimZ = jig.sizeMm[2];
  const [, rimY] = pointBy(jig.jigToBlank, [0, 0, rimZ]);
  const off = Math.abs(rimY + setup.pencilMm);
  const { tickMm, clearanceMm, wallMm } = setup;
  const heights = [rimZ - jig.tickMm / 2, rimZ - jig.tickMm - 0.5];
  const solid = { kind: 'mesh', mesh: jig.mesh } as const;
  const [notched, whole] = sectionsAt(kernel, solid, heights);
  const isIn = (section: readonly Region[], [x, z]: Point2): boolean => {
    const [X, Y] = pointBy(toJig, [x, 0, z]);
    return section.some(
      ({ outer, holes }) =>
        insideRing([X, Y], outer) && !holes.some((hole) => insideRing([X, Y], hole)),
    );
  };
  const inWall = jig.ticks.map(({ at, outward }) =>
    add(at, times(outward, clearanceMm + wallMm / 2)),
  );
  const beside = (p: Point2, outward: Point2, side: 1 | -1): Point2 =>
    add(p, times(quarterLeft(outward), side * (tickMm / 2 + PLACE)));
  const within = (p: Point2, outward: Point2, side: 1 | -1): Point2 =>
    add(p, times(quarterLeft(outward), side * (tickMm / 2 - PLACE)));
  const sides = [1, -1] as const;
  const wrong = jig.ticks.filter(
    ({ outward }, i) =>
      isIn(notched, inWall[i]) ||
      sides.some(
        (side) =>
          isIn(notched, within(inWall[i], outward, side)) ||
          !isIn(notched, beside(inWall[i], outward, side)),
      ),
  ).length;
  const cut = inWall.filter((p) => !isIn(whole, p)).length;
  return {
    flaws: flawsOf([
      [off > PLACE, 'rim-off-center', off, PLACE],
      [wrong > 0, 'tick-missing', wrong, 0],
      [cut > 0, 'tick-too-deep', cut, 0],
    ]),
    measured: { rimOffMm: off },
  };
}
