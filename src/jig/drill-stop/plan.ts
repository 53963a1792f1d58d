/** The measures of a drill-stop jig, before any solid is made. Side view of the blank: x aft, z up, mm. */
import { asRegion, offset } from '../../geometry/clip.js';
import { type Ring, ringBox } from '../../geometry/ring.js';
import { thinned } from '../../geometry/thin.js';
import type { Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import type { JigBlank, JigProblem } from '../jig.js';
import { bandsOf, columnAt, reachBetween, SEAT_CHORD, swept, wholeMicrons } from '../outline.js';
import type { DrillGuide } from './jig.js';
import type { DrillStopSetup } from './setup.js';

/** The cradle: its ends and faces in the side view, and heights above the bed it is printed on. */
export type Cradle = {
  readonly noseEndMm: number;
  readonly aftEndMm: number;
  /** Heights (z) of the face the collar stops at and of the base it stands on. */
  readonly stopFaceMm: number;
  readonly baseMm: number;
  readonly floorMm: number;
  readonly axisUpMm: number;
  readonly wallTopMm: number;
  /** The raised part of the belly wall about the guides; not needed when no higher than the walls. */
  readonly bossTopMm: number;
  readonly bossFromMm: number;
  readonly bossToMm: number;
  readonly bossInMm: number;
};

export type DrillStopPlan = {
  readonly cradle: Cradle;
  /** The blank grown by the seat gap, and swept by its play toward belly and tail. */
  readonly cavity: Ring;
  /** From nose to tail. */
  readonly guides: readonly DrillGuide[];
  /** For each guide a height inside the cavity from which its bore can start. */
  readonly boreFromMm: readonly number[];
  readonly openAtTail: boolean;
  /** Middle of the hole in the floor, x and z. */
  readonly pushHole: Point2 | null;
};

type Planned =
  | { readonly plan: DrillStopPlan; readonly problems: readonly [] }
  | { readonly plan: null; readonly problems: readonly JigProblem[] };

type Bore = {
  readonly hole: JigBlank['holes'][number];
  readonly radius: number;
  /** Plastic about the axis that carries collar and guide. */
  readonly land: number;
};

export function planDrillStop(blank: JigBlank, setup: DrillStopSetup): Planned {
  const bores = boresOf(blank, setup);
  const cavity = cavityOf(blank.profileRing, setup);
  const band = bandsOf(cavity);
  const bands = bores.map(({ hole, radius }) =>
    band(hole.stationMm - radius, hole.stationMm + radius),
  );
  const problems = [
    ...narrowBushings(blank, setup),
    ...bores.filter((_, i) => bands[i] === null).map(outside),
    ...tooClose(bores, setup.webMm),
  ];
  if (problems.length > 0) return { plan: null, problems };
  const boreFromMm = bands.map((b) => (b ? Math.min(b.low + 1, (b.low + b.high) / 2) : Number.NaN));
  const ends = endsOf(bores, cavity, setup);
  const stopFaceMm = stopFace(bores, cavity, ends, setup);
  const cradle = cradleOf({ bores, cavity, ends, stopFaceMm, blank, setup });
  const guides = bores.map((b) => guideOf(b, cavity, stopFaceMm));
  const pushHole =
    ends.openAtTail || setup.pushHoleDiameterMm === 0
      ? null
      : pushHoleIn(cavity, setup.pushHoleDiameterMm / 2);
  const plan = { cradle, cavity, guides, boreFromMm, openAtTail: ends.openAtTail, pushHole };
  return { plan, problems: [] };
}

/** How much of a collar's rim may stand out over an edge of its face: not worth a step in the print, mm. */
const COLLAR_OVER_EDGE = 1;

function boresOf({ holes }: JigBlank, setup: DrillStopSetup): Bore[] {
  return [...holes]
    .sort((a, b) => a.stationMm - b.stationMm)
    .map((hole) => {
      const guided = setup.bushingOuterDiameterMm || hole.diameterMm;
      const radius = (guided + setup.holeClearanceMm) / 2;
      const collar = setup.collarDiameterMm / 2 - COLLAR_OVER_EDGE;
      return { hole, radius, land: Math.max(collar, radius + setup.wallMm) };
    });
}

/** The play lies toward tail and belly only, so a blank pressed to nose and back sits where it shall. */
function cavityOf(profile: Ring, { seatClearanceMm, clearanceMm }: DrillStopSetup): Ring {
  const seated = offset([asRegion(profile)], seatClearanceMm);
  if (seated.length !== 1) throw new Fault(`grown profile fell into ${seated.length} pieces`);
  return swept(
    swept(thinned(seated[0].outer, SEAT_CHORD * seatClearanceMm), [2 * clearanceMm, 0]),
    [0, -2 * clearanceMm],
  );
}

/** A sleeve of steel needs a wall of its own round the bit. */
const LEAST_SLEEVE_MM = 0.5;

const narrowBushings = (
  { holes }: JigBlank,
  { bushingOuterDiameterMm }: DrillStopSetup,
): JigProblem[] =>
  holes
    .filter(
      (h) =>
        bushingOuterDiameterMm > 0 && bushingOuterDiameterMm < h.diameterMm + 2 * LEAST_SLEEVE_MM,
    )
    .map(({ stationMm, diameterMm }) => ({
      code: 'jig-bushing-too-narrow',
      facts: {
        stationMm,
        diameterMm,
        bushingMm: bushingOuterDiameterMm,
        leastMm: diameterMm + 2 * LEAST_SLEEVE_MM,
      },
    }));

const outside = ({ hole, radius }: Bore): JigProblem => ({
  code: 'jig-hole-outside-blank',
  facts: { stationMm: hole.stationMm, guideDiameterMm: 2 * radius },
});

function tooClose(bores: readonly Bore[], webMm: number): JigProblem[] {
  return bores.slice(1).flatMap((b, i) => {
    const a = bores[i];
    const betweenMm = b.hole.stationMm - b.radius - a.hole.stationMm - a.radius;
    if (betweenMm >= webMm) return [];
    const facts = {
      stationMm: a.hole.stationMm,
      nextStationMm: b.hole.stationMm,
      betweenMm,
      webMm,
    };
    return [{ code: 'jig-guides-too-close', facts }];
  });
}

type Ends = Pick<Cradle, 'noseEndMm' | 'aftEndMm'> & { readonly openAtTail: boolean };

/** Closed by a wall at the tail where the tail would stand out by less than a wall. */
function endsOf(bores: readonly Bore[], cavity: Ring, setup: DrillStopSetup): Ends {
  const [noseMm, , tailMm] = ringBox(cavity);
  const first = Math.min(...bores.map((b) => b.hole.stationMm - b.land));
  const last = Math.max(...bores.map((b) => b.hole.stationMm + b.land));
  const reached = Math.max(...bores.map((b) => b.hole.stationMm + setup.reachMm));
  const openAtTail = Math.max(reached, last) < tailMm - setup.wallMm;
  const noseEndMm = Math.min(noseMm - setup.wallMm, first);
  const aft = openAtTail ? Math.max(reached, last) : Math.max(tailMm + setup.wallMm, last);
  return { noseEndMm, aftEndMm: noseEndMm + wholeMicrons(aft - noseEndMm), openAtTail };
}

/**
 * Low enough for walls and guides, and such that the collar setting of the deepest hole is a whole
 * millimeter.
 */
function stopFace(
  bores: readonly Bore[],
  cavity: Ring,
  { noseEndMm, aftEndMm }: Ends,
  setup: DrillStopSetup,
): number {
  const highest = Math.min(
    lowest(cavity, noseEndMm, aftEndMm) - setup.wallMm,
    ...bores.map((b) => mouthOf(b, cavity) - setup.guideLengthMm),
  );
  const { depthMm, bellyMm } = bores.reduce((a, b) =>
    b.hole.depthMm > a.hole.depthMm ? b : a,
  ).hole;
  const settingMm = Math.ceil(depthMm + bellyMm - highest - 1e-9);
  return depthMm + bellyMm - settingMm;
}

/** Where the guide stops enclosing the bit: the lowest point of the cavity over the bore. */
const mouthOf = ({ hole, radius }: Bore, cavity: Ring): number =>
  lowest(cavity, hole.stationMm - radius, hole.stationMm + radius);

function lowest(cavity: Ring, from: number, to: number): number {
  const reach = reachBetween(cavity, from, to);
  if (!reach) throw new Fault(`no cavity from ${from} to ${to}`);
  return reach.low;
}

function cradleOf(given: {
  bores: readonly Bore[];
  cavity: Ring;
  ends: Ends;
  stopFaceMm: number;
  blank: JigBlank;
  setup: DrillStopSetup;
}): Cradle {
  const { bores, cavity, ends, stopFaceMm, blank, setup } = given;
  const half = blank.thicknessMm / 2;
  const land = Math.max(...bores.map((b) => b.land));
  const floorMm = Math.max(setup.floorMm, land - half - setup.seatClearanceMm);
  const axisUpMm = floorMm + setup.seatClearanceMm + half;
  const bossFromMm = Math.min(...bores.map((b) => b.hole.stationMm - b.land));
  const bossToMm = Math.max(...bores.map((b) => b.hole.stationMm + b.land));
  const bellies = cavity
    .map(([x]) => x)
    .filter((x) => x > bossFromMm && x < bossToMm)
    .map((x) => columnAt(cavity, x)?.low ?? stopFaceMm);
  return {
    noseEndMm: ends.noseEndMm,
    aftEndMm: ends.aftEndMm,
    stopFaceMm,
    baseMm: stopFaceMm + wholeMicrons(ringBox(cavity)[3] + setup.wallMm - stopFaceMm),
    floorMm,
    axisUpMm,
    wallTopMm: axisUpMm + half - setup.proudMm,
    bossTopMm: axisUpMm + land,
    bossFromMm,
    bossToMm,
    bossInMm: Math.max(...bellies),
  };
}

function guideOf(bore: Bore, cavity: Ring, stopFaceMm: number): DrillGuide {
  const { stationMm, diameterMm, depthMm, bellyMm } = bore.hole;
  return {
    stationMm,
    bitDiameterMm: diameterMm,
    holeDiameterMm: 2 * bore.radius,
    depthMm,
    collarSettingMm: depthMm + bellyMm - stopFaceMm,
    guideLengthMm: mouthOf(bore, cavity) - stopFaceMm,
    axis: { originMm: [stationMm, 0, stopFaceMm], direction: [0, 0, 1] },
  };
}

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
