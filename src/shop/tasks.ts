/** What is done at the bench for the whole run, and how long it takes. */
import type { Steps } from '../tables/steps.js';
import type { Finish, ShopPattern, StepName } from './shop.js';
import type { ShopWork } from './work.js';

/** One step of the batch. */
export type Task = {
  readonly step: StepName;
  /** Place in `finishes`; null for what is no coat. */
  readonly finish: number | null;
  readonly minutes: number;
  /** Pots, in minutes each, mixing included; null for work that may stop anywhere. */
  readonly pots: readonly number[] | null;
  /** Before the next step. */
  readonly waitHours: number;
  /** Of a coat: before any step that is no coat. */
  readonly cureHours: number;
};

/** In the order of the batch; a step with nothing to do is left out. */
export function tasksOf(
  work: Pick<ShopWork, 'nest' | 'materials' | 'slotIsCut'>,
  patterns: readonly ShopPattern[],
  finishes: readonly Finish[],
): Task[] {
  const { steps } = work.materials;
  const counts = countsOf(work, patterns);
  const task = (step: Exclude<StepName, 'coat'>): Task => ({
    step,
    finish: null,
    minutes: counts[step] * steps[step].minutes,
    pots: null,
    waitHours: counts[step] > 0 ? steps[step].waitHours : 0,
    cureHours: 0,
  });
  const before = ['tape', 'trace', 'saw', 'slot', 'drill', 'pour', 'weights'] as const;
  return [
    ...before.map(task),
    task('round-over'),
    task('sand'),
    ...finishes.map((finish, i) => coatTask(finish, i, steps)),
    task('wire'),
    task('glue'),
    task('rig'),
    task('tub'),
  ].filter((t) => t.minutes > 0 || t.waitHours > 0);
}

function coatTask(finish: Finish, index: number, steps: Steps): Task {
  const pots = finish.parts && finish.pots.map((pot) => steps.mix.minutes + pot.minutes);
  return {
    step: 'coat',
    finish: index,
    minutes: pots ? pots.reduce((s, p) => s + p, 0) : finish.lures * finish.minutesPerLure,
    pots,
    waitHours: finish.dryHours,
    cureHours: finish.cureHours,
  };
}

/** How often each step is done. A single pattern is one blank, traced and sawn by itself. */
function countsOf(
  { nest, slotIsCut }: Pick<ShopWork, 'nest' | 'slotIsCut'>,
  patterns: readonly ShopPattern[],
): Readonly<Record<Exclude<StepName, 'coat'>, number>> {
  const faces = nest?.faces ?? [];
  const lures = (of: (p: ShopPattern) => number): number =>
    patterns.reduce((sum, p) => sum + p.count * of(p), 0);
  const one = (is: boolean): number => (is ? 1 : 0);
  return {
    trace: nest ? faces.length : 1,
    tape: faces.reduce((sum, f) => sum + (f.layers > 1 ? f.copies : 0), 0),
    saw: nest ? faces.reduce((sum, f) => sum + f.copies * f.placements.length, 0) : 1,
    slot: slotIsCut ? 0 : lures((p) => one(p.slot !== null)),
    drill: lures((p) => p.drilling.length),
    pour: lures((p) => p.ballast.filter((b) => b.pour !== null).length),
    weights: lures((p) => p.ballast.filter((b) => b.pour === null).length),
    'round-over': lures((p) => one(p.roundOver.bitMm > 0)),
    sand: lures(() => 1),
    wire: lures((p) => one(p.wire !== null)),
    glue: lures((p) => one(p.wire !== null || p.slot !== null)),
    rig: lures((p) => one(hasFittings(p))),
    tub: lures(() => 1),
  };
}

const hasFittings = ({ hardware }: ShopPattern): boolean =>
  hardware.some(({ what }) => what === 'screw-eye' || what === 'ring' || what === 'treble');
