/** The proofs of a jig as sentences for the maker. */
import { capital } from '../wording.js';
import type { Held } from './hold.js';
import type { Printing } from './printing.js';
import type { Side } from './side.js';

/** One sentence a tool: what takes each of its loads, and how hard a hand or clamp has to help. */
export function holdWords(held: readonly Held[]): string[] {
  const tools = [...new Set(held.map((h) => h.tool))];
  return tools.map((tool) => {
    const own = held.filter((h) => h.tool === tool);
    const loads = [...new Set(own.map((h) => h.load))];
    const told = loads.map((load) => loadWords(own.filter((h) => h.load === load)));
    return `${capital(tool)}: ${told.join('; ')}.`;
  });
}

/** One load and the same the other way, told together by the worse of the two. */
function loadWords(held: readonly Held[]): string {
  const [{ load, unit }] = held;
  if (held.some((h) => !h.held)) return `${load} is not held`;
  const sides = [...new Set(held.flatMap((h) => h.takenAt))];
  const play = Math.max(...held.map((h) => h.afterPlayMm));
  const hands = [...new Set(held.flatMap((h) => h.hands.map(({ called }) => called)))].map(
    (called) => {
      const ratios = held.flatMap((h) => h.hands.filter((hand) => hand.called === called));
      const most = Math.max(...ratios.map((r) => r.ratio));
      return `pressed ${called} with ${ratioText(most)} N for each ${unit}`;
    },
  );
  return [
    `${load} is taken ${sides.length > 0 ? `at the ${listed(sides)}` : 'by the hand'}`,
    ...(play > 0 ? [`after ${play.toFixed(2)} mm of play`] : []),
    ...hands,
  ].join(', ');
}

/** At least 0.01: a hand that is needed is never told as none. */
const ratioText = (ratio: number): string => Math.max(0.01, ratio).toFixed(2);

const listed = (sides: readonly Side[]): string =>
  sides.length < 2
    ? sides.join('')
    : `${sides.slice(0, -1).join(', ')} and ${sides[sides.length - 1]}`;

export function printingWords(printing: Printing): string {
  const { overhangDeg, bridgeMm, supportAtMm, massG, volumeMm3 } = printing;
  const { sizeMm } = printing;
  const needs = supportAtMm ? 'needs support' : 'needs no support';
  return (
    `${sizeMm.map((mm) => mm.toFixed(1)).join(' × ')} mm on the bed, ` +
    `${(volumeMm3 / 1000).toFixed(1)} cm³ of plastic, ${massG.toFixed(1)} g; ${needs}: ` +
    `steepest underside ${overhangDeg.toFixed(0)}° from upright, longest bridge ${bridgeMm.toFixed(1)} mm.`
  );
}
