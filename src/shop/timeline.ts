/** When what is done: the whole batch, step by step, over bench days and nights. */
import { batchStart, dayOf, inPieces, type Stretch, undivided } from './clock.js';
import type { BenchSpan } from './shop.js';
import type { Task } from './tasks.js';

/**
 * One step after the other, for all lures. Work stops at the end of the bench day and goes on the
 * next. A pot is never left over night, and a coat that a bench day holds is begun in the morning if
 * it no longer fits the day. What dries, cools or cures does so at night too, every coat before
 * the lures are rigged; the next step begins when the bench is open again.
 */
export function timelineOf(tasks: readonly Task[], benchHoursPerDay: number): BenchSpan[] {
  const benchMin = 60 * benchHoursPerDay;
  const out: BenchSpan[] = [];
  let [at, curedMin] = [0, 0];
  tasks.forEach((task, i) => {
    const worked = workOf(task, at, benchMin);
    out.push(...worked.map((s) => spanOf(task, 'work', s)));
    at = worked[worked.length - 1]?.toMin ?? at;
    curedMin = Math.max(curedMin, at + 60 * task.cureHours);
    const dryMin = at + 60 * task.waitHours;
    const toMin = tasks[i + 1]?.step === 'coat' ? dryMin : Math.max(dryMin, curedMin);
    if (toMin > at) out.push(spanOf(task, 'wait', { fromMin: at, toMin }));
    at = toMin;
  });
  return out;
}

function workOf({ step, minutes, pots }: Task, at: number, benchMin: number): Stretch[] {
  if (step !== 'coat') return inPieces(at, minutes, benchMin);
  const start = batchStart(at, minutes, benchMin);
  return pots ? undivided(start, pots, benchMin) : inPieces(start, minutes, benchMin);
}

function spanOf(
  { step, finish }: Task,
  kind: BenchSpan['kind'],
  { fromMin, toMin }: Stretch,
): BenchSpan {
  const minutes = toMin - fromMin;
  return {
    step,
    finish,
    kind,
    startH: fromMin / 60,
    endH: toMin / 60,
    handsOnMin: kind === 'work' ? minutes : 0,
    waitH: kind === 'wait' ? minutes / 60 : 0,
    day: dayOf(fromMin),
  };
}
