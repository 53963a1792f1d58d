/** A lip on paper, to be glued on clear sheet or traced. */
import type { Blank } from '../blank/blank.js';
import { inkStrokes } from '../drawing/ink.js';
import { makeLipPlate } from '../drawing/lip-plate.js';
import { plain } from '../drawing/strokes.js';
import { BY_HAND } from '../drawing/template-part.js';
import type { Lip } from '../pattern/pattern.js';
import { Fault } from '../problem.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { lineItem, PENS, sketchOf } from './pens.js';
import { PLASTIC_CAUTION, titleOf } from './sentences.js';

/** Outline, hole and name; the middle line and, broken, how deep it stands in its slot. */
export function lipSketch(name: string, lip: Lip): Sketch {
  const { plate } = makeLipPlate({ name, orderLine: 1 }, lip, BY_HAND, []);
  if (!plate) throw new Fault(`lip of ${name} can not be drawn at its own size`);
  const { items, box } = sketchOf(inkStrokes(plate.ink, { turnDeg: 0, move: [0, 0] }));
  const [middle, side] = [lip.widthMm / 2, (lip.widthMm - (lip.tab?.widthMm ?? lip.widthMm)) / 2];
  return {
    items: [
      ...items,
      lineItem([middle, lip.slotDepthMm], [middle, lip.lengthMm], PENS.center),
      lineItem([side, lip.slotDepthMm], [lip.widthMm - side, lip.slotDepthMm], PENS.broken),
    ],
    box,
  };
}

export const lipLeaflet = (blank: Blank, lip: Lip, count: number): Leaflet => ({
  file: `lips/${blank.name}-lip.pdf`,
  kind: 'lip',
  pattern: blank.name,
  title: titleOf('Lip', blank),
  kerf: 'not in it',
  notes: [
    `${count} to cut from ${plain(lip.thicknessMm)} mm clear sheet, ${plain(lip.widthMm)} × ${plain(lip.lengthMm)} mm over all.`,
    `Broken line: it stands ${plain(lip.slotDepthMm)} mm deep in its slot.`,
    ...(lip.eyeHole
      ? [`Hole for the tow eye: ${plain(lip.eyeHole.diameterMm)} mm, drilled before it is cut out.`]
      : []),
    ...(lip.tab
      ? [
          `Tab ${plain(lip.tab.widthMm)} mm wide, inside corners round to ${plain(lip.tab.insideRadiusMm)} mm.`,
        ]
      : []),
    PLASTIC_CAUTION,
  ],
});
