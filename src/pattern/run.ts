/** A run ready to plan, and the rules between the fields of a run file. */
import type { ProblemCode } from '../messages.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { Timbers } from '../tables/timbers.js';
import { timberRule } from './rules.js';
import type { CutterFile, RunFile } from './run-schema.js';

export type RunSections = Partial<RunFile>;

/** Density of a weighed block, kg/m³ (g/mm³ × 10⁶). */
export const blockDensityKgM3 = (b: FileBlock): number | null =>
  b.massG === undefined ? null : (b.massG / (b.lengthMm * b.widthMm * b.thicknessMm)) * 1e6;

/** Lightest balsa to the heaviest woods: common practice, no source. */
export const DENSITY_RANGE = { leastKgM3: 60, mostKgM3: 1350 };

/** What a plan counts one block at (see `timberLeast`); undefined: by its volume. */
export function blockCost(
  block: RunFile['blocks'][number],
  least: RunFile['timberLeast'],
  timbers: Timbers,
): number | undefined {
  switch (least) {
    case 'volume':
      return undefined;
    case 'price':
      return block.priceEach;
    case 'weight':
      return (
        block.massG ??
        block.lengthMm *
          block.widthMm *
          block.thicknessMm *
          timbers[block.timber].densityKgM3 *
          1e-6
      );
  }
}

export function runRules({ blocks = [], timberLeast }: RunSections, timbers: Timbers): Problem[] {
  return blocks.flatMap((block, i) => {
    const path: KeyPath = ['blocks', i];
    const { name, marginMm, lengthMm, widthMm } = block;
    const limitMm = Math.min(lengthMm, widthMm) / 2;
    const density = blockDensityKgM3(block);
    const possible =
      density === null || (density >= DENSITY_RANGE.leastKgM3 && density <= DENSITY_RANGE.mostKgM3);
    return [
      ...timberRule(block.timber, timbers, [...path, 'timber']),
      ...(timberLeast === 'price' && block.priceEach === undefined
        ? [problem('price-missing', path, { name })]
        : []),
      ...(marginMm < limitMm
        ? []
        : [problem('margin-too-wide', [...path, 'marginMm'], { name, marginMm, limitMm })]),
      ...(possible
        ? []
        : [
            problem('density-impossible', [...path, 'massG'], {
              name,
              densityKgM3: density,
              ...DENSITY_RANGE,
            }),
          ]),
      ...flawsOutside(block, path),
      ...(blocks.findIndex((b) => b.name === name) < i
        ? [problem('duplicate-name', [...path, 'name'], { name })]
        : []),
    ];
  });
}

type FileBlock = RunFile['blocks'][number];

/** Flaws whose places do not lie on the face; the lower left corner is held by the schema. */
function flawsOutside(block: FileBlock, path: KeyPath): Problem[] {
  const { name, lengthMm, widthMm } = block;
  const outside = (
    code: ProblemCode,
    at: readonly (string | number)[],
    [xMm, yMm]: readonly [number, number],
  ): Problem[] =>
    xMm <= lengthMm && yMm <= widthMm
      ? []
      : [problem(code, [...path, ...at], { name, xMm, yMm, lengthMm, widthMm })];
  return [
    ...block.knots.flatMap((k, i) => outside('knot-outside-block', ['knots', i], [k.xMm, k.yMm])),
    ...block.splits.flatMap((s, i) => [
      ...outside('split-outside-block', ['splits', i, 'fromMm'], s.fromMm),
      ...outside('split-outside-block', ['splits', i, 'toMm'], s.toMm),
    ]),
    ...block.poorZones.flatMap((z, i) =>
      outside('poor-zone-outside-block', ['poorZones', i], [z.xMm, z.yMm]),
    ),
  ];
}

/** A saw, laser or router as the run describes it. */
export type Cutter = {
  /** steered: a hand leads the cut along the line, kerf on the waste side. follows: the path is the middle of the cut. */
  readonly guidance: 'steered' | 'follows';
  readonly kerfMm: number;
  /** How far a steered cut may stray. */
  readonly wanderMm: number;
  /** Null when the file does not say. */
  readonly bladeWidthMm: number | null;
  readonly cutsLipSlot: boolean;
};

/** `slotWhenOpen`: whether the lip slot is cut when the file leaves that open. */
export const cutterOf = (file: CutterFile, slotWhenOpen: boolean): Cutter => ({
  guidance: file.guidance,
  kerfMm: file.kerfMm,
  wanderMm: file.wanderMm,
  bladeWidthMm: file.bladeWidthMm ?? null,
  cutsLipSlot: file.cutsLipSlot ?? slotWhenOpen,
});
