import { type Ring, ringBox } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import type { JigBlank, JigProblem } from '../jig.js';
import type { JigSet } from '../kind.js';
import { belowNozzle } from '../nozzle.js';
import { bandsOf, seatOutline, swept } from '../outline.js';
import { type Boring, fromBelly } from './boring.js';
import { collarsThatHit, tooClose } from './conflicts.js';
import { type Cradle, cradleOf, type Ends, endsOf } from './cradle.js';
import {
  bossHalf,
  type Faced,
  faced,
  type Guided,
  guidedBy,
  isUpright,
  narrowBushings,
  outside,
  wholeSetting,
} from './guided.js';
import type { DrillStopSetup } from './setup.js';

export type DrillStopPlan = {
  readonly cradle: Cradle;
  /** The blank grown by the seat gap, and swept by its play toward belly and tail. */
  readonly cavity: Ring;
  /** Those from the belly from nose to tail, then tow eye and tail eye. */
  readonly guides: readonly Faced[];
  /** Middle of the hole in the floor, x and z. */
  readonly pushHole: Point2 | null;
};

type Planned =
  | { readonly plan: DrillStopPlan; readonly problems: readonly [] }
  | { readonly plan: null; readonly problems: readonly JigProblem[] };

export function planDrillStop(
  borings: readonly Boring[],
  blank: JigBlank,
  { setup, printer }: JigSet<DrillStopSetup>,
): Planned {
  const cavity = cavityOf(blank.profileRing, setup);
  const guided = borings.map(guidedBy(setup, cavity));
  const unfit = [
    ...belowNozzle(wallsOf(setup), printer.nozzleMm),
    ...narrowBushings(borings, setup),
    ...guided.filter(({ way }) => way === null).map(outside),
  ];
  if (unfit.length > 0) return { plan: null, problems: unfit };
  const stopFaceMm = stopFace(guided, cavity, setup);
  const belly = guided
    .filter(({ boring }) => fromBelly(boring))
    .map((g) => faced(g, isUpright(g) ? stopFaceMm : leaningFace(g, stopFaceMm)))
    .sort((a, b) => a.boring.mouth[0] - b.boring.mouth[0]);
  const eyes = guided.filter(({ boring }) => !fromBelly(boring));
  const ends = endsOf({ belly, eyes, cavity, stopFaceMm }, setup);
  const guides = [...belly, ...eyes.map((g) => faced(g, endFace(g, ends)))];
  const cradle = cradleOf({ guides, cavity, ends, stopFaceMm, blank }, setup);
  const problems = [...tooClose(guides), ...collarsThatHit(guides, cradle, setup)];
  if (problems.length > 0) return { plan: null, problems };
  const pushHole =
    ends.openAtTail || setup.pushHoleDiameterMm === 0
      ? null
      : pushHoleIn(cavity, setup.pushHoleDiameterMm / 2);
  return { plan: { cradle, cavity, guides, pushHole }, problems: [] };
}

/** Every wall the set-up gives, by its key. */
const wallsOf = (setup: DrillStopSetup): Record<string, number> => ({
  wallMm: setup.wallMm,
  floorMm: setup.floorMm,
  webMm: setup.webMm,
  ...(setup.bushingOuterDiameterMm > 0 ? { bushingShoulderMm: setup.bushingShoulderMm } : {}),
  ...(setup.pilots ? { 'pilots.webMm': setup.pilots.webMm } : {}),
  ...(setup.ears
    ? {
        'ears.thicknessMm': setup.ears.thicknessMm,
        'ears.lengthMm about the bolt': (setup.ears.lengthMm - setup.ears.boltMm) / 2,
      }
    : {}),
});

/** The play lies toward tail and belly only, so a blank pressed to nose and back sits where it shall. */
function cavityOf(profile: Ring, { seatClearanceMm, clearanceMm }: DrillStopSetup): Ring {
  const seated = seatOutline(profile, seatClearanceMm, seatClearanceMm);
  return swept(swept(seated, [2 * clearanceMm, 0]), [0, -2 * clearanceMm]);
}

/**
 * Low enough for walls and guides, and such that the collar setting of the deepest ballast hole (or
 * hanger, without one) is a whole millimeter.
 */
function stopFace(guided: readonly Guided[], cavity: Ring, { wallMm }: DrillStopSetup): number {
  const square = guided.filter(isUpright);
  const highest = Math.min(ringBox(cavity)[1] - wallMm, ...square.map((g) => g.endMm - g.leastMm));
  const ballast = square.filter(({ boring }) => boring.for === 'ballast');
  const [first, ...others] = ballast.length > 0 ? ballast : square;
  if (!first) return highest;
  const deepest = others.reduce((a, b) => (b.boring.depthMm > a.boring.depthMm ? b : a), first);
  return wholeSetting(deepest, highest);
}

/** Along the axis, the face of a boss that stands out of the stop face all round and is long enough. */
function leaningFace(guided: Guided, stopFaceMm: number): number {
  const { boring, acrossMm, endMm, leastMm } = guided;
  const [sin, cos] = boring.inward;
  const out = (stopFaceMm + acrossMm * sin - bossHalf(guided) * Math.abs(sin)) / cos;
  return wholeSetting(guided, Math.min(out, endMm - leastMm));
}

/** Nose end and tail end are the stop faces of the eyes. */
const endFace = ({ boring }: Guided, { noseEndMm, aftEndMm }: Ends): number =>
  boring.inward[0] > 0 ? noseEndMm : -aftEndMm;

const PUSH_STEPS = 40; // places tried along the cavity

/** Where the cavity is highest about a hole in its floor; null if it fits nowhere. */
function pushHoleIn(cavity: Ring, radius: number): Point2 | null {
  const [from, , to] = ringBox(cavity);
  const need = radius + 1; // mm: a rim of floor stays between the hole and the walls
  const band = bandsOf(cavity);
  const places = Array.from({ length: PUSH_STEPS - 1 }, (_, i) => {
    const x = from + ((to - from) * (i + 1)) / PUSH_STEPS;
    return { x, free: band(x - need, x + need) };
  }).flatMap(({ x, free }) => (free && free.high - free.low >= 2 * need ? [{ x, ...free }] : []));
  if (places.length === 0) return null;
  const best = places.reduce((a, b) => (b.high - b.low > a.high - a.low + 1e-9 ? b : a));
  return [best.x, (best.low + best.high) / 2];
}
