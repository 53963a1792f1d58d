/** Pattern and body → sawn blank, with everything that keeps it from being made. */
import type { BodyShape } from '../body/shape.js';
import { type ArcPath, flatten, segmentsOf } from '../geometry/arcpath.js';
import { meetings } from '../geometry/meet.js';
import { parallel } from '../geometry/parallel.js';
import { PATHS, type Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import { type BallastHole, type Blank, CHORD_TOLERANCE_MM } from './blank.js';
import { lipProblems } from './lip-rules.js';
import { nominal } from './nominal.js';
import { notched } from './notch.js';
import { ARC_FIT_MM, profilePath } from './profile.js';
import {
  eyeProblems,
  hangerProblems,
  holeProblems,
  slotProblems,
  thicknessProblems,
} from './rules.js';
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
  const problems = [...design, ...holeProblems(holes, slot, shape)];
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

/** Height of the sawn belly at a station: the lowest place where the outline crosses it; Infinity beyond its ends. */
export function bellyAt(profile: ArcPath, stationMm: number): number {
  const far = 1e4; // mm, beyond any lure
  const line = { from: [stationMm, -far], to: [stationMm, far], bulge: 0 } as const;
  const heights = segmentsOf(profile).flatMap((s) =>
    Math.min(s.from[0], s.to[0]) - 1 <= stationMm && Math.max(s.from[0], s.to[0]) + 1 >= stationMm
      ? meetings(s, line).map((p) => p[1])
      : [],
  );
  return Math.min(...heights);
}
