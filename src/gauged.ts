/** The gauges of an order and its round-over maps, with their drawings; none when no set-up asks for them. */
import type { Blank } from './blank/blank.js';
import type { BodyShape } from './body/shape.js';
import type { Drawn } from './drawing/drawing.js';
import { gaugeDrawing, type SheetTools } from './drawing/gauge.js';
import { roundOverDrawing } from './drawing/round-over-strip.js';
import { type Gauges, type GaugeWish, makeGauges } from './gauge/gauges.js';
import { type RoundOverMap, roundOverMap } from './gauge/round-over-map.js';
import { toldLeftOut } from './jig/left-out.js';
import type { Job } from './job.js';
import type { Pattern } from './pattern/pattern.js';
import type { Problem } from './problem.js';

export type Gauged = {
  readonly gauges: Gauges;
  readonly map: RoundOverMap;
  /** To be cut from sheet. */
  readonly plates: Drawn;
  /** To be printed on paper. */
  readonly strips: Drawn;
};

export type GaugedResult = {
  readonly gauged: Gauged | null;
  readonly problems: readonly Problem[];
};

/** One set-up serves printed gauges and those cut from sheet. */
export const gaugeWish = ({ setups: { asked, byKind } }: Job) => ({
  wish: (byKind.gauges as (Job['setups']['byKind'][string] & GaugeWish) | undefined) ?? null,
  asked,
});

/** What is left out where nobody asked for it and the sheet is too small. */
const CUT = 'set of gauges to cut from sheet';

/** Stations that are no place for a gauge are told by the printed gauges; here they give nothing. */
export function gauged(
  { pattern, shape, blank }: { pattern: Pattern; shape: BodyShape; blank: Blank },
  { wish, asked }: { wish: GaugeWish | null; asked: boolean },
  tools: SheetTools | null,
): GaugedResult {
  const gauges = wish && makeGauges(shape, blank, wish).gauges;
  if (!gauges) return { gauged: null, problems: [] };
  const { drawn: plates, problems } = gaugeDrawing(blank, gauges, tools);
  if (!plates) return { gauged: null, problems: asked ? problems : toldLeftOut(problems, CUT) };
  const marked = { ...pattern, ...blank, sections: gauges.sections };
  const map = roundOverMap(shape, blank, pattern.sandingAllowanceMm, marked);
  return { gauged: { gauges, map, plates, strips: roundOverDrawing(blank, map) }, problems };
}
