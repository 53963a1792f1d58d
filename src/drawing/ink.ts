/** What is drawn inside one part, in its own frame; the same wherever the part lies. */
import type { Motion } from '../geometry/vec.js';
import { moved } from '../geometry/vec.js';
import type { ReadyCut, Stroke } from './drawing.js';
import { labelStrokes, type PlacedLabel } from './label.js';
import type { Part } from './parts.js';
import { cutStroke, lineStroke } from './strokes.js';

export type Ink = {
  readonly cuts: readonly ReadyCut[];
  readonly marks: readonly Part[];
  /** Null when there is no room for it. */
  readonly label: PlacedLabel | null;
};

/** Cuts, marks and label where the part lies; the label is never upside down. */
export const inkStrokes = ({ cuts, marks, label }: Ink, motion: Motion): Stroke[] => [
  ...cuts.map((cut) => cutStroke(cut, motion)),
  ...marks.map(([from, to]) => lineStroke('MARK', moved(motion, from), moved(motion, to))),
  ...(label ? labelStrokes('LABEL', label, motion) : []),
];
