/** What to make, from what, and who has the last word. */
import { column, note, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inline, Section } from '../document.js';
import { at, each, type Place } from '../place.js';
import type { RecordedPattern, SheetRecord } from '../record.js';
import { count, free, mm, say, strong, TICK } from '../say.js';
import { TEXTS } from '../texts.js';

const { head } = TEXTS;

/** @param hash of build.json, as many of its digits as tell it apart */
export function headSection(
  record: Place<SheetRecord>,
  hash: string,
  steps: readonly Section[],
): Section {
  const { inches } = record.value.shop;
  const madeBy: readonly Inline[] = say(head.made, {
    tool: free(at(record, 'tool')),
    hash: { kind: 'hash', text: hash },
  });
  return {
    id: 'head',
    step: null,
    name: say(head.heading),
    heading: say(head.heading),
    newPage: false,
    blocks: [
      paragraph(madeBy),
      paragraph(say(head.about)),
      ...(inches ? [paragraph(say(head.inches))] : []),
      paragraph(strong(say(TEXTS.comes))),
      ...note(head.note, record.value.note),
      orders(record),
      ...each(at(record, 'patterns')).flatMap((pattern) =>
        note(pattern.value.name, pattern.value.note),
      ),
      paragraph(say(head.written, { maker: line(40), begun: line(30), ended: line(30) })),
      stepList(steps),
    ],
  };
}

const line = (widthMm: number): Inline => ({ kind: 'line', widthMm });

function orders(record: Place<SheetRecord>): Block {
  const c = head.columns;
  const shop = each(at(at(record, 'shop'), 'patterns'));
  return table(
    [
      TICKS,
      column(c.pattern, 2.2),
      column(c.version, 1),
      numbers(c.lengthMm, 1.2),
      numbers(c.count, 0.9),
      ...(record.value.kind === 'run' ? [numbers(c.sawn, 0.9)] : []),
      column(c.timber, 2.4),
      numbers(c.blockMm, 1.3),
    ],
    each(at(record, 'patterns')).map((pattern: Place<RecordedPattern>, i) => [
      [TICK],
      strong([free(at(pattern, 'name'))]),
      [free(at(pattern, 'version'))],
      [mm(at(pattern, 'lengthMm'), 'given', '')],
      strong([count(at(shop[i], 'count'))]),
      ...(record.value.kind === 'run' ? [[count(at(shop[i], 'sawnCount'))]] : []),
      [free(at(pattern, 'timber'))],
      [mm(at(pattern, 'blockThicknessMm'), 'given', '')],
    ]),
  );
}

const stepList = (steps: readonly Section[]): Block => ({
  kind: 'list',
  title: say(head.steps),
  items: steps
    .filter(({ step }, i) => steps.findIndex((other) => other.step === step) === i)
    .map(({ name }) => name),
});
