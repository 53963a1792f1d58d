/** A pattern's template on paper: to be glued on the block, or traced onto sheet. */
import { type Blank, labelOf } from '../blank/blank.js';
import { nominalCuts } from '../drawing/cut.js';
import { type Ink, inkStrokes } from '../drawing/ink.js';
import { plain } from '../drawing/strokes.js';
import { templateInk } from '../drawing/template.js';
import type { Template } from '../drawing/template-part.js';
import { tidied } from '../drawing/tidy.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { sketchOf } from './pens.js';
import { HAND_CAUTION, titleOf } from './sentences.js';

/** Outline, lip slot, pencil holes, datum line with its ticks, marks and label; no kerf in any line. */
export function templateSketch(blank: Blank, template: Template): Sketch {
  const strokes = inkStrokes(byHand(blank, template), { turnDeg: 0, move: [0, 0] });
  return sketchOf(tidied({ title: '', description: '', strokes }).strokes);
}

/** Holes grow by half the kerf; a label that keeps clear of smaller ones keeps clear of these, if it is no more. */
const LEAST_KERF_MM = 1;

function byHand(blank: Blank, { part, cutter, ink }: Template): Ink {
  if (cutter.guidance === 'steered') return ink;
  const placed = cutter.kerfMm <= LEAST_KERF_MM ? ink.label : null;
  const [cuts, slotIsCut] = [nominalCuts(part), part.slotMm !== null];
  return templateInk({ blank, cuts, slotIsCut, label: labelOf(blank) }, placed);
}

export const templateLeaflet = (blank: Blank): Leaflet => ({
  file: `templates/${blank.name}.pdf`,
  kind: 'template',
  pattern: blank.name,
  title: titleOf('Template', blank),
  kerf: 'not in it',
  notes: [
    'Ticks on the datum line stand 10 mm apart, counted from the nose.',
    ...(blank.slot
      ? [
          `Lip slot: ${plain(blank.slot.angleDeg)}° to the datum line, ${plain(blank.slot.widthMm)} mm wide.`,
        ]
      : []),
    ...blank.holes.map(
      ({ stationMm, diameterMm, depthMm }) =>
        `Weight mark at ${plain(stationMm)} mm: drill ${plain(diameterMm)} mm, ${plain(depthMm)} mm deep.`,
    ),
    ...(blank.hangers.length > 0
      ? [`Hangers at ${blank.hangers.map((h) => plain(h.stationMm)).join(', ')} mm.`]
      : []),
    HAND_CAUTION,
  ],
});
