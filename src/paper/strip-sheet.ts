/** The round-over map on paper: strips to be cut out and stuck on the sawn edges. */
import type { Blank } from '../blank/blank.js';
import type { Drawing } from '../drawing/drawing.js';
import { plain } from '../drawing/strokes.js';
import type { RoundOverMap } from '../gauge/round-over-map.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { sketchOf } from './pens.js';
import { ROUTER_CAUTION, titleOf } from './sentences.js';

export const stripSketch = ({ strokes }: Drawing): Sketch => sketchOf(strokes);

export const stripLeaflet = (blank: Blank, map: RoundOverMap): Leaflet => ({
  file: `gauges/${blank.name}-round-over.pdf`,
  kind: 'round-over-map',
  pattern: blank.name,
  title: titleOf('Round-over strips', blank),
  kerf: null,
  notes: [
    'Cut the strips out and stick each on its sawn edge, centerline on centerline; fold it over the side. Both sides are alike.',
    'Curves: how far from the arris a round-over may reach; broken: a flat at 45°.',
    'Figures: the round-over; the flat; wood to take off the side at its widest, all in mm. Half the thickness is the most.',
    `Off the edge ${plain(map.edgeMm)} mm. Least round-over: back ${tenths(map.back.least.radiusMm)} mm, belly ${tenths(map.belly.least.radiusMm)} mm.`,
    ROUTER_CAUTION,
  ],
});

/** Rounded down: a figure that is followed must not bite. */
const tenths = (mm: number): string => (Math.floor(mm * 10 + 1e-6) / 10).toFixed(1);
