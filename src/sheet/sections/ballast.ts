/** What goes into the ballast holes, what to melt and what to buy. */
import type { BallastFill, Shop, ShopPattern } from '../../shop/shop.js';
import { caution, column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import { count, free, g, joined, mm, quantity, say, smallG, strong, TICK, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { ballast } = TEXTS;

export function ballastSection(shop: Place<Shop>, step: number): Section {
  const fills = shop.value.patterns.flatMap((p) => p.ballast);
  return {
    id: 'ballast',
    step,
    name: say(ballast.heading),
    heading: say(ballast.heading),
    newPage: true,
    blocks:
      fills.length === 0
        ? [paragraph(say(ballast.none))]
        : [
            ...cautions(fills),
            holes(shop),
            ...ways(fills),
            paragraph(say(ballast.why)),
            ...melt(shop),
            ...toBuy(shop),
          ],
  };
}

/** A row of the table of metals. */
const LEAD = 'lead';

function cautions(fills: readonly BallastFill[]): readonly Block[] {
  const { lead, metal, leadWeights } = TEXTS.cautions;
  const poured = fills.filter((f) => f.pour !== null);
  const pouredLead = poured.some((f) => f.metal === LEAD);
  const gluedLead = fills.some((f) => f.pour === null && f.metal === LEAD);
  return [
    ...(pouredLead ? [caution(lead)] : poured.length > 0 ? [caution(metal)] : []),
    ...(gluedLead && !pouredLead ? [caution(leadWeights)] : []),
  ];
}

function holes(shop: Place<Shop>): Block {
  const c = ballast.columns;
  return table(
    [
      TICKS,
      column(c.pattern, 1.7),
      numbers(c.hole, 0.7),
      column(c.metal, 1.2),
      column(c.how, 1.8),
      numbers(c.filled, 1.1),
      numbers(c.stays, 1.1),
      numbers(c.lures, 0.8),
    ],
    each(at(shop, 'patterns')).flatMap((pattern: Place<ShopPattern>) =>
      each(at(pattern, 'ballast')).map((fill) => [
        [TICK],
        strong([free(at(pattern, 'name'))]),
        [count(at(fill, 'number'))],
        [free(at(fill, 'metal'))],
        how(fill),
        strong([smallG(at(fill, 'filledG'), '')]),
        [smallG(at(fill, 'afterShapingG'), '')],
        [count(at(pattern, 'count'))],
      ]),
    ),
    { title: say(ballast.title) },
  );
}

function how(fill: Place<BallastFill>): Inlines {
  const { pour } = fill.value;
  const weight = present(at(fill, 'weight'));
  if (weight) return say(ballast.weight, { weight: free(weight) });
  if (pour === null) return say(ballast.rod);
  const height = present(at(fill, 'fillMm'));
  return height
    ? say(ballast.filled, { fill: mm(height, 'given') })
    : say(word(ballast.pours, pour));
}

/** What the words in the column mean, as far as they stand there. */
function ways(fills: readonly BallastFill[]): readonly Block[] {
  const { told } = ballast;
  const words = fills.flatMap(({ pour, fillMm }) =>
    pour === null ? [told.weight] : fillMm !== null ? [told.filled] : [word(told, pour)],
  );
  return [...new Set(words)].map((sentence) => paragraph(say(sentence)));
}

function melt(shop: Place<Shop>): readonly Block[] {
  const rows = each(at(shop, 'melt'));
  if (rows.length === 0) return [];
  const c = ballast.meltColumns;
  return [
    table(
      [
        TICKS,
        column(c.metal, 1.6),
        numbers(c.holes, 0.9),
        numbers(c.net, 1.3),
        numbers(c.allowance, 1.6),
        numbers(c.total, 1.3),
        numbers(c.melts, 1.2),
      ],
      rows.map((row) => {
        const melts = present(at(row, 'meltsAtC'));
        return [
          [TICK],
          strong([free(at(row, 'metal'))]),
          [count(at(row, 'holes'))],
          [g(at(row, 'netG'), '')],
          [quantity(at(row, 'allowanceRatio'), 'percent-0', '%')],
          strong([g(at(row, 'totalG'), '')]),
          melts ? [quantity(melts, 'fixed-0', '°C')] : say(TEXTS.dash),
        ];
      }),
      { title: say(ballast.melt) },
    ),
  ];
}

function toBuy(shop: Place<Shop>): readonly Block[] {
  const rows = each(at(shop, 'weightsToBuy'));
  if (rows.length === 0) return [];
  const c = ballast.buyColumns;
  return [
    table(
      [
        TICKS,
        column(c.weight, 2),
        column(c.metal, 1.6),
        numbers(c.mass, 1),
        numbers(c.size, 1.8),
        numbers(c.count, 1),
      ],
      rows.map((row) => [
        [TICK],
        strong([free(at(row, 'name'))]),
        [free(at(row, 'metal'))],
        [quantity(at(row, 'massG'), 'given')],
        joined(
          [[mm(at(row, 'diameterMm'), 'given', '')], [mm(at(row, 'lengthMm'), 'given', '')]],
          TEXTS.times,
        ),
        strong([count(at(row, 'count'))]),
      ]),
      { title: say(ballast.buy) },
    ),
  ];
}
