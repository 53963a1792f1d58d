/** What a lure weighs at every stage, what to do when it does not, and room to write. */
import type { ShopPattern, StageWeight } from '../../shop/shop.js';
import { blank, column, numbers, paragraph, table, together } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import type { SheetRecord } from '../record.js';
import { count, free, g, joined, quantity, say, strong, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { weights } = TEXTS;

export function weightsSection(record: Place<SheetRecord>, step: number): Section {
  const patterns = each(at(at(record, 'shop'), 'patterns'));
  return {
    id: 'weights',
    step,
    name: say(weights.heading),
    heading: say(weights.heading),
    newPage: true,
    blocks: [
      together(paragraph(say(weights.about)), ...patterns.slice(0, 1).map(stages)),
      ...patterns.slice(1).map(stages),
      outside(patterns),
      ...(record.value.kind === 'run' ? [log()] : []),
    ],
  };
}

/** Lures whose weights have room beside the expected. */
const LURES = 4;

function stages(pattern: Place<ShopPattern>): Block {
  const c = weights.columns;
  return table(
    [
      column(c.stage, 1.7),
      numbers(c.mass, 1.2),
      numbers(c.low, 0.9),
      numbers(c.high, 0.9),
      numbers(c.change, 2.1),
      ...Array.from({ length: LURES }, () => blank(say(c.lure), 1)),
    ],
    each(at(pattern, 'weights')).map((stage) => [
      called(at(stage, 'stage')),
      strong([g(at(stage, 'massG'), '')]),
      [g(at(stage, 'lowG'), '')],
      [g(at(stage, 'highG'), '')],
      change(stage),
      ...Array.from({ length: LURES }, () => []),
    ]),
    {
      title: say(weights.title, {
        pattern: free(at(pattern, 'name')),
        count: count(at(pattern, 'count')),
      }),
      forWriting: true,
    },
  );
}

/** The program's own stages in words; a coat is called as it was named. */
const called = (stage: Place<string>): Inlines => {
  const words = weights.stages[stage.value];
  return words === undefined ? [free(stage)] : say(words);
};

function change(stage: Place<StageWeight>): Inlines {
  const low = present(at(stage, 'changeLowG'));
  const high = present(at(stage, 'changeHighG'));
  if (!low || !high) return say(TEXTS.dash);
  return say(weights.changes, {
    low: quantity(low, 'signed-1'),
    high: quantity(high, 'signed-1'),
  });
}

/** What to do about each pair of causes, and the stages it is told of. */
function outside(patterns: readonly Place<ShopPattern>[]): Block {
  const c = weights.outsideColumns;
  const rows = new Map<string, { readonly stage: Place<StageWeight>; readonly names: Inlines[] }>();
  const named = new Set<string>();
  for (const stage of patterns.flatMap((p) => each(at(p, 'weights')))) {
    const { light, heavy, stage: name } = stage.value;
    const key = `${light} ${heavy}`;
    const row = rows.get(key) ?? { stage, names: [] };
    if (!named.has(`${key} ${name}`)) row.names.push(called(at(stage, 'stage')));
    named.add(`${key} ${name}`);
    rows.set(key, row);
  }
  return table(
    [column(c.stage, 1.3), column(c.light, 3), column(c.heavy, 3)],
    [...rows.values()].map(({ stage, names }) => [
      strong(joined(names, TEXTS.comma)),
      say(word(weights.light, stage.value.light)),
      say(word(weights.heavy, stage.value.heavy)),
    ]),
    { title: say(weights.outside) },
  );
}

const LOG_LINES = 10;

const log = (): Block =>
  table(
    weights.logColumns.map((head, i) => blank(say(head), i === 1 ? 1.8 : 1)),
    Array.from({ length: LOG_LINES }, () => weights.logColumns.map((): Inlines => [])),
    { title: say(weights.log), forWriting: true },
  );
