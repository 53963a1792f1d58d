/** A face of a stack on paper: to be glued on its upper block, and sawn along. */
import type { Drawn } from '../drawing/drawing.js';
import { type FaceWork, faceByHand, faceDrawing, faceNotes } from '../drawing/face.js';
import { kerfNote } from '../drawing/strokes.js';
import type { PageItem } from '../formats/pdf.js';
import type { Leaflet, Sketch } from './paper-file.js';
import { lineItem, PENS, sketchOf } from './pens.js';
import { HAND_CAUTION } from './sentences.js';
import { TEXT_MM, textBox, textItem } from './words.js';

/** The face as its drawing has it, with the saw's way; drawn anew without kerf where a tool follows its lines. */
export function faceSketch({ work, drawn }: DrawnFace): Sketch {
  const byHand = work.kerfMm === null ? drawn : faceDrawing(faceByHand(work));
  const { items, box } = sketchOf(byHand.drawing.strokes);
  const grain = grainArrow(box[1]);
  const [, , right] = textBox(grain.word);
  const [x0, y0, x1, y1] = box;
  return {
    items: [...items, ...grain.lines, grain.word],
    box: [Math.min(x0, -0.5), y0 - GRAIN_MM, Math.max(x1, right), y1],
  };
}

/** A face and its drawing, as it is sawn in the run. */
export type DrawnFace = { readonly work: FaceWork; readonly drawn: Drawn };

const GRAIN_MM = 5; // room under the block
const [ARROW_MM, HEAD_MM] = [30, 2.5];

/** Along the block, which is along the grain; under whatever the face has lowest. */
function grainArrow(lowest: number) {
  const y = lowest - 2.5;
  const heads = [
    [0, 1],
    [ARROW_MM, -1],
  ].flatMap(([x, inward]) =>
    [1, -1].map((side) =>
      lineItem([x, y], [x + inward * HEAD_MM, y + (side * HEAD_MM) / 2], PENS.mark),
    ),
  );
  const lines: PageItem[] = [lineItem([0, y], [ARROW_MM, y], PENS.mark), ...heads];
  return { lines, word: textItem('grain', [ARROW_MM + 2, y - TEXT_MM / 3]) };
}

export function faceLeaflet(face: FaceWork, index: number, run: string): Leaflet {
  const byHand = faceByHand(face);
  const notes = faceNotes(byHand).slice(1);
  return {
    file: `faces/face-${index + 1}.pdf`,
    kind: 'face',
    pattern: null,
    title: `${face.title} of run ${run}`,
    kerf: 'not in it',
    notes: [
      ...notes.filter((note) => note !== kerfNote(null)),
      'Glue it on the upper block of the taped stack: lower left corner on lower left corner, grain along the arrow.',
      ...(face.kerfMm === null ? [] : [HAND_CAUTION]),
    ],
  };
}
