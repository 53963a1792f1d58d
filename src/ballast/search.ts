/** From a wish to the few best sets of holes, why others fail, and what stands in the way when none is left. */
import { letGo } from '../float/let-go.js';
import { waterG } from '../float/water.js';
import { dot3, sub3 } from '../geometry/vec3.js';
import { USUAL_POINT_DEG } from '../pattern/schema.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { type Choice, judged } from './choice.js';
import { type Draft, type Drawer, draftsFor } from './draft.js';
import { type Wanted, wantedOf } from './miss.js';
import { gathered, type Refusal, type Refused } from './refuse.js';
import { levelPoints, quickPoints } from './score.js';
import { type Unmet, unmetBy } from './unmet.js';
import { type Goal, type Target, targetAt, wishedTrims } from './wish.js';
import type { Hole, Workpiece } from './workpiece.js';

export type BallastResult = {
  /** What was searched for; `assumed` tells that the height it floats at is our own choice. */
  readonly wanted: Wanted;
  /** The best first. */
  readonly choices: readonly Choice[];
  readonly refused: readonly Refused[];
  /** Null when there is a choice. */
  readonly unmet: Unmet | null;
};

/** How many sets are looked at closely, and how many are offered. */
const CLOSE_LOOKS = 16;
const CHOICES = 5;

/** Metals at hand when neither the wish nor the pattern's ballast names any. */
const USUAL_METALS = ['lead', 'tin'];

/**
 * Deterministic; the same wish gives the same choices. Wishes that contradict themselves are told by
 * `wishProblems` first, names that are in no table by `itemRules`.
 *
 * Where the wish leaves the trim open, a few trims are tried, level first; level ones rank higher.
 */
export function searchBallast(piece: Workpiece, wish: WishFile): BallastResult {
  const wanted = wantedOf(wish);
  const drawer = drawerOf(piece, wish);
  const tried: Tried = { trims: [], targets: [], drafts: [], refusals: [] };
  for (const trims of wishedTrims(wish)) {
    tryTrims(piece, wanted, drawer, trims, tried);
    if (differing(tried.drafts, CLOSE_LOOKS).length === CLOSE_LOOKS) break;
  }
  const { choices, refused } = bestOf(piece, wanted, tried.drafts);
  const refusals = [...tried.refusals, ...refused];
  const unmet = choices.length > 0 ? null : unmetBy(piece, { ...tried, refusals, wanted, drawer });
  return { wanted, choices, refused: gathered(refusals), unmet };
}

/** Filled from round to round. */
type Tried = {
  readonly trims: number[];
  readonly targets: Target[];
  readonly drafts: Draft[];
  readonly refusals: Refusal[];
};

function tryTrims(
  piece: Workpiece,
  { goal, leastGmMm }: Wanted,
  drawer: Drawer,
  trims: readonly number[],
  tried: Tried,
): void {
  for (const trim of trims) {
    tried.trims.push(trim);
    const target = targetAt(goal, trim, piece.afloat);
    if (!target) continue;
    if (!needsMetal(piece, target)) {
      tried.targets.push(target);
      continue;
    }
    const first = draftsFor(piece, target, { drawer, leastGmMm });
    const mended = underWay(piece, goal, target, first.drafts[0]);
    tried.targets.push(mended ?? target);
    if (mended && !needsMetal(piece, mended)) continue;
    const found = mended ? draftsFor(piece, mended, { drawer, leastGmMm }) : first;
    tried.drafts.push(...found.drafts);
    tried.refusals.push(...found.refusals);
  }
}

/** So near, relative, the speed of a first draft is good enough. */
const SAME_SPEED = 0.03;

/**
 * The target once more, with the net weight that gives the wished speed at the attitude under way. How
 * stiffly a lure holds the attitude at which it hangs is known only from a draft; others are near it.
 */
function underWay(
  { afloat }: Workpiece,
  goal: Goal,
  target: Target,
  draft: Draft | undefined,
): Target | null {
  if (goal.kind !== 'drifts' || draft === undefined) return null;
  const { massG, cgMm } = draft.mass;
  const cbAboveCgMm = dot3(target.up, sub3(target.cbMm, cgMm));
  const { cmS } = letGo(afloat, { massG, upInBody: target.up, cbAboveCgMm });
  const ratio = goal.speed.cmS / cmS;
  if (!(Math.abs(ratio - 1) > SAME_SPEED)) return null;
  const wholeG = waterG(afloat.solid.volumeMm3, afloat.waterDensityKgM3);
  return { ...target, massG: wholeG + (target.massG - wholeG) * ratio ** 2 };
}

const needsMetal = ({ bare }: Workpiece, { massG }: Target): boolean => massG > bare.massG;

/** What is at hand: of the wish, else of the pattern's own holes, else what is usual. */
function drawerOf({ design, materials }: Workpiece, wish: WishFile): Drawer {
  const own = design.pattern.ballast;
  const metals = [...new Set(own.map(({ metal }) => metal))];
  return {
    bitsMm: [...(wish.bitsMm ?? materials.bits.drillMm)].sort((a, b) => a - b),
    metals: wish.metals ?? (metals.length > 0 ? metals : USUAL_METALS),
    pointAngleDeg: own[0]?.pointAngleDeg ?? USUAL_POINT_DEG,
    pour: own[0]?.pour ?? 'topped-up',
    weights: wish.weights,
    mostHoles: wish.mostHoles,
  };
}

/** Looks closely at drafts, the likeliest first, until there are choices enough. */
function bestOf(piece: Workpiece, wanted: Wanted, drafts: readonly Draft[]) {
  const level = ({ target }: Draft) => (wanted.trimDeg === null ? levelPoints(target.trimDeg) : 0);
  const ranked = drafts
    .map((draft) => ({ ...draft, points: quickPoints(draft) + level(draft) }))
    .sort((a, b) => a.points - b.points);
  const choices: Choice[] = [];
  const refused: Refusal[] = [];
  for (const draft of differing(ranked, CLOSE_LOOKS)) {
    const judgment = judged(piece, wanted, draft);
    if ('why' in judgment) refused.push(judgment);
    else choices.push(judgment);
    if (choices.length === CHOICES) break;
  }
  return { choices: choices.sort((a, b) => a.points - b.points), refused };
}

/** The first so many that are not nearly the same as one before them. */
function differing<Set extends { readonly holes: readonly Hole[] }>(
  sets: readonly Set[],
  most: number,
): Set[] {
  const out: Set[] = [];
  for (const set of sets) {
    if (out.length === most) break;
    if (out.every((other) => differ(other.holes, set.holes))) out.push(set);
  }
  return out;
}

const [OTHER_BIT, OTHER_STATION_MM] = [1.15, 6]; // ratio of diameters; about the width of a hole

function differ(a: readonly Hole[], b: readonly Hole[]): boolean {
  if (a.length !== b.length) return true;
  return a.some((hole, i) => {
    const [small, large] = [hole.diameterMm, b[i].diameterMm].sort((p, q) => p - q);
    return (
      hole.metal !== b[i].metal ||
      hole.weight !== b[i].weight ||
      large > small * OTHER_BIT ||
      Math.abs(hole.stationMm - b[i].stationMm) > OTHER_STATION_MM
    );
  });
}
