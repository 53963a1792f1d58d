/** The tub test of a pattern: how it should lie, what to hang on it, and what a difference says. */
import type { Lie, Says, ShopPattern, TrialWeight, TubTest } from '../../shop/shop.js';
import { blank, caution, column, numbers, paragraph, table } from '../blocks.js';
import type { Block, Figure, Inline, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import type { RecordedPattern } from '../record.js';
import { count, free, g, mm, quantity, say, smallG, strong, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { tub } = TEXTS;

export type TubInput = {
  readonly pattern: Place<RecordedPattern>;
  readonly shop: Place<ShopPattern>;
  /** The lure in the water, as SVG. */
  readonly svg: string;
};

export function tubSection({ pattern, shop, svg }: TubInput, step: number): Section {
  const name = free(at(pattern, 'name'));
  const test = at(shop, 'tub');
  return {
    id: `tub-${pattern.value.name}`,
    step,
    name: say(tub.heading),
    heading: say(tub.title, { pattern: name, version: free(at(pattern, 'version')) }),
    newPage: true,
    blocks: [
      paragraph(water(test)),
      {
        kind: 'picture',
        svg,
        told: say(tub.told, { pattern: name }),
        caption: null,
        mostHeightMm: 70,
      },
      { kind: 'figures', figures: figures(test) },
      paragraph(buoyancy(test)),
      ...(pattern.value.float.wish?.met === false ? [paragraph(say(tub.unwished))] : []),
      readings(name),
      caution(TEXTS.cautions.tub),
      ...trials(test, name),
      ...says(test, name),
      ...hangs(test, name),
    ],
  };
}

const water = (test: Place<TubTest>): Inlines =>
  say(tub.first, {
    temperature: quantity(at(test, 'temperatureC'), 'given', '°C'),
    salinity: quantity(at(test, 'salinityPsu'), 'given'),
    density: quantity(at(test, 'waterDensityKgM3'), 'fixed-1', 'kg/m³'),
  });

function figures(test: Place<TubTest>): readonly Figure[] {
  const f = tub.figures;
  const rest = present(at(test, 'rest'));
  const band = present(at(test, 'band'));
  const nose = rest && present(at(rest, 'noseMm'));
  const tail = rest && present(at(rest, 'tailMm'));
  const trim = rest && present(at(rest, 'trimDeg'));
  const within = (key: keyof Lie): Inlines => {
    const place = band && present(at(band, key));
    if (!place) return [];
    return say(tub.band, {
      band: quantity(place, 'fixed-1', key === 'trimDeg' ? '°' : 'mm'),
    });
  };
  return [
    { label: say(f.verdict), value: say(word(tub.verdicts, test.value.verdict)), detail: [] },
    ...(nose ? [{ label: say(f.nose), value: height(nose), detail: within('noseMm') }] : []),
    ...(tail ? [{ label: say(f.tail), value: height(tail), detail: within('tailMm') }] : []),
    ...(trim ? [{ label: say(f.trim), value: leaning(trim), detail: within('trimDeg') }] : []),
    {
      label: say(f.mass),
      value: [g(at(test, 'massG'))],
      detail: say(tub.bandG, { low: g(at(test, 'lowG'), ''), high: g(at(test, 'highG')) }),
    },
  ];
}

const height = (place: Place<number>): Inlines =>
  say(place.value < 0 ? tub.under : tub.over, { value: mm(place, 'size-1') });

const leaning = (place: Place<number>): Inlines =>
  say(place.value < 0 ? tub.down : tub.up, { value: quantity(place, 'size-1', '°') });

function buoyancy(test: Place<TubTest>): Inlines {
  if (test.value.rest === null) return say(tub.noRest);
  const net = strong([quantity(at(test, 'netG'), 'size-1', 'g')]);
  return say(test.value.netG < 0 ? tub.lift : tub.net, { net });
}

const READINGS = 5;

/** Lines to write what the tub shows. */
function readings(pattern: Inline): Block {
  const c = tub.readingColumns;
  const columns = [c.lure, c.mass, c.nose, c.tail, c.trim, c.hung, c.where];
  return table(
    columns.map((head) => blank(say(head), 1)),
    Array.from({ length: READINGS }, () => columns.map((): Inlines => [])),
    { title: say(tub.readings, { pattern }), forWriting: true },
  );
}

/** What a weight hung at each eye does. */
function hangs(test: Place<TubTest>, pattern: Inline): readonly Block[] {
  const rows = each(at(test, 'hang'));
  if (rows.length === 0) return [];
  const c = tub.hangColumns;
  return [
    table(
      [
        column(c.at, 1.4),
        numbers(c.station, 1),
        numbers(c.nose, 1.2),
        numbers(c.tail, 1.2),
        numbers(c.trim, 1.2),
      ],
      rows.map((row) => [
        strong([free(at(row, 'at'))]),
        [mm(at(row, 'stationMm'), 'fixed-1', '')],
        ...changes(at(row, 'perG')),
      ]),
      { title: say(tub.hang, { pattern }) },
    ),
    paragraph(say(tub.hangAbout, { share: quantity(at(test, 'leadShare'), 'percent-0', '%') })),
  ];
}

/** Nose, tail and trim with their signs. */
function changes<T extends Lie>(of: Place<T>): readonly Inlines[] {
  const lie: Place<Lie> = of;
  const [nose, tail, trim] = (['noseMm', 'tailMm', 'trimDeg'] as const).map((key) =>
    present(at(lie, key)),
  );
  return [
    nose ? [quantity(nose, 'signed-1')] : say(TEXTS.dash),
    tail ? [quantity(tail, 'signed-1')] : say(TEXTS.dash),
    trim ? [quantity(trim, 'signed-2')] : say(TEXTS.dash),
  ];
}

function trials(test: Place<TubTest>, pattern: Inline): readonly Block[] {
  const rows = each(at(test, 'trial'));
  if (rows.length === 0) return [];
  const c = tub.trialColumns;
  return [
    table(
      [numbers(c.nose, 1), numbers(c.tail, 1), column(c.mass, 1.6, 'end'), numbers(c.station, 1.2)],
      rows.map((row) => [
        [quantity(at(row, 'noseMm'), 'given')],
        [quantity(at(row, 'tailMm'), 'given')],
        ...weight(row),
      ]),
      { title: say(tub.trial, { pattern }) },
    ),
    paragraph(say(tub.trialAbout)),
  ];
}

function weight(row: Place<TrialWeight>): readonly Inlines[] {
  const mass = present(at(row, 'massG'));
  const station = present(at(row, 'stationMm'));
  const { why } = row.value;
  if (mass && station) return [strong([smallG(mass, '')]), strong([mm(station, 'fixed-1', '')])];
  return [why ? say(word(tub.why, why)) : say(TEXTS.dash), say(TEXTS.dash)];
}

function says(test: Place<TubTest>, pattern: Inline): readonly Block[] {
  const rows = each(at(test, 'says'));
  if (rows.length === 0) return [];
  const c = tub.saysColumns;
  return [
    table(
      [
        column(c.cause, 3.2),
        numbers(c.nose, 1),
        numbers(c.tail, 1),
        numbers(c.trim, 1),
        numbers(c.mass, 1),
      ],
      rows.map((row) => [cause(row), ...changes(row), [quantity(at(row, 'massG'), 'signed-1')]]),
      { title: say(tub.says, { pattern }) },
    ),
    paragraph(say(tub.saysAbout)),
  ];
}

function cause(row: Place<Says>): Inlines {
  const number = present(at(row, 'number'));
  return say(word(tub.cause, row.value.cause), {
    step: quantity(at(row, 'step'), 'given', row.value.unit),
    ...(number ? { number: count(number) } : {}),
  });
}
