/** What comes off the pile before the saw runs: blocks, tape, sheets for templates and lips. */
import { caution, column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import type { SheetRecord } from '../record.js';
import { count, free, joined, many, mm, quantity, say, strong, TICK, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { timber } = TEXTS;

export const timberSection = (record: Place<SheetRecord>, step: number): Section => ({
  id: 'timber',
  step,
  name: say(timber.heading),
  heading: say(timber.heading),
  newPage: false,
  blocks: [...(record.value.kind === 'run' ? run(record) : single(record)), ...sheets(record)],
});

const single = (record: Place<SheetRecord>): readonly Block[] =>
  each(at(record, 'patterns')).map((pattern) =>
    paragraph(
      say(timber.single, {
        timber: free(at(pattern, 'timber')),
        thickness: mm(at(pattern, 'blockThicknessMm'), 'given'),
        length: mm(at(pattern, 'lengthMm'), 'given'),
      }),
    ),
  );

function run(record: Place<SheetRecord>): readonly Block[] {
  const shop = at(record, 'shop');
  const c = timber.columns;
  const tape = present(at(shop, 'tape'));
  return [
    table(
      [
        TICKS,
        column(c.block, 2.2),
        column(c.timber, 2),
        column(c.size, 2.2),
        numbers(c.count, 0.8),
        numbers(c.layers, 1),
        numbers(c.faces, 1),
      ],
      each(at(shop, 'timber')).map((row) => [
        [TICK],
        strong([free(at(row, 'block'))]),
        [free(at(row, 'timber'))],
        size(row),
        strong([count(at(row, 'count'))]),
        [count(at(row, 'layersPerStack'))],
        joined(
          each(at(row, 'faces')).map((face) => [count(face)]),
          TEXTS.comma,
        ),
      ]),
      { title: say(timber.title) },
    ),
    ...(tape
      ? [
          paragraph(
            say(timber.tape, {
              joints: count(at(tape, 'joints')),
              length: mm(at(tape, 'lengthMm'), 'fixed-0'),
              area: quantity(at(tape, 'areaMm2'), 'cm2-0', 'cm²'),
            }),
          ),
        ]
      : []),
  ];
}

type Sized = { readonly lengthMm: number; readonly widthMm: number; readonly thicknessMm: number };

const size = <T extends Sized>(of: Place<T>): Inlines => {
  const place: Place<Sized> = of;
  return joined(
    [at(place, 'lengthMm'), at(place, 'widthMm'), at(place, 'thicknessMm')].map((side) => [
      mm(side, 'given', ''),
    ]),
    TEXTS.times,
  );
};

function sheets(record: Place<SheetRecord>): readonly Block[] {
  const rows = each(at(record, 'sheets'));
  if (rows.length === 0) return [];
  const c = timber.sheetColumns;
  return [
    caution(TEXTS.cautions.sheets),
    table(
      [
        TICKS,
        column(c.kind, 1.3),
        numbers(c.number, 0.9),
        column(c.material, 2.4),
        column(c.size, 2.4),
        numbers(c.count, 0.9),
        numbers(c.parts, 1),
      ],
      rows.map((row) => [
        [TICK],
        say(word(timber.sheetKinds, row.value.kind)),
        [count(at(row, 'id'))],
        [free(at(row, 'material'))],
        size(row),
        strong([count(at(row, 'copies'))]),
        [many(at(row, 'placements'))],
      ]),
      { title: say(timber.sheets) },
    ),
  ];
}
