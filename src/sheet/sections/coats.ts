/** One application after the other: what to make ready, in which pots, and how long it dries. */
import type { Finish, LureCount, Measured } from '../../shop/shop.js';
import { blank, caution, column, numbers, paragraph, TICKS, table, together } from '../blocks.js';
import type { Block, Column, Figure, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import { count, free, g, joined, ml, quantity, say, smallG, strong, TICK } from '../say.js';
import { TEXTS } from '../texts.js';

const { coats } = TEXTS;

export const coatsSection = (finishes: readonly Place<Finish>[], step: number): Section => ({
  id: 'coats',
  step,
  name: say(coats.heading),
  heading: say(coats.heading),
  newPage: true,
  blocks:
    finishes.length === 0
      ? [paragraph(say(coats.none))]
      : [
          caution(TEXTS.cautions.coats),
          paragraph(say(coats.about)),
          paragraph(say(coats.hanging)),
          ...finishes.flatMap((finish, i) => applied(finish, finishes[i - 1] ?? null)),
        ],
});

/** Parts of a two-part coat, all four or none. */
type Parts = {
  readonly aG: Place<number>;
  readonly bG: Place<number>;
  readonly aMl: Place<number>;
  readonly bMl: Place<number>;
};

function partsOf<T extends Measured>(of: Place<T>): Parts | null {
  const measured: Place<Measured> = of;
  const [aG, bG, aMl, bMl] = (['partAG', 'partBG', 'partAMl', 'partBMl'] as const).map((key) =>
    present(at(measured, key)),
  );
  return aG && bG && aMl && bMl ? { aG, bG, aMl, bMl } : null;
}

function applied(finish: Place<Finish>, before: Place<Finish> | null): readonly Block[] {
  return [
    together(
      { kind: 'heading', inlines: called(finish) },
      { kind: 'figures', figures: figures(finish) },
      ...mixing(finish),
      before && isSame(finish.value, before.value)
        ? paragraph(say(coats.asBefore))
        : onEach(finish),
    ),
    ...pots(finish),
  ];
}

/** True where the coat before took the very same on each lure, so that it need not be told again. */
const isSame = (a: Finish, b: Finish): boolean =>
  a.name === b.name &&
  JSON.stringify([a.perLure, a.perLurePartG]) === JSON.stringify([b.perLure, b.perLurePartG]);

const called = (finish: Place<Finish>): Inlines =>
  say(coats.title, {
    name: free(at(finish, 'name')),
    coat: count(at(finish, 'coat')),
    of: count(at(finish, 'of')),
  });

function figures(finish: Place<Finish>): readonly Figure[] {
  const parts = partsOf(finish);
  const names = present(at(finish, 'parts'));
  const amount = (grams: Place<number>, milliliters: Place<number>) => ({
    value: [g(grams)],
    detail: say(coats.or, { ml: ml(milliliters) }),
  });
  return [
    ...(parts
      ? [
          {
            label: named(coats.partA, names && at(names, 'aName')),
            ...amount(parts.aG, parts.aMl),
          },
          {
            label: named(coats.partB, names && at(names, 'bName')),
            ...amount(parts.bG, parts.bMl),
          },
        ]
      : [{ label: say(coats.total), ...amount(at(finish, 'totalG'), at(finish, 'totalMl')) }]),
    { label: say(coats.lures), value: [count(at(finish, 'lures'))], detail: [] },
    {
      label: say(coats.dry),
      value: [quantity(at(finish, 'dryHours'), 'given', 'h')],
      detail: [],
    },
    {
      label: say(coats.cure),
      value: [quantity(at(finish, 'cureHours'), 'given', 'h')],
      detail: [],
    },
  ];
}

/** A part, and what it is where that is known. */
function named(part: string, name: Place<string | null> | null): Inlines {
  const known = name && present(name);
  return known ? say(coats.named, { part: say(part), name: free(known) }) : say(part);
}

/** Ratio, pot life and waste. */
function mixing(finish: Place<Finish>): readonly Block[] {
  const parts = present(at(finish, 'parts'));
  const life = present(at(finish, 'potLifeMin'));
  const largest = present(at(finish, 'largestPotG'));
  const minutes = quantity(at(finish, 'minutesPerLure'), 'given', 'min');
  return [
    paragraph([
      ...(parts
        ? say(coats.ratio, {
            aMass: strong([quantity(at(parts, 'aByMass'), 'given')]),
            bMass: strong([quantity(at(parts, 'bByMass'), 'given')]),
            aVolume: quantity(at(parts, 'aByVolume'), 'given'),
            bVolume: quantity(at(parts, 'bByVolume'), 'given'),
          })
        : []),
      ...(life && largest
        ? [
            ...say(TEXTS.space),
            ...say(coats.pot, {
              life: quantity(life, 'given', 'min'),
              largest: quantity(largest, 'given', 'g'),
              minutes,
            }),
            ...say(TEXTS.space),
          ]
        : []),
      ...say(coats.film, {
        waste: quantity(at(finish, 'wasteRatio'), 'percent-0', '%'),
        solids: quantity(at(finish, 'solidsRatio'), 'percent-0', '%'),
        film: g(at(finish, 'filmG')),
      }),
    ]),
  ];
}

function onEach(finish: Place<Finish>): Block {
  const c = coats.eachColumns;
  const perPart = present(at(finish, 'perLurePartG'));
  const parts = perPart && each(perPart);
  return table(
    [
      column(c.pattern, 2),
      numbers(c.count, 0.8),
      numbers(c.area, 1),
      numbers(c.film, 1),
      numbers(c.mix, 1),
      ...(parts ? [numbers(c.a, 1), numbers(c.b, 1)] : []),
    ],
    each(at(finish, 'perLure')).map((row, i) => [
      strong([free(at(row, 'pattern'))]),
      [count(at(row, 'count'))],
      [quantity(at(row, 'areaMm2'), 'cm2-0')],
      [smallG(at(row, 'filmG'), '')],
      strong([smallG(at(row, 'mixG'), '')]),
      ...(parts
        ? [
            strong([smallG(at(parts[i], 'partAG'), '')]),
            strong([smallG(at(parts[i], 'partBG'), '')]),
          ]
        : []),
    ]),
    { title: say(coats.each) },
  );
}

function pots(finish: Place<Finish>): readonly Block[] {
  const rows = each(at(finish, 'pots'));
  if (rows.length === 0) return [];
  const c = coats.potColumns;
  const columns: readonly Column[] = [
    TICKS,
    numbers(c.number, 0.6),
    column(c.lures, 2.7),
    numbers(c.a, 1.1),
    numbers(c.b, 1.1),
    numbers(c.aMl, 0.8),
    numbers(c.bMl, 0.8),
    numbers(c.minutes, 1.15),
    blank(say(c.mixed), 1),
  ];
  return [
    table(
      columns,
      rows.map((pot) => {
        const parts = partsOf(pot);
        return [
          [TICK],
          [count(at(pot, 'number'))],
          joined(each(at(pot, 'lures')).map(lures), TEXTS.comma),
          ...(parts
            ? [
                strong([g(parts.aG, '')]),
                strong([g(parts.bG, '')]),
                [ml(parts.aMl, '')],
                [ml(parts.bMl, '')],
              ]
            : [say(TEXTS.dash), say(TEXTS.dash), say(TEXTS.dash), say(TEXTS.dash)]),
          [quantity(at(pot, 'minutes'), 'fixed-0')],
          [],
        ];
      }),
      { title: [...say(coats.pots), ...say(TEXTS.comma), ...called(finish)] },
    ),
  ];
}

const lures = (of: Place<LureCount>): Inlines =>
  say(coats.lureCount, { count: count(at(of, 'count')), pattern: free(at(of, 'pattern')) });
