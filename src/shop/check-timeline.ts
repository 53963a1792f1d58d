/** What a time line must hold: nothing twice, no work at night, no coat on a wet one. */
import type { Steps } from '../tables/steps.js';
import { type BenchSpan, type Finish, type Shop, STEPS } from './shop.js';

const NEAR = 1e-6; // hours

export function checkTimeline(shop: Shop, steps: Steps): string[] {
  const { timeline, finishes, benchHoursPerDay } = shop;
  const rank = ({ step, finish }: BenchSpan): number => STEPS.indexOf(step) + (finish ?? 0) / 1e6;
  return [
    ...timeline.flatMap((span, i) => {
      const before = timeline[i - 1];
      const name = `time line, ${span.step} on day ${span.day}`;
      return [
        ...(span.endH > span.startH ? [] : [`${name}: takes no time`]),
        ...(!before || span.startH >= before.endH - NEAR ? [] : [`${name}: begins too early`]),
        ...(!before || rank(span) >= rank(before) ? [] : [`${name}: out of order`]),
        ...checkSpan(span, benchHoursPerDay).map((c) => `${name}: ${c}`),
      ];
    }),
    ...finishes.flatMap((finish, i) => checkCoat(shop, { finish, index: i, steps })),
  ];
}

function checkSpan(span: BenchSpan, benchHours: number): string[] {
  const { kind, startH, endH, handsOnMin, waitH, day } = span;
  const morning = 24 * (day - 1);
  const hours = endH - startH;
  if (kind === 'wait')
    return handsOnMin === 0 && Math.abs(waitH - hours) <= NEAR ? [] : ['a wait that is work'];
  return [
    ...(startH >= morning - NEAR && endH <= morning + benchHours + NEAR
      ? []
      : ['work outside the bench hours']),
    ...(waitH === 0 && Math.abs(handsOnMin / 60 - hours) <= NEAR ? [] : ['hands idle at work']),
  ];
}

/** All its pots are worked, whole, and it dries before anything follows. */
function checkCoat(
  { timeline }: Shop,
  {
    finish,
    index,
    steps,
  }: { readonly finish: Finish; readonly index: number; readonly steps: Steps },
): string[] {
  const spans = timeline.filter((s) => s.finish === index && s.kind === 'work');
  const minutes = spans.reduce((sum, s) => sum + s.handsOnMin, 0);
  const mixing = finish.pots.length * steps.mix.minutes;
  const end = Math.max(...spans.map((s) => s.endH));
  const later = timeline.filter((s) => s.kind === 'work' && s.startH > end - NEAR);
  const wet = later.some(
    (s) => s.startH < end + (s.step === 'coat' ? finish.dryHours : finish.cureHours) - NEAR,
  );
  const name = `time line, ${finish.name} ${finish.coat}`;
  return [
    ...(Math.abs(minutes - finish.lures * finish.minutesPerLure - mixing) <= 60 * NEAR
      ? []
      : [`${name}: ${minutes} min of work`]),
    ...(wet ? [`${name}: not dry`] : []),
    ...(finish.parts && !wholePots(spans, finish, steps) ? [`${name}: a pot over night`] : []),
  ];
}

/** Pots in their order fill the stretches of a coat without one being cut. */
function wholePots(spans: readonly BenchSpan[], { pots }: Finish, steps: Steps): boolean {
  let [span, used] = [0, 0];
  for (const pot of pots) {
    if (span < spans.length && Math.abs(used - spans[span].handsOnMin) <= 60 * NEAR)
      [span, used] = [span + 1, 0];
    used += pot.minutes + steps.mix.minutes;
    if (span >= spans.length || used > spans[span].handsOnMin + 60 * NEAR) return false;
  }
  return true;
}
