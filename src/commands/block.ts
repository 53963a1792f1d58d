/** A block or a blank of the maker's own on the scale: its density, and the depth to drill in it. */

import { type Floating, reballasted } from '../afloat/floating.js';
import { type DepthFor, depthFor } from '../ballast/depth-for.js';
import { sawnMass } from '../blank/sawn-mass.js';
import { type TimberDensity, weighedDensity } from '../blank/timber-density.js';
import type { Attitude } from '../float/attitude.js';
import { trimmed } from '../formats/number.js';
import type { Job } from '../job.js';
import { isSawnFrom } from '../lures.js';
import type { Pattern } from '../pattern/pattern.js';
import { DENSITY_RANGE } from '../pattern/run.js';
import { ArgumentProblem, numberOf } from './arguments.js';
import { depthText, leanText, refusalText } from './ballast-words.js';
import { lying } from './float-table.js';
import { assertOneLure } from './one-lure.js';

export type BlockOptions = {
  readonly blockMass?: string;
  readonly blockSize?: string;
  readonly block?: string;
  readonly blankMass?: string;
};

const MASS = { least: 0.1, most: 1e6 };

/** What was weighed, and which lures it can be for. */
export type AtHandTimber = {
  readonly timber: TimberDensity;
  readonly fits: (pattern: Pattern) => boolean;
};

/** Density of the timber on the scale; null when none was weighed. @throws ArgumentProblem */
export function timberAtHand(
  options: BlockOptions,
  job: Job,
  planned: readonly Floating[],
): AtHandTimber | null {
  const blockG = numberOf('--block-mass', options.blockMass, MASS);
  const blankG = numberOf('--blank-mass', options.blankMass, MASS);
  if (blockG !== null && blankG !== null)
    throw new ArgumentProblem('--block-mass and --blank-mass both say what was weighed: give one.');
  if (blockG === null && (options.blockSize !== undefined || options.block !== undefined))
    throw new ArgumentProblem('--block-size and --block go with --block-mass.');
  if (blockG !== null) {
    const { volumeMm3, fits } = weighedBlock(options, job);
    if (!job.orders.some(({ pattern }) => fits(pattern)))
      throw new ArgumentProblem('--block-mass: no lure here is sawn from such a block.');
    return { timber: dense('--block-mass', blockG, volumeMm3), fits };
  }
  if (blankG === null) return null;
  assertOneLure(job, '--blank-mass');
  const [{ blank, timber }] = planned;
  const slotIsCut = job.workshop?.saw.cutsLipSlot ?? false;
  const { volumeMm3 } = sawnMass(blank, timber, { slotIsCut });
  return { timber: dense('--blank-mass', blankG, volumeMm3), fits: () => true };
}

function dense(option: string, massG: number, volumeMm3: number): TimberDensity {
  const densityKgM3 = (massG / volumeMm3) * 1e6;
  const { leastKgM3, mostKgM3 } = DENSITY_RANGE;
  if (densityKgM3 < leastKgM3 || densityKgM3 > mostKgM3) {
    const [least, most] = [leastKgM3, mostKgM3].map((d) => trimmed((d * volumeMm3) / 1e6, 1));
    throw new ArgumentProblem(
      `${option} ${trimmed(massG, 1)} g makes a timber of ${trimmed(densityKgM3, 0)} kg/m³; no wood is so. Between ${least} and ${most} g is possible: check the scale and the size.`,
    );
  }
  return weighedDensity(densityKgM3, 'weighed blocks');
}

const SIDE = { least: 1, most: 6000 };

type Weighed = { readonly volumeMm3: number } & Pick<AtHandTimber, 'fits'>;

function weighedBlock({ blockSize, block }: BlockOptions, { workshop }: Job): Weighed {
  if (blockSize !== undefined) {
    const sides = blockSize.split(/[x×]/);
    if (sides.length !== 3)
      throw new ArgumentProblem(
        `--block-size is "${blockSize}": write length x width x thickness in mm, as 420x92x20.`,
      );
    const volumeMm3 = sides.reduce((v, side) => v * (numberOf('--block-size', side, SIDE) ?? 0), 1);
    return { volumeMm3, fits: () => true };
  }
  const blocks = workshop?.blocks ?? [];
  const named = block === undefined ? blocks : blocks.filter((b) => b.name === block);
  if (named.length !== 1) {
    const known = blocks.map((b) => b.name).join(', ');
    throw new ArgumentProblem(
      blocks.length === 0
        ? '--block-mass needs the block’s size: add --block-size LENGTHxWIDTHxTHICKNESS in mm, or weigh the sawn blank and give --blank-mass.'
        : block === undefined
          ? `--block-mass: say which block with --block NAME (${known}), or give its --block-size.`
          : `--block: there is no block ${block}; the run has ${known}.`,
    );
  }
  const [{ lengthMm, widthMm, thicknessMm, timber }] = named;
  return {
    volumeMm3: lengthMm * widthMm * thicknessMm,
    fits: (pattern) => isSawnFrom(pattern, { timber, thicknessMm }),
  };
}

export type Redrilled = {
  readonly planned: Floating;
  readonly now: Floating;
  readonly found: DepthFor;
  /** With the new depths; null where there are none. */
  readonly after: Attitude | null;
};

/** Depths that make the lure of this very timber weigh what was planned, and how it then lies. */
export function redrilled(planned: Floating, now: Floating): Redrilled {
  const found = depthFor(now.piece, now.pattern.ballast, planned.lure.massG);
  const after = found.kind === 'depths' ? reballasted(now, found.holes).attitudes[0] : null;
  return { planned, now, found, after };
}

export const blockData = (redrills: readonly Redrilled[], { densityKgM3 }: TimberDensity) => ({
  densityKgM3,
  lures: redrills.map(({ planned, now, found, after }) => ({
    name: now.pattern.name,
    plannedDensityKgM3: planned.timber.densityKgM3,
    plannedMassG: planned.lure.massG,
    ...found,
    attitude: after,
  })),
});

export function blockText(redrills: readonly Redrilled[], { densityKgM3 }: TimberDensity): string {
  const head = `This timber is ${trimmed(densityKgM3, 0)} kg/m³. So that the lure weighs what was planned:`;
  return [head, ...redrills.map(redrillText)].join('\n');
}

function redrillText({ planned, now, found, after }: Redrilled): string {
  const name = `  ${now.pattern.name} (planned for ${trimmed(planned.timber.densityKgM3, 0)})`;
  switch (found.kind) {
    case 'nothing-to-change':
      return `${name}: it has no poured hole whose depth could change.`;
    case 'refused':
      return `${name}: no depth does it; ${refusalText(found.refusal)}.`;
    case 'depths': {
      const holes = found.holes.map(
        (hole, k) =>
          `drill ${depthText(hole)} instead of ${trimmed(now.pattern.ballast[k].depthMm, 1)} at station ${trimmed(hole.stationMm, 1)} mm${leanText(hole)}`,
      );
      const lies = after ? ` It then lies: ${lying(after)}.` : '';
      return `${name}: ${holes.join(' and ')}.${lies}`;
    }
  }
}
