/** Measures a wire form on sections of its mesh against the bent wire, not against its own plan. */
import { arcOf, segmentsOf, sweep } from '../../geometry/arcpath.js';
import { asRegion, offset, subtract } from '../../geometry/clip.js';
import { areaOf, circleRing, type Region } from '../../geometry/ring.js';
import { bentFor } from '../../mass/wire-bent.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { JigWork } from '../jig.js';
import type { WireForm } from './make.js';
import type { WireFormSetup } from './setup.js';

const PLACE = 0.02; // mm
const GENTLE_DEG = 3; // bends this slight are made by hand
const SLIVER_MM2 = 1e-3;

/**
 * Every bend of the wire has a round of its own inside radius and middle: a bore through the board,
 * or a peg that stands on it.
 */
export function checkWireForm(
  kernel: SolidKernel,
  jig: WireForm,
  { pattern, body, materials }: Pick<JigWork, 'pattern' | 'body' | 'materials'>,
  { boardMm, pegHeightMm, pinClearanceMm, leastPrintedPegMm }: WireFormSetup,
): JigCheck {
  const wire = bentFor(pattern, body.shape, materials)?.wire;
  const solid = { kind: 'mesh', mesh: jig.mesh } as const;
  const [board, above] = sectionsAt(kernel, solid, [boardMm / 3, boardMm + pegHeightMm / 2]);
  const bores = board.flatMap((r) => r.holes.map(asRegion));
  const [left, bottom] = [jig.jigToBlank[12], jig.jigToBlank[14]];
  const bends = wire ? segmentsOf(wire.path).filter((s) => turn(s.bulge) >= GENTLE_DEG) : [];
  const wrong = bends.filter((s) => {
    const { center, radius } = arcOf(s);
    const inside = radius - jig.wireMm / 2;
    const printed = 2 * inside >= leastPrintedPegMm;
    const disk = (r: number): Region =>
      asRegion(
        circleRing([center[0] - left, center[1] - bottom], r, {
          segments: 64,
          circumscribed: true,
        }),
      );
    const there = printed ? above : bores;
    const r = printed ? inside - PLACE : inside + pinClearanceMm / 2 - PLACE;
    return (
      areaOf(subtract([disk(r)], there)) > SLIVER_MM2 ||
      !isNoWider(there, disk(r + 2 * PLACE + 0.02))
    );
  }).length;
  return {
    flaws: flawsOf([
      [!wire, 'peg-missing', 0, 1],
      [wrong > 0, 'peg-missing', wrong, 0],
    ]),
    measured: { bends: bends.length },
  };
}

const turn = (bulge: number): number => (Math.abs(sweep(bulge)) * 180) / Math.PI;

/** Just outside the disk there is some place all round that is not covered: the round is not larger than asked. */
function isNoWider(there: readonly Region[], disk: Region): boolean {
  const rim = subtract(offset([disk], PLACE), [disk]);
  return areaOf(subtract(rim, there)) > 0.2 * areaOf(rim);
}
