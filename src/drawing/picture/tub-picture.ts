/** The lure in its water and nothing else, to be held beside the tub: the float picture’s view from the side. */
import { rectRing } from '../../geometry/ring.js';
import type { FloatInput } from './input.js';
import { hangs } from './lure-view.js';
import type { Picture } from './picture.js';
import { sidePanel } from './side-panel.js';

/** What a page of A4 has between its margins, and a height that leaves the rest of it to the figures. */
const SIZE = { widthMm: 186, heightMm: 74 } as const;

/** Room for what stands on the edge of the view. */
const AIR_MM = 2;

export const tubPicture = (input: FloatInput): Picture => ({
  title: `${input.name} ${input.version} in the tub`,
  description: hangs(input.attitude)
    ? 'The lure hangs in the water.'
    : 'The lure lies in the water.',
  ...SIZE,
  shapes: [
    { kind: 'area', points: rectRing(0, 0, SIZE.widthMm, SIZE.heightMm), role: 'sheet' },
    ...sidePanel(input, [AIR_MM, AIR_MM, SIZE.widthMm - AIR_MM, SIZE.heightMm]),
  ],
});
