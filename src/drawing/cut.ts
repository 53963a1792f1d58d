/**
 * Kerf: nominal geometry → what the tool follows. The only place where kerf is dealt with; what
 * comes out (`ReadyCut`) is another type than what goes in (`Nominal`), so it cannot happen twice.
 */
import type { Blank } from '../blank/blank.js';
import type { Nominal } from '../blank/nominal.js';
import { type Circle, flatten, pathArea, pathLength, polyline } from '../geometry/arcpath.js';
import { asRegion, offset } from '../geometry/clip.js';
import { parallel } from '../geometry/parallel.js';
import { regionArea } from '../geometry/ring.js';
import { distanceToEdge } from '../geometry/vec.js';
import type { Cutter } from '../pattern/run.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { ReadyCut } from './drawing.js';

/** What must lie between neighboring outlines: the cuts' width and wander, and the web of wood asked for. */
export function gapMm(cutter: Cutter, webMm: number): number {
  const cut = cutter.kerfMm + (cutter.guidance === 'steered' ? cutter.wanderMm : 0);
  // With no web one cut parts two neighbors; with a web each outline has a cut of its own.
  return webMm === 0 ? cut : 2 * cut + webMm;
}

/** A part to cut: nominal outline and round openings, and whose it is. */
export type NominalPart = {
  readonly name: string;
  readonly outline: Nominal;
  /** Width of the narrowest notch of the outline; null without one. */
  readonly slotMm: number | null;
  readonly openings: readonly Circle[];
};

/** The blank as a part for this cutter: with the lip slot in its outline if the cutter makes it. */
export function nominalPart(
  blank: Blank,
  { cutsLipSlot }: Pick<Cutter, 'cutsLipSlot'>,
  openings: readonly Circle[] = [],
): NominalPart {
  const slot = cutsLipSlot ? blank.slot : null;
  const outline = slot ? blank.outline : blank.profile;
  return { name: blank.name, outline, slotMm: slot?.widthMm ?? null, openings };
}

export type CutResult = {
  readonly cuts: readonly ReadyCut[];
  readonly problems: readonly Problem[];
};

/** Least room beyond the kerf for a notch or opening to be more than a line, mm. */
const LEAST_OPENING_MM = 0.02;

/**
 * A steered cut gets the outline itself; a following one gets paths half a kerf outside outlines and
 * inside openings. `key` is the cutter's place in the run file, for problems.
 */
export function cutPart(part: NominalPart, cutter: Cutter, key: KeyPath): CutResult {
  const { name, outline, slotMm, openings } = part;
  const from = `${key.join('.')}.kerfMm`;
  const at = [...key, 'kerfMm'];
  const { kerfMm } = cutter;
  const narrow = slotMm !== null && slotMm < kerfMm + LEAST_OPENING_MM;
  const small = openings.filter((c) => 2 * c.radius < kerfMm + LEAST_OPENING_MM);
  const problems: Problem[] = [
    ...(narrow
      ? [problem('slot-narrower-than-kerf', at, { name, slotMm, kerfMm, key: from })]
      : []),
    ...small.map((c) =>
      problem('opening-vanishes', at, { name, diameterMm: 2 * c.radius, kerfMm, key: from }),
    ),
  ];
  if (problems.length > 0) return { cuts: [], problems };
  const half = cutter.guidance === 'follows' ? kerfMm / 2 : 0;
  const moved = parallel(outline.path, half);
  if ('kind' in moved) {
    const radiusMm = moved.kind === 'too-tight' ? moved.radius : 0;
    const facts = { stationMm: moved.at[0], radiusMm, distanceMm: half, reason: 'half the kerf' };
    return { cuts: [], problems: [problem('hollow-too-tight', at, facts)] };
  }
  return {
    cuts: [
      ...openings.map(
        ({ center, radius }): ReadyCut => ({
          layer: 'CUT_INSIDE',
          shape: { kind: 'circle', circle: { center, radius: radius - half } },
        }),
      ),
      { layer: 'CUT_OUTSIDE', shape: { kind: 'path', path: moved } },
    ],
    problems: [],
  };
}

/** The part's own lines, for a hand that cuts on their waste side. */
export const nominalCuts = ({ outline, openings }: NominalPart): readonly ReadyCut[] => [
  ...openings.map(
    (circle): ReadyCut => ({ layer: 'CUT_INSIDE', shape: { kind: 'circle', circle } }),
  ),
  { layer: 'CUT_OUTSIDE', shape: { kind: 'path', path: outline.path } },
];

/**
 * As `cutPart`, for a part with hollows that may be tighter than the cutter: there it goes in as far
 * as it can. `leftMm` is the most that then stands in a hollow; 0 where none is too tight.
 */
export function cutReaching(
  part: NominalPart,
  cutter: Cutter,
  key: KeyPath,
): CutResult & { readonly leftMm: number } {
  const exact = cutPart(part, cutter, key);
  const isTight = exact.problems.some((p) => p.code === 'hollow-too-tight');
  if (!isTight) return { ...exact, leftMm: 0 };
  const half = cutter.kerfMm / 2;
  const wanted = flatten(part.outline.path, CHORD_MM);
  const followed = offset([asRegion(wanted)], half, CHORD_MM);
  if (followed.length !== 1) return { ...exact, leftMm: 0 };
  const path = polyline(followed[0].outer, true);
  const [made] = offset(followed, -half, CHORD_MM);
  const leftMm = Math.max(...wanted.map((p) => distanceToEdge(p, made.outer)));
  return { cuts: [{ layer: 'CUT_OUTSIDE', shape: { kind: 'path', path } }], problems: [], leftMm };
}

const CHORD_MM = 0.002; // of a polygon that stands for a curve that can not be followed

/**
 * Holds compensated outlines against a polygon offset of the nominal one, a method of its own, and
 * openings against their radii. Areas agree within the chords' error along the outline.
 */
export function checkCuts(part: NominalPart, cutter: Cutter, cuts: readonly ReadyCut[]): string[] {
  const half = cutter.guidance === 'follows' ? cutter.kerfMm / 2 : 0;
  const chord = 1e-3; // mm
  const polygon = offset([asRegion(flatten(part.outline.path, chord))], half, chord);
  const want = polygon.length === 1 ? regionArea(polygon[0]) : Number.NaN;
  const outlines = cuts.flatMap((c) => (c.shape.kind === 'path' ? [c.shape.path] : []));
  const out: string[] = [];
  if (outlines.length !== 1) out.push(`${part.name}: ${outlines.length} outlines to cut`);
  for (const path of outlines) {
    const got = pathArea(path);
    if (!(Math.abs(got - want) <= 4 * chord * pathLength(path))) {
      out.push(`${part.name}: cut outline encloses ${got} mm², polygon offset ${want} mm²`);
    }
  }
  const holes = cuts.flatMap((c) => (c.shape.kind === 'circle' ? [c.shape.circle.radius] : []));
  const radii = part.openings.map((c) => c.radius - half);
  if (holes.join() !== radii.join())
    out.push(`${part.name}: openings ${holes} instead of ${radii}`);
  return out;
}
