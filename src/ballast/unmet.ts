/** When no set of holes is left: which limit stands in the way, and what would meet it. */
import { heave } from '../float/heave.js';
import { crownTop } from '../float/immerse.js';
import { waterMm3 } from '../float/water.js';
import { along3 } from '../geometry/vec3.js';
import { type Draft, type Drawer, draftsFor } from './draft.js';
import type { Wanted } from './miss.js';
import { gathered, type Refusal, type Why } from './refuse.js';
import { mostRoom } from './room.js';
import { type Target, targetAt, upAt } from './wish.js';
import { type Hole, plugIn, type Workpiece } from './workpiece.js';

/** How high a lure of some mass floats at the trim that was wished, or level; null where it does not float. */
export type Height = { readonly freeboardMm: number; readonly dryRatio: number } | null;

export type Unmet =
  /** At no trim that was asked for is the lure so high. */
  | { readonly limit: 'freeboard-too-high'; readonly mostMm: number }
  /** Even without ballast the lure weighs more than it may. */
  | {
      readonly limit: 'too-heavy';
      readonly byG: number;
      /** A lighter timber would do; null where not even a weightless one would. */
      readonly timberKgM3: number | null;
      /** Or a lower wish: how high the lure floats without ballast. */
      readonly height: Height;
    }
  /** The wood holds less metal than is needed. */
  | {
      readonly limit: 'no-room';
      readonly missingG: number;
      /** What the best holes add, whatever their stations do to the trim. */
      readonly mostG: number;
      readonly holes: readonly Hole[];
      /** A metal so dense would do in them; null where no hole is possible at all. */
      readonly metalKgM3: number | null;
      /** Or a higher wish: how high the lure floats with them. */
      readonly height: Height;
    }
  /** So little metal is missing that shaping the belly would take it off again. */
  | { readonly limit: 'too-little'; readonly missingG: number }
  /** There is nothing to pour or glue in. */
  | { readonly limit: 'nothing-at-hand'; readonly why: Why; readonly facts: Refusal['facts'] }
  /** Each set of holes has something against it; this most often. */
  | { readonly limit: 'wood'; readonly why: Why; readonly facts: Refusal['facts'] }
  /** The wood allows holes for other trims only. */
  | {
      readonly limit: 'trim';
      /** The nearest that were found possible, less and more nose down than wished; null where there is none. */
      readonly belowDeg: number | null;
      readonly aboveDeg: number | null;
    }
  | { readonly limit: 'gm'; readonly bestMm: number; readonly leastMm: number }
  | { readonly limit: 'rolls-over'; readonly facts: Refusal['facts'] }
  | { readonly limit: 'misses-wish'; readonly facts: Refusal['facts'] };

type Failed = {
  readonly wanted: Wanted;
  readonly drawer: Drawer;
  readonly trims: readonly number[];
  readonly targets: readonly Target[];
  readonly drafts: readonly Draft[];
  readonly refusals: readonly Refusal[];
};

const NOTHING_AT_HAND: readonly Why[] = ['not-poured', 'metal-too-light', 'no-bit', 'no-weight'];

/** The limit nearest to being met: the water's if holes came so far, else the wood's, else the mass. */
export function unmetBy(piece: Workpiece, failed: Failed): Unmet {
  const { trims, targets, refusals } = failed;
  if (targets.length === 0) return { limit: 'freeboard-too-high', mostMm: tallest(piece, trims) };
  const wet = targets.filter(({ massG }) => massG > piece.bare.massG);
  // Trims come in the order in which they are wished, level first.
  const target = wet[0] ?? targets[0];
  const missingG = target.massG - piece.bare.massG;
  if (wet.length === 0) return tooHeavy(piece, target, -missingG);
  const water = waterLimit(failed);
  if (water?.limit === 'misses-wish' && failed.drawer.weights) {
    // The nearest weights miss the wish: because there are none between, or because all are too light.
    const room = noRoom(piece, failed, target);
    return room.mostG < missingG ? room : water;
  }
  if (water) return water;
  const tool = refusals.find(({ why }) => NOTHING_AT_HAND.includes(why));
  if (tool && refusals.every(({ why }) => NOTHING_AT_HAND.includes(why)))
    return { limit: 'nothing-at-hand', why: tool.why, facts: tool.facts };
  const wood = refusals.filter(
    ({ why }) => why !== 'station-outside' && !NOTHING_AT_HAND.includes(why),
  );
  if (wood.length > 0 && wood.every(({ why }) => why === 'sanded-into'))
    return { limit: 'too-little', missingG };
  const trim = failed.wanted.trimDeg === null ? null : trimLimit(piece, failed);
  if (trim) return trim;
  const room = noRoom(piece, failed, target);
  if (room.mostG < missingG) return room;
  const [{ why, facts }] = gathered(refusals);
  return { limit: 'wood', why, facts };
}

const tallest = ({ afloat }: Workpiece, trims: readonly number[]): number =>
  Math.max(
    ...trims.map((trim) => {
      const up = upAt(trim);
      const down = along3([0, 0, 0], -1, up);
      return crownTop(afloat.solid, up).height + crownTop(afloat.solid, down).height;
    }),
  );

function tooHeavy(piece: Workpiece, target: Target, byG: number): Unmet {
  const timberG = piece.bare.items
    .filter(({ kind }) => kind === 'timber')
    .reduce((sum, item) => sum + item.massG, 0);
  const timberKgM3 = piece.timber.densityKgM3 * (1 - byG / timberG);
  return {
    limit: 'too-heavy',
    byG,
    timberKgM3: timberKgM3 > 0 ? timberKgM3 : null,
    height: heightOf(piece, target, piece.bare.massG),
  };
}

function heightOf({ afloat }: Workpiece, { up }: Target, massG: number): Height {
  const { solid, waterDensityKgM3 } = afloat;
  const volumeMm3 = waterMm3(massG, waterDensityKgM3);
  if (volumeMm3 >= solid.volumeMm3) return null;
  const { planeOffsetMm } = heave(solid, up, volumeMm3);
  return {
    freeboardMm: crownTop(solid, up).height - planeOffsetMm,
    dryRatio: 1 - volumeMm3 / solid.volumeMm3,
  };
}

/** What the water says to holes that the wood allows. */
function waterLimit({ refusals, wanted }: Failed): Unmet | null {
  const nearest = (why: Why) =>
    refusals
      .filter((r) => r.why === why)
      .reduce<Refusal | null>((best, r) => (best && best.short <= r.short ? best : r), null);
  const missed = nearest('misses-wish');
  if (missed) return { limit: 'misses-wish', facts: missed.facts };
  const gm = nearest('gm-too-low');
  if (gm) return { limit: 'gm', bestMm: wanted.leastGmMm - gm.short, leastMm: wanted.leastGmMm };
  const rolls = nearest('rolls-over');
  return rolls && { limit: 'rolls-over', facts: rolls.facts };
}

const STEEPEST_DEG = 45;
const TRIM_STEP_DEG = { poured: 5, weights: 15 }; // sets of weights take longer to try

/** Trims for which the wood has room, in steps up to 45°; null when there is none. */
function trimLimit(piece: Workpiece, { wanted, drawer }: Failed): Unmet | null {
  const noseDown: number[] = [];
  const step = drawer.weights ? TRIM_STEP_DEG.weights : TRIM_STEP_DEG.poured;
  for (let deg = -STEEPEST_DEG; deg <= STEEPEST_DEG; deg += step) {
    const target = targetAt(wanted.goal, 0 - deg, piece.afloat);
    if (!target || target.massG <= piece.bare.massG) continue;
    const { drafts } = draftsFor(piece, target, { drawer, leastGmMm: wanted.leastGmMm });
    if (drafts.length > 0) noseDown.push(deg);
  }
  if (noseDown.length === 0) return null;
  const wished = 0 - (wanted.trimDeg ?? 0);
  const below = noseDown.filter((deg) => deg <= wished);
  const above = noseDown.filter((deg) => deg > wished);
  return {
    limit: 'trim',
    belowDeg: below.length > 0 ? Math.max(...below) : null,
    aboveDeg: above.length > 0 ? Math.min(...above) : null,
  };
}

function noRoom(
  piece: Workpiece,
  { drawer }: Failed,
  target: Target,
): Extract<Unmet, { readonly limit: 'no-room' }> {
  const missingG = target.massG - piece.bare.massG;
  const { holes, addsG } = mostRoom(piece, drawer);
  const mm3 = holes.reduce((total, hole) => total + plugIn(piece, hole).metalMm3, 0);
  return {
    limit: 'no-room',
    missingG,
    mostG: addsG,
    holes,
    metalKgM3: mm3 > 0 ? (missingG / mm3) * 1e6 + piece.timber.densityKgM3 : null,
    height: heightOf(piece, target, piece.bare.massG + addsG),
  };
}
