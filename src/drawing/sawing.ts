/** How a blank is sawn in a run: what the saw follows, and whether it makes the lip slot. */
import { type Blank, labelOf } from '../blank/blank.js';
import type { Cutter } from '../pattern/run.js';
import type { Problem } from '../problem.js';
import { checkCuts, cutPart, nominalPart } from './cut.js';
import type { BlankWork } from './face.js';

export type Sawing = { readonly work: BlankWork | null; readonly problems: readonly Problem[] };

export function sawing(blank: Blank, saw: Cutter): Sawing {
  const part = nominalPart(blank, saw);
  const { cuts, problems } = cutPart(part, saw, ['saw']);
  if (problems.length > 0) return { work: null, problems };
  return {
    work: { blank, cuts, slotIsCut: part.slotMm !== null, label: labelOf(blank) },
    problems: [],
  };
}

export const checkSawing = (work: BlankWork, saw: Cutter): string[] =>
  checkCuts(nominalPart(work.blank, saw), saw, work.cuts);

/** What is sawn, as the planning of cuts sees it: nominal outline, what the tool follows, openings. */
export const sawnPart = ({ blank, cuts }: BlankWork, saw: Cutter) => {
  const { outline, openings } = nominalPart(blank, saw);
  const paths = cuts.flatMap(({ shape }) => (shape.kind === 'path' ? [shape.path] : []));
  return { outline: outline.path, profile: blank.profile.path, path: paths[0], openings };
};
