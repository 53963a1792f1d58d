/** Pattern and body → sawn blank, with everything that keeps it from being made. */
import type { BodyShape } from '../body/shape.js';
import { flatten } from '../geometry/arcpath.js';
import { parallel } from '../geometry/parallel.js';
import { PATHS, type Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import { type BallastHole, type Blank, CHORD_TOLERANCE_MM } from './blank.js';
import { holeProblems, mouthProblems } from './hole-rules.js';
import { lipProblems } from './lip-rules.js';
import { nominal } from './nominal.js';
import { notched } from './notch.js';
import { ARC_FIT_MM, profilePath } from './profile.js';
import { eyeProblems, hangerProblems, slotProblems, thicknessProblems } from './rules.js';
import { bellyAt } from './sawn-belly.js';
import { lipSlot } from './slot.js';

export type BlankResult = { readonly blank: Blank | null; readonly problems: readonly Problem[] };

/** The blank is null when there is any problem; all of them are told. */
export function makeBlank(pattern: Pattern, shape: BodyShape): BlankResult {
  const finished = profilePath(shape);
  const profile = parallel(finished, pattern.sandingAllowanceMm);
  const slot = pattern.lip && lipSlot(shape, pattern.lip);
  const design = [
    ...thicknessProblems(pattern, shape),
    ...eyeProblems(pattern, shape),
    ...lipProblems(pattern),
    ...hangerProblems(pattern, slot),
    ...(slot ? slotProblems(slot, shape) : []),
  ];
  if ('kind' in profile) {
    const facts = {
      stationMm: profile.at[0],
      radiusMm: profile.kind === 'too-tight' ? profile.radius : 0,
      distanceMm: pattern.sandingAllowanceMm,
      reason: 'sandingAllowanceMm',
    };
    return {
      blank: null,
      problems: [...design, problem('hollow-too-tight', PATHS.allowance, facts)],
    };
  }
  const holes = pattern.ballast.map(
    (b): BallastHole => ({ ...b, bellyMm: bellyAt(profile, b.stationMm) }),
  );
  // Where a bit does not enter at its mouth, nothing else said of its hole would be right.
  const hidden = mouthProblems(holes, profile);
  const problems = [...design, ...(hidden.length > 0 ? hidden : holeProblems(holes, slot, shape))];
  if (problems.length > 0) return { blank: null, problems };
  const outline = slot ? notched(profile, slot) : profile;
  const chords = CHORD_TOLERANCE_MM - ARC_FIT_MM;
  const blank: Blank = {
    name: pattern.name,
    version: pattern.version,
    lengthMm: pattern.lengthMm,
    thicknessMm: pattern.blockThicknessMm,
    outline: nominal(outline),
    profile: nominal(profile),
    outlineRing: flatten(outline, chords),
    profileRing: flatten(profile, chords),
    slot,
    holes,
    hangers: pattern.hangers.map(({ stationMm }) => ({ stationMm })),
  };
  return { blank, problems };
}
