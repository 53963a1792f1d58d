/** How long the steps at the bench take, from shared/steps.yaml. */
import { z } from 'zod';

/** What each step is counted by. `outline`: each outline sawn in each stack. */
const COUNTED = {
  trace: 'face',
  tape: 'stack',
  saw: 'outline',
  slot: 'lure',
  drill: 'hole',
  pour: 'hole',
  weights: 'hole',
  'round-over': 'lure',
  sand: 'lure',
  mix: 'pot',
  wire: 'lure',
  glue: 'lure',
  rig: 'lure',
  tub: 'lure',
} as const;

export type StepRowName = keyof typeof COUNTED;

const minutes = (per: string) =>
  z.number().min(0).max(600).describe(`Hands-on minutes for each ${per}.`);
const waitHours = z
  .number()
  .min(0)
  .max(1000)
  .describe('Wait after it before the next step: metal cools, glue cures.');

const row = <Per extends string>(per: Per) =>
  z.strictObject({
    per: z.literal(per),
    minutes: minutes(per),
    waitHours: waitHours.default(0),
    source: z.string().min(1).max(400),
  });

const changes = (about: string, per: string) =>
  z
    .strictObject({ minutes: minutes(per).optional(), waitHours: waitHours.optional() })
    .optional()
    .describe(about);

const ABOUT: Readonly<Record<StepRowName, string>> = {
  trace: 'Glue or trace the layout on a face.',
  tape: 'Tape the blocks of a stack together.',
  saw: 'Saw an outline out of a stack.',
  slot: 'Saw the lip slot of a blank.',
  drill: 'Drill a hole: ballast, screw eye or wire.',
  pour: 'Pour a ballast hole, topping up included.',
  weights: 'Glue a ready-made weight or a rod into its hole and close it.',
  'round-over': 'Run the router round a blank.',
  sand: 'Shape and sand a body to its gauges.',
  mix: 'Measure and mix a pot of a two-part coat.',
  wire: 'Cut and bend a through-wire.',
  glue: 'Glue lip and wire into a lure.',
  rig: 'Put eyes, rings and hooks on a lure.',
  tub: 'Look at a lure in the tub.',
};

const NAMES = Object.keys(COUNTED) as StepRowName[];

/** One entry a step. */
const perStep = <T>(of: (name: StepRowName) => T): Record<StepRowName, T> =>
  Object.fromEntries(NAMES.map((name) => [name, of(name)])) as Record<StepRowName, T>;

export const stepTable = z.strictObject({
  steps: z.strictObject(perStep((name) => row(COUNTED[name]))),
});

export type StepRow = {
  readonly per: (typeof COUNTED)[StepRowName];
  readonly minutes: number;
  readonly waitHours: number;
  readonly source: string;
};
export type Steps = Readonly<Record<StepRowName, StepRow>>;

/** `materials.steps` of a run file. */
export const stepOverrides = z.strictObject(perStep((name) => changes(ABOUT[name], COUNTED[name])));

/** The table with a run's own times in; what a step does not give stays as it was. */
export const stepsWith = (steps: Steps, own: z.output<typeof stepOverrides>): Steps =>
  perStep((name) => {
    const { minutes = steps[name].minutes, waitHours = steps[name].waitHours } = own[name] ?? {};
    return { ...steps[name], minutes, waitHours };
  });
