/** The plan of a run, told as a nest. */
import { movedRing } from '../geometry/ring.js';
import { assertAsked } from './asked.js';
import type { Order, Step } from './draft.js';
import type { Spot } from './fill.js';
import { fitObstacles } from './fit.js';
import { bestPlan, type Plan } from './improve.js';
import { kitFor } from './kit.js';
import type { Block, Nest, NestEffort, NestFace, NestPart, NestRules, Placement } from './nest.js';
import { type Packer, packerFor } from './packer.js';
import type { Search } from './search.js';
import { shortages } from './shortage.js';
import { stackHeightMm } from './stack.js';

/** An order that can be planned again and again with other effort. */
export type Planner = {
  readonly plan: (effort: NestEffort, search: Search) => Nest;
  /** See `Nest.limitRatios`. */
  readonly limitRatios: () => Readonly<Record<string, number>>;
};

/** @throws Fault if two parts or two block entries have the same name, or a number is none an order can have. */
export function planner(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
): Planner {
  assertAsked(parts, blocks, rules);
  const kit = kitFor(parts, rules);
  return {
    plan: (effort, search) => {
      const asked = { ...rules, ...effort };
      const packer = packerFor(parts, asked, { kit, shouldStop: search.shouldStop });
      const order = { packer, parts, blocks, rules: asked };
      return nestOf(order, bestPlan(order, search));
    },
    limitRatios: () => Object.fromEntries(parts.map((p, i) => [p.id, kit.limitRatio(i)])),
  };
}

/**
 * Nests an order on the blocks there are, so that the blocks cost least (see `Block.costEach`), and
 * of plans that cost the same, has few faces to trace and few stacks to saw.
 *
 * Of each part at least the ordered blanks are made while timber is there and the part fits; more
 * only because all layers of a stack are sawn at once. What can not be made is told in `missing`
 * and, with the reason, in `obstacles`.
 * @throws Fault if two parts or two block entries have the same name, or a number is none an order can have.
 */
export function planNest(
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
  search: Search,
): Nest {
  return planner(parts, blocks, rules).plan(rules, search);
}

function nestOf(order: Order, { steps, missing, timber }: Plan): Nest {
  const { packer, parts, blocks, rules } = order;
  const byPart = (count: (part: number) => number): Record<string, number> =>
    Object.fromEntries(parts.map((p, i) => [p.id, count(i)]));
  const sum = (of: (step: Step) => number): number => steps.reduce((s, step) => s + of(step), 0);
  const blocksUsed = (name: string): number =>
    steps
      .flatMap((s) => s.stacks)
      .flatMap((mix) => mix.blocks.map((b) => (b.block === name ? b.count * mix.copies : 0)))
      .reduce((s, n) => s + n, 0);
  const faces = steps.map((step, i) => faceOf(order, step, i + 1));
  const timberMm2 = sum(
    (s) => s.layers * s.copies * s.option.like.lengthMm * s.option.like.widthMm,
  );
  const blanksMm2 = sum((s) => s.layers * s.copies * s.layout.areaMm2);
  return {
    faces,
    made: byPart((part) => sum((s) => s.counts[part] * s.layers * s.copies)),
    ordered: byPart((part) => parts[part].orderedCount),
    missing: Object.fromEntries(
      parts.flatMap((p, i) => (missing[i] > 0 ? [[p.id, missing[i]]] : [])),
    ),
    stacks: sum((s) => s.copies),
    blocksUsed: Object.fromEntries(blocks.map((b) => [b.name, blocksUsed(b.name)])),
    usedRatio: timberMm2 > 0 ? blanksMm2 / timberMm2 : 0,
    limitRatios: {},
    obstacles: [
      ...fitObstacles(packer.kit.set, parts, blocks, rules),
      ...shortages(order, missing),
    ],
    ...timber,
  };
}

function faceOf({ packer, rules }: Order, step: Step, id: number): NestFace {
  const { lengthMm, widthMm, thicknessMm, marginMm } = step.option.like;
  const { gapMm, tapeThicknessMm } = rules;
  const fromMm = Math.min(lengthMm, step.layout.usedLengthMm + gapMm);
  const leftOf = ({ shape, x }: Spot): number => x + packer.kit.set.shapes[shape].box[0];
  const spots = [...step.layout.spots].sort((a, b) => leftOf(a) - leftOf(b) || a.y - b.y);
  return {
    id,
    lengthMm,
    widthMm,
    thicknessMm,
    marginMm,
    gapMm,
    layers: step.layers,
    copies: step.copies,
    stacks: step.stacks,
    stackHeightMm: stackHeightMm(step.layers, thicknessMm, tapeThicknessMm),
    ...step.option.flaws,
    placements: spots.map((spot) => placed(packer, spot)),
    usedRatio: step.layout.areaMm2 / (lengthMm * widthMm),
    offcut: { fromMm, lengthMm: lengthMm - fromMm },
  };
}

function placed({ kit }: Packer, { shape, x, y }: Spot): Placement {
  const { part, turnDeg, outline } = kit.set.shapes[shape];
  const onFace = movedRing({ turnDeg: 0, move: [x, y] }, outline);
  return { part, xMm: x, yMm: y, turnDeg, outline: onFace };
}
