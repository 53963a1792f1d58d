/** Measures a drying comb on a section of its mesh. */
import { insideRing, type Region } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { DryingComb } from './make.js';
import type { DryingCombSetup } from './setup.js';

const STEP = 0.05; // mm between the places looked at along the row of slots

/**
 * Along the line through the slots' round ends: as many openings as lures, their middles two swings
 * and a gap apart, and half of that from the ends and from the shelf.
 */
export function checkComb(kernel: SolidKernel, jig: DryingComb, setup: DryingCombSetup): JigCheck {
  const [section] = sectionsAt(kernel, { kind: 'mesh', mesh: jig.mesh }, [setup.thicknessMm / 3]);
  const needMm = 2 * jig.swingRadiusMm + setup.gapMm;
  const rowMm = jig.sizeMm[1] - setup.toothMm - setup.dimpleMm / 2;
  const middles = openings(section, rowMm, jig.sizeMm[0]);
  const between = middles.slice(1).map((x, i) => x - middles[i]);
  const ends =
    middles.length === 0 ? [] : [2 * middles[0], 2 * (jig.sizeMm[0] - middles[middles.length - 1])];
  const least = Math.min(...between, ...ends, 2 * (rowMm - setup.shelfMm));
  return {
    flaws: flawsOf([
      [middles.length !== jig.places, 'comb-slots', middles.length, jig.places],
      [!(least >= needMm - 2 * STEP), 'comb-too-near', least, needMm],
    ]),
    measured: { combLeastMm: least },
  };
}

/** Middles of the stretches of a line across the comb where there is no plastic. */
function openings(section: readonly Region[], y: number, lengthMm: number): number[] {
  const isOpen = (x: number) => !section.some((r) => isIn([x, y], r));
  const found: number[] = [];
  let from: number | null = null;
  for (let x = STEP; x < lengthMm; x += STEP) {
    if (isOpen(x) && from === null) from = x;
    if (!isOpen(x) && from !== null) {
      found.push((from + x - STEP) / 2);
      from = null;
    }
  }
  return found;
}

const isIn = (p: Point2, { outer, holes }: Region): boolean =>
  insideRing(p, outer) && !holes.some((hole) => insideRing(p, hole));
