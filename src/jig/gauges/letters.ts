/** What is sunk into the lettered face of a printed gauge: texts and ticks. */
import type { Plate, PlateText } from '../../gauge/plate.js';
import { add, type Point2, sub, times, unit } from '../../geometry/vec.js';
import { type Csg, OVERSHOOT } from '../../solid/csg.js';
import { type Face, placed, type Wish } from '../letters.js';
import type { Letters } from '../setup.js';

/** The upper side of a plate as it lies on the bed. */
const lettered = (thicknessMm: number): Face => ({
  name: 'lettered face',
  origin: [0, 0, thicknessMm],
  right: [1, 0, 0],
  up: [0, 1, 0],
  out: [0, 0, 1],
});

/** `corner` is the point of the plate's own frame that lies at the jig's origin. */
export type Lying = {
  readonly plate: Pick<Plate, 'ticks' | 'texts'>;
  readonly corner: Point2;
  readonly thicknessMm: number;
};

export function plateLetters({ plate, corner, thicknessMm }: Lying, letters: Letters) {
  const face = lettered(thicknessMm);
  const wish = ({ room }: PlateText, breaks: PlateText['breaks']): Wish => {
    const [left, bottom, right, top] = room.map((v, i) => v - corner[i % 2]);
    return { breaks, places: [{ face, rooms: [{ left, bottom, right, top }] }] };
  };
  const results = plate.texts.map((text) => {
    const full = placed([wish(text, text.breaks)], letters);
    if (full.sunk.length > 0 || !text.instead) return full;
    const short = placed([wish(text, text.instead)], letters);
    return short.sunk.length > 0 ? short : full;
  });
  return {
    sunk: results.flatMap((r) => r.sunk),
    leftOut: results.flatMap((r) => r.leftOut),
  };
}

/** Ticks as grooves that come out at the gauging edge. */
export function tickGrooves({ plate, corner, thicknessMm }: Lying, letters: Letters): Csg[] {
  if (plate.ticks.length === 0) return [];
  const lines = plate.ticks.map(([edge, end]) => {
    const open = sub(edge, times(unit(sub(end, edge)), OVERSHOOT));
    return [open, end].map((p) => add(p, times(corner, -1)));
  });
  const { strokeMm: width, depthMm } = letters;
  return [
    {
      kind: 'strokes',
      lines,
      width,
      fromZ: thicknessMm - depthMm,
      toZ: thicknessMm + OVERSHOOT,
    },
  ];
}
