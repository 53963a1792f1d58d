/** The through-wire on paper: to bend over the drawing, or to set pegs in a board by. */
import type { Blank } from '../blank/blank.js';
import { profilePath } from '../blank/profile.js';
import type { BodyShape } from '../body/shape.js';
import { plain } from '../drawing/strokes.js';
import type { PageItem } from '../formats/pdf.js';
import { type ArcPath, pathBox, polyline } from '../geometry/arcpath.js';
import { rectRing } from '../geometry/ring.js';
import { type Box, boxOf, mix, type Point2 } from '../geometry/vec.js';
import type { BentWire } from '../wire/bent.js';
import { pegBoard } from '../wire/pegs.js';
import { type Twist, twistedMm } from '../wire/twist.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { grown, INK, lineItem, PAPER, PENS } from './pens.js';
import { titleOf, WIRE_CAUTION } from './sentences.js';
import { TEXT_MM, textBox, textItem } from './words.js';

const RULER_MM = 8; // of the stations' ruler under wire and body
const [TICK_EACH_MM, NUMBER_EACH_MM] = [5, 20];

/**
 * The wire as broad as it is with its center line; the finished side view round it; what is wound; the
 * pegs of its bends; a ruler of stations under it.
 */
export function wireSketch(wire: BentWire, shape: BodyShape): Sketch {
  const side = profilePath(shape);
  const { diameterMm } = wire.spec;
  const { pegs } = pegBoard(wire, { marginMm: 0 });
  const reach = boxOf(
    [side, wire.path].flatMap((path) => corners(grown(pathBox(path), diameterMm))),
  );
  const drawn: PageItem[] = [
    { kind: 'path', path: side, pen: PENS.hair },
    ...pegs.map(
      ({ center, radiusMm }): PageItem => ({
        kind: 'circle',
        circle: { center, radius: radiusMm },
        pen: PENS.hair,
      }),
    ),
    ...wire.twists.flatMap((twist) => twistItems(twist, diameterMm)),
    ...broad(wire.path, diameterMm),
    ...pegs.flatMap(({ center: [x, y] }) => [
      lineItem([x - PEG_MM, y], [x + PEG_MM, y], PENS.mark),
      lineItem([x, y - PEG_MM], [x, y + PEG_MM], PENS.mark),
    ]),
    { kind: 'path', path: wire.path, pen: PENS.center },
  ];
  const ruler = rulerItems(shape.lengthMm, reach[1] - RULER_MM);
  const boxes = ruler.flatMap((item) => (item.kind === 'text' ? corners(textBox(item)) : []));
  return { items: [...drawn, ...ruler], box: grown(boxOf([...corners(reach), ...boxes]), 1) };
}

const PEG_MM = 1; // half a cross at the middle of a peg

/** A line so broad, white inside its edges. */
const broad = (path: ArcPath, widthMm: number): PageItem[] => [
  { kind: 'path', path, pen: { widthMm, tone: INK } },
  { kind: 'path', path, pen: { widthMm: widthMm - 2 * PENS.mark.widthMm, tone: PAPER } },
];

/** Where the wire is wound round itself: its room, and a slant for each turn. */
function twistItems({ turns, from, to }: Twist, diameterMm: number): PageItem[] {
  const half = twistedMm(diameterMm) / 2;
  const [y, x0, x1] = [from[1], Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const whole = Math.max(1, Math.round(turns));
  return [
    { kind: 'path', path: polyline(rectRing(x0, y - half, x1, y + half), true), pen: PENS.mark },
    ...Array.from({ length: whole }, (_, i): PageItem => {
      const [a, b] = [mix([x0, 0], [x1, 0], i / whole), mix([x0, 0], [x1, 0], (i + 1) / whole)];
      return lineItem([a[0], y - half], [b[0], y + half], PENS.mark);
    }),
  ];
}

/** Stations from the nose: a tick at every 5 mm, a number at every 20. */
function rulerItems(lengthMm: number, y: number): PageItem[] {
  const count = Math.floor(lengthMm / TICK_EACH_MM);
  return [
    lineItem([0, y], [lengthMm, y], PENS.mark),
    ...Array.from({ length: count + 1 }, (_, i): PageItem[] => {
      const x = i * TICK_EACH_MM;
      const isNumbered = x % NUMBER_EACH_MM === 0;
      const high = isNumbered ? 3 : x % 10 === 0 ? 2 : 1.2;
      const number = textItem(String(x), [x, y - TEXT_MM - 0.6], { anchor: 'middle' });
      return [lineItem([x, y], [x, y + high], PENS.mark), ...(isNumbered ? [number] : [])];
    }).flat(),
  ];
}

const corners = ([x0, y0, x1, y1]: Box): Point2[] => [
  [x0, y0],
  [x1, y1],
];

export function wireLeaflet(blank: Blank, wire: BentWire): Leaflet {
  const { spec, twists, lengthToCutMm } = wire;
  const eyes = Number(spec.nose.eye) + Number(spec.tail.eye) + spec.hangers.length;
  const wound = twists.map((t) => `${t.eye} ${plain(t.turns)}`).join(', ');
  return {
    file: `wire/${blank.name}-wire.pdf`,
    kind: 'wire',
    pattern: blank.name,
    title: titleOf('Through-wire', blank),
    kerf: null,
    notes: [
      `Cut ${Math.ceil(lengthToCutMm)} mm of ${plain(spec.diameterMm)} mm wire${
        spec.holdMm > 0 && (spec.nose.eye || spec.tail.eye)
          ? `: ${plain(spec.holdMm)} mm at each eye at an end are for the pliers`
          : ''
      }. Bend it from the tow eye aft.`,
      `${eyes} eyes, ${plain(spec.loopMm)} mm wide inside; inside of every bend at least ${plain(spec.bendInsideMm)} mm.${
        spec.hangers.length > 0
          ? ` Hangers at ${spec.hangers.map(([x]) => plain(x)).join(', ')} mm.`
          : ''
      }`,
      ...(twists.length > 0 ? [`Slanted: wound round itself, turns at the eye: ${wound}.`] : []),
      'Circles: pegs of the bends, their middles crossed; thin outline: the finished body; ruler: stations from the nose.',
      WIRE_CAUTION,
    ],
  };
}
