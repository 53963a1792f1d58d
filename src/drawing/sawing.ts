/** How a blank is sawn in a run: what the saw follows, and whether it makes the lip slot. */
import { type Blank, labelOf } from '../blank/blank.js';
import { arcOf, segmentsOf } from '../geometry/arcpath.js';
import type { Cutter } from '../pattern/run.js';
import { type Problem, problem } from '../problem.js';
import { checkCuts, cutPart, nominalPart } from './cut.js';
import type { BlankWork } from './face.js';

export type Sawing = { readonly work: BlankWork | null; readonly problems: readonly Problem[] };

export function sawing(blank: Blank, saw: Cutter): Sawing {
  const part = nominalPart(blank, saw);
  const { cuts, problems } = cutPart(part, saw, ['saw']);
  if (problems.length > 0) return { work: null, problems };
  return {
    work: { blank, cuts, slotIsCut: part.slotMm !== null, label: labelOf(blank) },
    problems: bladeProblem(blank, saw),
  };
}

export const checkSawing = (work: BlankWork, saw: Cutter): string[] =>
  checkCuts(nominalPart(work.blank, saw), saw, work.cuts);

/**
 * Least radius a band-saw blade turns, mm, by its width w: R ≈ 0.39·w², the middle rows of three
 * published blade radius charts for 1/4 to 3/4 inch; the charts call themselves general, ±25 %.
 */
const RADIUS_PER_WIDTH_SQUARED = 0.39;

/** A hollow tighter than the blade turns. Bulges do not count: a saw leaves the line there into waste. */
function bladeProblem(blank: Blank, saw: Cutter): Problem[] {
  if (saw.bladeWidthMm === null) return [];
  const limitMm = RADIUS_PER_WIDTH_SQUARED * saw.bladeWidthMm ** 2;
  const hollows = segmentsOf(blank.profile.path)
    .filter((s) => s.bulge < 0)
    .map((s) => ({ stationMm: s.from[0], radiusMm: arcOf(s).radius }))
    .sort((a, b) => a.radiusMm - b.radiusMm);
  const tightest = hollows[0];
  if (!tightest || tightest.radiusMm >= limitMm) return [];
  const narrowerMm = Math.floor(Math.sqrt(tightest.radiusMm / RADIUS_PER_WIDTH_SQUARED) * 10) / 10;
  const facts = {
    name: blank.name,
    ...tightest,
    bladeWidthMm: saw.bladeWidthMm,
    limitMm,
    narrowerMm,
  };
  return [problem('blade-too-wide', ['saw', 'bladeWidthMm'], facts)];
}
