/** A block or a blank of the maker's own on the scale: its density, and the depth to drill in it. */

import type { Floating } from '../afloat/floating.js';
import { type DepthFor, depthFor } from '../ballast/depth-for.js';
import { sawnMass } from '../blank/sawn-mass.js';
import { type TimberDensity, weighedDensity } from '../blank/timber-density.js';
import { trimmed } from '../formats/number.js';
import type { Job } from '../job.js';
import { DENSITY_RANGE } from '../pattern/run.js';
import { ArgumentProblem, numberOf } from './arguments.js';
import { refusalText } from './ballast-words.js';
import { table } from './table.js';

export type BlockOptions = {
  readonly blockMass?: string;
  readonly blockSize?: string;
  readonly block?: string;
  readonly blankMass?: string;
};

const MASS = { least: 0.1, most: 1e6 };

/** Density of the timber on the scale; null when none was weighed. @throws ArgumentProblem */
export function timberAtHand(
  options: BlockOptions,
  job: Job,
  planned: readonly Floating[],
): TimberDensity | null {
  const blockG = numberOf('--block-mass', options.blockMass, MASS);
  const blankG = numberOf('--blank-mass', options.blankMass, MASS);
  if (blockG !== null && blankG !== null)
    throw new ArgumentProblem('--block-mass and --blank-mass both say what was weighed: give one.');
  if (blockG === null && (options.blockSize !== undefined || options.block !== undefined))
    throw new ArgumentProblem('--block-size and --block go with --block-mass.');
  if (blockG !== null) return dense('--block-mass', blockG, blockVolumeMm3(options, job));
  if (blankG === null) return null;
  if (planned.length > 1)
    throw new ArgumentProblem('--blank-mass is about one lure: name its pattern file.');
  const [{ blank, timber }] = planned;
  const slotIsCut = job.workshop?.saw.cutsLipSlot ?? false;
  const { volumeMm3 } = sawnMass(blank, timber, { slotIsCut });
  return dense('--blank-mass', blankG, volumeMm3);
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

function blockVolumeMm3({ blockSize, block }: BlockOptions, { workshop }: Job): number {
  if (blockSize !== undefined) {
    const sides = blockSize.split(/[x×]/);
    if (sides.length !== 3)
      throw new ArgumentProblem(
        `--block-size is "${blockSize}": write length x width x thickness in mm, as 420x92x20.`,
      );
    return sides.reduce((v, side) => v * (numberOf('--block-size', side, SIDE) ?? 0), 1);
  }
  const blocks = workshop?.blocks ?? [];
  const named = block === undefined ? blocks : blocks.filter((b) => b.name === block);
  if (named.length !== 1) {
    const known = blocks.map((b) => b.name).join(', ');
    throw new ArgumentProblem(
      blocks.length === 0
        ? '--block-mass needs the block’s size: add --block-size LENGTHxWIDTHxTHICKNESS in mm, or weigh the sawn blank and give --blank-mass.'
        : `--block-mass: say which block with --block NAME (${known}), or give its --block-size.`,
    );
  }
  const [{ lengthMm, widthMm, thicknessMm }] = named;
  return lengthMm * widthMm * thicknessMm;
}

const redrilled = (planned: Floating, now: Floating): DepthFor =>
  depthFor(now.piece, now.pattern.ballast, planned.lure.massG);

/** What a block of this density asks for, lure by lure. */
export const blockData = (
  planned: readonly Floating[],
  lures: readonly Floating[],
  { densityKgM3 }: TimberDensity,
) => ({
  densityKgM3,
  lures: lures.map((now, i) => ({
    name: now.pattern.name,
    plannedDensityKgM3: planned[i].timber.densityKgM3,
    plannedMassG: planned[i].lure.massG,
    ...redrilled(planned[i], now),
  })),
});

export function blockText(
  planned: readonly Floating[],
  lures: readonly Floating[],
  { densityKgM3 }: TimberDensity,
): string {
  const head = `This timber is ${trimmed(densityKgM3, 0)} kg/m³; planned for ${[...new Set(planned.map((p) => trimmed(p.timber.densityKgM3, 0)))].join(', ')}. So that the lure weighs what was planned:`;
  const rows = lures.flatMap((now, i) => {
    const found = redrilled(planned[i], now);
    const { name } = now.pattern;
    if (found.kind === 'nothing-to-change')
      return [[name, 'no poured hole whose depth could change', '']];
    if (found.kind === 'refused') return [[name, refusalText(found.refusal), '']];
    return found.holes.map((hole, k) => [
      k === 0 ? name : '',
      `hole at ${trimmed(hole.stationMm, 1)} mm: drill ${trimmed(hole.depthMm, 1)} mm`,
      `instead of ${trimmed(now.pattern.ballast[k].depthMm, 1)} mm`,
    ]);
  });
  return `${head}\n${table(['lure', 'drill', ''], rows)}`;
}
