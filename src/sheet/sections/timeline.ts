/** When the batch is where: work at the bench, and waiting while it dries. */
import type { BenchSpan, Shop } from '../../shop/shop.js';
import { column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import { count, free, quantity, say, strong, TICK, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { timeline } = TEXTS;

export function timelineSection(shop: Place<Shop>, step: number): Section {
  const c = timeline.columns;
  return {
    id: 'timeline',
    step,
    name: say(timeline.heading),
    heading: say(timeline.heading),
    newPage: false,
    blocks: [
      paragraph(
        say(timeline.about, { hours: quantity(at(shop, 'benchHoursPerDay'), 'given', 'h') }),
      ),
      table(
        [
          TICKS,
          numbers(c.day, 0.6),
          column(c.step, 3.2),
          numbers(c.from, 1),
          numbers(c.to, 1.3),
          numbers(c.work, 1.2),
          numbers(c.wait, 1.2),
        ],
        each(at(shop, 'timeline')).map((span) => row(span, shop)),
      ),
    ],
  };
}

function row(span: Place<BenchSpan>, shop: Place<Shop>): readonly Inlines[] {
  const works = span.value.kind === 'work';
  const step = called(span, shop);
  return [
    works ? [TICK] : say(TEXTS.dash),
    [count(at(span, 'day'))],
    works ? strong(step) : say(timeline.waits, { step }),
    [quantity(at(span, 'startH'), 'hour-1')],
    until(span),
    works ? [quantity(at(span, 'handsOnMin'), 'fixed-0')] : say(TEXTS.dash),
    works ? say(TEXTS.dash) : [quantity(at(span, 'waitH'), 'fixed-1')],
  ];
}

/** The hour at which it ends, and the day where that is a later one. */
function until(span: Place<BenchSpan>): Inlines {
  const end = at(span, 'endH');
  const [day, hour] = [quantity(end, 'day'), quantity(end, 'hour-1')];
  return day.text === String(span.value.day) ? [hour] : say(timeline.later, { day, hour });
}

function called(span: Place<BenchSpan>, shop: Place<Shop>): Inlines {
  const words = word(timeline.steps, span.value.step);
  const index = present(at(span, 'finish'));
  if (!index) return say(words);
  const finish = each(at(shop, 'finishes'))[index.value];
  return say(words, { name: free(at(finish, 'name')), coat: count(at(finish, 'coat')) });
}
