/** What a maker finds along the sawn edge: eyes, hangers, ballast, lip, stations of the gauges. */
import type { Blank } from '../blank/blank.js';
import type { Pattern } from '../pattern/pattern.js';
import { alongAt, type Edge, placeOn } from './edge.js';
import type { SectionGauge } from './section.js';

export type EdgeMark = { readonly alongMm: number; readonly text: string };

export type Marked = Pick<Blank, 'hangers' | 'holes' | 'slot'> &
  Pick<Pattern, 'towEye' | 'tailEye'> & {
    readonly sections: readonly Pick<SectionGauge, 'number' | 'stationMm'>[];
  };

/** Those on this edge, from nose to tail; eyes at the ends stand on the edge their height is on. */
export function edgeMarks(edge: Edge, marked: Marked): readonly EdgeMark[] {
  const { sections, hangers, holes, slot, towEye, tailEye } = marked;
  const at = (stationMm: number, text: string) => ({ alongMm: alongAt(edge, stationMm), text });
  const onThis = (heightMm: number) => heightMm < 0 === (edge.side === 'belly');
  const belly =
    edge.side === 'belly'
      ? [
          ...hangers.map((h) => at(h.stationMm, 'HANGER')),
          ...holes.map((h) => at(h.stationMm, 'BALLAST')),
          ...(slot ? [at(slot.mouth[0], 'LIP')] : []),
        ]
      : [];
  const nose = (mm: number) => mm;
  const tail = (mm: number) => edge.lengthMm - mm;
  return [
    ...(towEye && onThis(towEye.heightMm)
      ? [{ alongMm: heightFrom(edge, nose, towEye.heightMm), text: 'TOW EYE' }]
      : []),
    ...sections.map((s) => at(s.stationMm, String(s.number))),
    ...belly,
    ...(tailEye && onThis(tailEye.heightMm)
      ? [{ alongMm: heightFrom(edge, tail, tailEye.heightMm), text: 'TAIL EYE' }]
      : []),
  ].sort((a, b) => a.alongMm - b.alongMm);
}

const STEP_MM = 0.1;

/** How far along the edge a height is first reached, counted from an end. */
function heightFrom(edge: Edge, from: (mm: number) => number, heightMm: number): number {
  const steps = Math.floor(edge.lengthMm / 2 / STEP_MM);
  const reached = (i: number) =>
    Math.abs(placeOn(edge, from(i * STEP_MM)).point[1]) >= Math.abs(heightMm);
  const first = Array.from({ length: steps }, (_, i) => i).find(reached) ?? steps;
  return from(first * STEP_MM);
}
