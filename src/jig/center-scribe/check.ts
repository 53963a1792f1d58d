/** Measures a center scribe on sections of its mesh: the height of the rim, the notches on their lines. */
import { insideRegions, type Region } from '../../geometry/ring.js';
import { add, type Point2, quarterLeft, times } from '../../geometry/vec.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { inverse, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { CenterScribe } from './make.js';
import type { CenterScribeSetup } from './setup.js';
import type { Tick } from './ticks.js';

const PLACE = 0.01; // mm
const WALL_LOOKS = 60; // places looked at along a line through the wall

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
  const heights = [rimZ - jig.tickMm / 2, rimZ - jig.tickMm - 0.5];
  const solid = { kind: 'mesh', mesh: jig.mesh } as const;
  const [notched, whole] = sectionsAt(kernel, solid, heights);
  const isIn = (section: readonly Region[], [x, z]: Point2): boolean => {
    const [X, Y] = pointBy(toJig, [x, 0, z]);
    return insideRegions([X, Y], section);
  };
  const { tickMm, clearanceMm, wallMm } = setup;
  // The wall bends: beside a wide notch it stands further in or out.
  const [from, to] = [0 - tickMm, clearanceMm + wallMm + tickMm];
  const ways = Array.from({ length: WALL_LOOKS }, (_, k) => from + ((to - from) * k) / WALL_LOOKS);
  const meetsWall = (section: readonly Region[], { at, outward }: Tick, asideMm: number) => {
    const start = add(at, times(quarterLeft(outward), asideMm));
    return ways.some((way) => isIn(section, add(start, times(outward, way))));
  };
  const half = tickMm / 2;
  const wrong = jig.ticks.filter(
    (tick) =>
      [0, half - PLACE, PLACE - half].some((aside) => meetsWall(notched, tick, aside)) ||
      [half + PLACE, 0 - half - PLACE].some((aside) => !meetsWall(notched, tick, aside)),
  ).length;
  const cut = jig.ticks.filter((tick) => !meetsWall(whole, tick, 0)).length;
  return {
    flaws: flawsOf([
      [off > PLACE, 'rim-off-center', off, PLACE],
      [wrong > 0, 'tick-missing', wrong, 0],
      [cut > 0, 'tick-too-deep', cut, 0],
    ]),
    measured: { rimOffMm: off },
  };
}
