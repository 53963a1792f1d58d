/** Lip slots and everything a bit makes, while the sides are flat. */
import type { Drilling, ShopPattern } from '../../shop/shop.js';
import { caution, column, numbers, paragraph, TICKS, table } from '../blocks.js';
import type { Block, Inlines, Section } from '../document.js';
import { at, each, type Place, present } from '../place.js';
import type { SheetRecord } from '../record.js';
import { count, free, joined, mm, quantity, say, strong, TICK, word } from '../say.js';
import { TEXTS } from '../texts.js';

const { slot, drill } = TEXTS;

export function holesSection(record: Place<SheetRecord>, step: number): Section {
  const patterns = each(at(at(record, 'shop'), 'patterns'));
  const drilled = patterns.filter((p) => p.value.drilling.length > 0);
  return {
    id: 'holes',
    step,
    name: say(slot.heading),
    heading: say(slot.heading),
    newPage: true,
    blocks: [
      paragraph(say(slot.first)),
      ...slots(record, patterns),
      ...fromSawnNose(record),
      ...(drilled.length > 0
        ? [caution(TEXTS.cautions.drill), paragraph(say(drill.about)), ...drilled.map(holes)]
        : []),
      ...patterns
        .filter((p) => p.value.wire !== null)
        .map((p) => paragraph(say(drill.wire, { pattern: free(at(p, 'name')) }))),
    ],
  };
}

/** What a rule on the sawn nose reads more; nothing where every outline is sawn to its size. */
function fromSawnNose(record: Place<SheetRecord>): readonly Block[] {
  const larger = each(at(record, 'patterns')).filter((p) => p.value.sandingAllowanceMm > 0);
  if (larger.length === 0) return [];
  const added = larger.map((pattern) =>
    say(drill.sawnNoseOf, {
      allowance: strong([mm(at(pattern, 'sandingAllowanceMm'), 'given')]),
      pattern: free(at(pattern, 'name')),
    }),
  );
  return [paragraph([...say(drill.sawnNose), ...joined(added, TEXTS.comma), ...say(TEXTS.stop)])];
}

function slots(
  record: Place<SheetRecord>,
  patterns: readonly Place<ShopPattern>[],
): readonly Block[] {
  const c = slot.columns;
  const guided = new Set(
    record.value.jigs.filter((j) => j.kind === 'lip-slot-guide').map((j) => j.pattern),
  );
  const how = (name: string) =>
    record.value.nest?.saw.cutsLipSlot ? slot.cut : guided.has(name) ? slot.guide : slot.hand;
  const rows = patterns.flatMap((pattern): (readonly Inlines[])[] => {
    const place = present(at(pattern, 'slot'));
    if (!place) return [];
    return [
      [
        [TICK],
        strong([free(at(pattern, 'name'))]),
        strong([quantity(at(place, 'angleDeg'), 'given', '°')]),
        strong([mm(at(place, 'depthMm'), 'fixed-1', '')]),
        [mm(at(place, 'widthMm'), 'given', '')],
        [mm(at(place, 'stationMm'), 'fixed-1', '')],
        say(how(pattern.value.name)),
      ],
    ];
  });
  if (rows.length === 0) return [];
  return [
    table(
      [
        TICKS,
        column(c.pattern, 1.8),
        numbers(c.angle, 1.3),
        numbers(c.depth, 1),
        numbers(c.width, 1),
        numbers(c.station, 1.2),
        column(c.by, 2),
      ],
      rows,
      { title: say(slot.title) },
    ),
  ];
}

function holes(pattern: Place<ShopPattern>): Block {
  const c = drill.columns;
  return table(
    [
      TICKS,
      column(c.hole, 1.5),
      numbers(c.bit, 0.8),
      numbers(c.collar, 1.3),
      column(c.place, 2.6),
      column(c.depth, 1.5, 'end'),
      numbers(c.tip, 0.9),
    ],
    each(at(pattern, 'drilling')).map((hole) => [
      [TICK],
      strong(called(hole)),
      strong([mm(at(hole, 'bitMm'), 'given', '')]),
      strong(orDash(present(at(hole, 'collarMm')))),
      where(hole),
      depth(hole),
      orDash(present(at(hole, 'tipDepthMm'))),
    ]),
    {
      title: say(drill.title, {
        pattern: free(at(pattern, 'name')),
        count: count(at(pattern, 'count')),
      }),
    },
  );
}

const orDash = (place: Place<number> | null): Inlines =>
  place ? [mm(place, 'fixed-1', '')] : say(TEXTS.dash);

function called(hole: Place<Drilling>): Inlines {
  const { what } = hole.value;
  const numbered = what === 'ballast' || what === 'hanger';
  return say(word(drill.what, what), numbered ? { number: count(at(hole, 'number')) } : {});
}

function where(hole: Place<Drilling>): Inlines {
  const { from, heightMm, tiltDeg } = hole.value;
  const height = mm(at(hole, 'heightMm'), 'size-1', '');
  const side = Number(height.text) === 0 ? drill.on : heightMm > 0 ? drill.over : drill.under;
  const place =
    from === 'belly'
      ? say(drill.station, { station: strong([mm(at(hole, 'stationMm'), 'fixed-1', '')]) })
      : say(side, {
          from: say(word(drill.ends, from)),
          ...(side === drill.on ? {} : { height: strong([height]) }),
        });
  if (tiltDeg === 0) return place;
  const tilt = quantity(at(hole, 'tiltDeg'), 'size-1', '°');
  return say(tiltDeg > 0 ? drill.leans : drill.leansForward, { place, tilt });
}

function depth(hole: Place<Drilling>): Inlines {
  const begun = present(at(hole, 'depthMm'));
  if (!begun) return say(drill.rightThrough);
  const deep = strong([mm(begun, 'fixed-1', '')]);
  return hole.value.through ? say(drill.through, { depth: deep }) : deep;
}
