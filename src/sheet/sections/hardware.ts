/** What is screwed in, bent and hung on. */
import type { Shop, ShopPattern } from '../../shop/shop.js';
import { caution, column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import { count, free, mm, say, smallG, strong, TICK, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { hardware } = TEXTS;

export const hardwareSection = (shop: Place<Shop>, step: number): Section => ({
  id: 'hardware',
  step,
  name: say(hardware.heading),
  heading: say(hardware.heading),
  newPage: true,
  blocks:
    shop.value.hardware.length === 0
      ? [paragraph(say(hardware.none))]
      : [caution(TEXTS.cautions.hooks), totals(shop), ...wires(shop), perLure(shop)],
});

function totals(shop: Place<Shop>): Block {
  const c = hardware.columns;
  return table(
    [
      TICKS,
      column(c.what, 1.5),
      column(c.name, 2.5),
      numbers(c.size, 1.1),
      numbers(c.count, 0.9),
      numbers(c.length, 1.3),
    ],
    each(at(shop, 'hardware')).map((row) => [
      [TICK],
      say(word(hardware.kinds, row.value.what)),
      strong([free(at(row, 'name'))]),
      orDash(present(at(row, 'sizeMm'))),
      strong([count(at(row, 'count'))]),
      lengthOrDash(present(at(row, 'lengthMm'))),
    ]),
    { title: say(hardware.title) },
  );
}

const orDash = (place: Place<number> | null): Inlines =>
  place ? [mm(place, 'given', '')] : say(TEXTS.dash);

const lengthOrDash = (place: Place<number> | null): Inlines =>
  place ? [mm(place, 'fixed-0', '')] : say(TEXTS.dash);

const wires = (shop: Place<Shop>): readonly Block[] =>
  each(at(shop, 'patterns')).flatMap((pattern) => {
    const wire = present(at(pattern, 'wire'));
    if (!wire) return [];
    return [
      paragraph(
        say(hardware.wire, {
          diameter: mm(at(wire, 'diameterMm'), 'given'),
          pattern: strong([free(at(pattern, 'name'))]),
          length: strong([mm(at(wire, 'lengthToCutMm'), 'up-0')]),
        }),
      ),
    ];
  });

function perLure(shop: Place<Shop>): Block {
  const c = hardware.eachColumns;
  return table(
    [
      TICKS,
      column(c.pattern, 1.8),
      column(c.what, 1.5),
      column(c.name, 2.2),
      numbers(c.perLure, 1),
      numbers(c.total, 1),
      numbers(c.mass, 1),
    ],
    each(at(shop, 'patterns')).flatMap((pattern: Place<ShopPattern>) =>
      each(at(pattern, 'hardware')).map((row) => [
        [TICK],
        strong([free(at(pattern, 'name'))]),
        say(word(hardware.kinds, row.value.what)),
        [free(at(row, 'name'))],
        [count(at(row, 'perLure'))],
        [count(at(row, 'total'))],
        [smallG(at(row, 'massEachG'), '')],
      ]),
    ),
    { title: say(hardware.each) },
  );
}
