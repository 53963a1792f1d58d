/** Words of the shop sheet: the batch over its days. */
import type { StepName } from '../../shop/shop.js';

export const timeline = {
  heading: 'Time line of the batch',
  about:
    'Hours count from the start of each bench day, of {hours} at the bench; drying goes on at night. Times are estimates: the data sheets say how long a coat dries in your cold.',
  columns: {
    day: 'Day',
    step: 'Step',
    from: 'From hour',
    to: 'To hour',
    work: 'At the bench, min',
    wait: 'Waiting, h',
  },
  waits: '{step}: wait',
  later: 'day {day}, {hour}',
  steps: {
    trace: 'trace or glue the outlines',
    tape: 'tape the stacks',
    saw: 'saw',
    slot: 'saw the lip slots',
    drill: 'drill',
    pour: 'pour the ballast',
    weights: 'glue in the weights',
    'round-over': 'round over',
    sand: 'sand to the gauges',
    coat: '{name}, coat {coat}',
    wire: 'bend and set the wires',
    glue: 'glue in lips and wires',
    rig: 'rig',
    tub: 'tub test',
  } satisfies Record<StepName, string>,
} as const;
