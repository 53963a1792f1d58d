/** Cuts a jig that is longer than the bed into pieces that fit it. */
import { meshBox, meshVolume, reshaped } from '../../geometry/mesh.js';
import type { Csg } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { translation } from '../../solid/placement.js';
import { between, boreAcross, type Whole, wholeOf } from './across.js';
import { planSplit } from './plan.js';
import {
  boreDepthMm,
  boreRadiusMm,
  type DowelSetup,
  type Joint,
  type Piece,
  type SplitOrder,
  type SplitOutcome,
  type SplitProblemCode,
} from './split.js';

/**
 * Cuts the solid into the fewest pieces that can be found, at planes outside of `keepWholeMm` that
 * give dowels room: two to a joint, or one where no choice of planes has room for two.
 */
export function splitForBed(kernel: SolidKernel, order: SplitOrder): SplitOutcome {
  const { bed, dowel } = order;
  const whole = wholeOf(order.mesh);
  const [lengthMm, widthMm, heightMm] = [0, 1, 2].map((k) => whole.max[k] - whole.min[k]);
  const mostPieceMm = longestOn(bed, widthMm);
  if (heightMm > bed.zMm) return refused('split-too-high', { needZMm: heightMm, bedZMm: bed.zMm });
  if (mostPieceMm === 0) {
    return refused('split-too-wide', { needYMm: widthMm, bedXMm: bed.xMm, bedYMm: bed.yMm });
  }
  const { joints, why } = planSplit(kernel, whole, { ...order, mostPieceMm });
  if (joints)
    return { split: { pieces: cut(kernel, whole, joints, dowel), joints }, problem: null };
  const { diameterMm: dowelDiameterMm, lengthMm: dowelLengthMm, wallMm } = dowel;
  return refused('split-no-plane', {
    lengthMm,
    mostPieceMm,
    dowelDiameterMm,
    dowelLengthMm,
    wallMm,
    ...why,
  });
}

/** The longest piece of this width that lies on the bed one way or the other; 0 if none does. */
const longestOn = (bed: SplitOrder['bed'], widthMm: number): number =>
  Math.max(widthMm <= bed.yMm ? bed.xMm : 0, widthMm <= bed.xMm ? bed.yMm : 0);

const refused = (
  code: SplitProblemCode,
  facts: Readonly<Record<string, number>>,
): SplitOutcome => ({ split: null, problem: { code, facts } });

function cut(
  kernel: SolidKernel,
  whole: Whole,
  joints: readonly Joint[],
  dowel: DowelSetup,
): Piece[] {
  const ends = [whole.min[0], ...joints.map((j) => j.xMm), whole.max[0]];
  return ends.slice(1).map((toX, i) => {
    const bores = joints.slice(Math.max(0, i - 1), i + 1).flatMap((joint) => boresOf(joint, dowel));
    return pieceOf(kernel, between(whole, ends[i], toX), bores);
  });
}

/** Each bore goes as deep into the piece before the cut as into the one after it. */
const boresOf = ({ xMm, dowels }: Joint, dowel: DowelSetup): Csg[] =>
  dowels.map(([, y, z]) => boreAcross([y, z], xMm, boreRadiusMm(dowel), boreDepthMm(dowel)));

function pieceOf(kernel: SolidKernel, uncut: Csg, bores: readonly Csg[]): Piece {
  const bored = evaluate(kernel, { kind: 'subtract', from: uncut, parts: bores });
  const [low] = meshBox(bored);
  // Moved as numbers, so that the lowest corners come to lie on 0 and not a rounding beside it.
  const mesh = reshaped(
    bored,
    bored.positions.map((v, i) => Math.fround(v - low[i % 3])),
  );
  return {
    mesh,
    toWhole: translation(...low),
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
  };
}
