/** Edges rounded over, and wood taken down to the gauges. */
import type { Shop, ShopPattern } from '../../shop/shop.js';
import { caution, column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place } from '../place.js';
import type { SheetRecord } from '../record.js';
import { count, free, joined, mm, say, strong, TICK } from '../say.js';
import { TEXTS } from '../texts.js';

const { shape } = TEXTS;

export function shapeSection(record: Place<SheetRecord>, step: number): Section {
  const shop = at(record, 'shop');
  return {
    id: 'shape',
    step,
    name: say(shape.heading),
    heading: say(shape.heading),
    newPage: true,
    blocks: [
      caution(TEXTS.cautions.router),
      bits(record),
      paragraph(say(shape.bearing)),
      ...gauges(shop),
    ],
  };
}

function bits(record: Place<SheetRecord>): Block {
  const c = shape.columns;
  const recorded = each(at(record, 'patterns'));
  return table(
    [
      TICKS,
      column(c.pattern, 1.8),
      column(c.bit, 1.6, 'end'),
      numbers(c.limit, 1.5),
      numbers(c.station, 1.5),
      numbers(c.allowance, 1.5),
      numbers(c.lures, 0.8),
    ],
    each(at(at(record, 'shop'), 'patterns')).map((pattern, i) => {
      const roundOver = at(pattern, 'roundOver');
      return [
        [TICK],
        strong([free(at(pattern, 'name'))]),
        roundOver.value.bitMm === 0
          ? say(shape.noBit)
          : strong([mm(at(roundOver, 'bitMm'), 'given', '')]),
        [mm(at(roundOver, 'limitMm'), 'fixed-1', '')],
        [mm(at(roundOver, 'stationMm'), 'fixed-1', '')],
        [mm(at(recorded[i], 'sandingAllowanceMm'), 'given', '')],
        [count(at(pattern, 'count'))],
      ];
    }),
    { title: say(shape.bits) },
  );
}

function gauges(shop: Place<Shop>): readonly Block[] {
  const rows = each(at(shop, 'patterns')).filter((p) => p.value.gauges.length > 0);
  if (rows.length === 0) return [paragraph(say(shape.byEye))];
  const c = shape.gaugeColumns;
  return [
    paragraph(say(shape.byGauge)),
    table(
      [TICKS, column(c.pattern, 1.5), column(c.stations, 6)],
      rows.map((pattern) => [[TICK], strong([free(at(pattern, 'name'))]), stations(pattern)]),
      { title: say(shape.gauges) },
    ),
  ];
}

const stations = (pattern: Place<ShopPattern>): Inlines =>
  joined(
    each(at(pattern, 'gauges')).map((gauge) =>
      say(shape.gauge, {
        number: strong([count(at(gauge, 'number'))]),
        station: mm(at(gauge, 'stationMm'), 'given'),
      }),
    ),
    TEXTS.semicolon,
  );
