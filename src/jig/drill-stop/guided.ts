/** A boring with the guide that leads it: radii, collar, and how it meets the cradle's cavity. */
import type { Ring } from '../../geometry/ring.js';
import type { Point2 } from '../../geometry/vec.js';
import type { JigProblem } from '../jig.js';
import { type Boring, fromBelly, fromUpright, leanDeg, upright } from './boring.js';
import type { DrillStopSetup, Pilots } from './setup.js';
import { turned, type WayIn, wayIn } from './way-in.js';

export type Guided = {
  readonly boring: Boring;
  /** Of the hole the bit runs in. */
  readonly radius: number;
  /** Of the sleeve's seat; of the hole itself where there is no sleeve. */
  readonly seatRadius: number;
  readonly collarMm: number;
  /** Plastic about the axis that carries collar and guide; and what the guide alone needs. */
  readonly land: number;
  readonly wallLand: number;
  /** Least length of the guide. */
  readonly leastMm: number;
  readonly webMm: number;
  /** In the side view with the axis upright: the axis, the floor at full diameter, the mouth. */
  readonly acrossMm: number;
  readonly floorMm: number;
  readonly mouthMm: number;
  /** Of the hole in the cavity; null where part of it has no blank over it. */
  readonly way: WayIn | null;
  /** Lowest place of the cavity over the seat: there the guide ends. */
  readonly endMm: number;
};

/** How much of a collar's rim may stand out over an edge of its face: not worth a step in the print, mm. */
const COLLAR_OVER_EDGE = 1;

export function guidedBy(setup: DrillStopSetup, cavity: Ring): (boring: Boring) => Guided {
  return (boring) => {
    const { inward, mouth, depthMm } = boring;
    const lead = boring.for === 'ballast' ? ofBallast(boring, setup) : ofPilot(boring, setup);
    const [acrossMm, mouthMm] = upright(inward, mouth);
    const outline = turned(cavity, inward);
    const over = (radius: number) => wayIn(outline, acrossMm - radius, acrossMm + radius);
    const way = over(lead.seatRadius) && over(lead.radius);
    return {
      boring,
      ...lead,
      land: landOf(lead, lead.seatRadius + setup.wallMm),
      wallLand: lead.seatRadius + setup.wallMm,
      acrossMm,
      mouthMm,
      floorMm: mouthMm + depthMm,
      way,
      endMm: over(lead.seatRadius)?.touchMm ?? Number.NaN,
    };
  };
}

const landOf = ({ collarMm }: Pick<Guided, 'collarMm'>, wallLand: number): number =>
  Math.max(collarMm / 2 - COLLAR_OVER_EDGE, wallLand);

/** The guide with another collar on its bit. */
export const withCollar = <G extends Guided>(guide: G, collarMm: number): G => ({
  ...guide,
  collarMm,
  land: landOf({ collarMm }, guide.wallLand),
});

type Lead = Pick<Guided, 'radius' | 'seatRadius' | 'collarMm' | 'leastMm' | 'webMm'>;

function ofBallast({ diameterMm }: Boring, setup: DrillStopSetup): Lead {
  const { bushingOuterDiameterMm, bushingFitMm, bushingLengthMm, bushingShoulderMm } = setup;
  const radius = (diameterMm + setup.holeClearanceMm) / 2;
  const common = { radius, collarMm: setup.collarDiameterMm, webMm: setup.webMm };
  if (bushingOuterDiameterMm === 0)
    return { ...common, seatRadius: radius, leastMm: setup.guideLengthMm };
  return {
    ...common,
    seatRadius: (bushingOuterDiameterMm + bushingFitMm) / 2,
    leastMm: Math.max(setup.guideLengthMm, bushingLengthMm + bushingShoulderMm),
  };
}

function ofPilot({ diameterMm }: Boring, setup: DrillStopSetup): Lead {
  const pilots = setup.pilots as Pilots;
  const radius = (diameterMm + pilots.holeClearanceMm) / 2;
  return {
    radius,
    seatRadius: radius,
    collarMm: pilots.collarDiameterMm,
    leastMm: pilots.guideLengthMm,
    webMm: pilots.webMm,
  };
}

/** A sleeve of steel needs a wall of its own round the bit. */
const LEAST_SLEEVE_MM = 0.5;

export const narrowBushings = (
  borings: readonly Boring[],
  { bushingOuterDiameterMm: bushingMm }: DrillStopSetup,
): JigProblem[] =>
  borings.flatMap(({ for: what, mouth, diameterMm, path }) => {
    const leastMm = diameterMm + 2 * LEAST_SLEEVE_MM;
    if (what !== 'ballast' || bushingMm === 0 || bushingMm >= leastMm) return [];
    const facts = { stationMm: mouth[0], diameterMm, bushingMm, leastMm };
    return [{ code: 'jig-bushing-too-narrow', path, facts }];
  });

export const outside = ({ boring, seatRadius }: Guided): JigProblem => ({
  code: 'jig-hole-outside-blank',
  path: boring.path,
  facts: { stationMm: boring.mouth[0], guideDiameterMm: 2 * seatRadius },
});

/** A guide with the place of its stop face: along its axis, and in the side view. */
export type Faced = Guided & { readonly faceMm: number; readonly face: Point2 };

export const faced = (guided: Guided, faceMm: number): Faced => ({
  ...guided,
  faceMm,
  face: fromUpright(guided.boring.inward, [guided.acrossMm, faceMm]),
});

/** Highest face from which the setting of the collar is a whole millimeter. */
export const wholeSetting = ({ floorMm }: Guided, highestMm: number): number =>
  floorMm - Math.ceil(floorMm - highestMm - 1e-9);

export const isUpright = ({ boring }: Guided): boolean =>
  fromBelly(boring) && leanDeg(boring) === 0;
export const leans = ({ boring }: Guided): boolean => leanDeg(boring) !== 0;

/** Half the width of the boss of a leaning guide: its face carries the whole collar, clear of the wall. */
export const bossHalf = ({ land, collarMm }: Guided): number =>
  Math.max(land, collarMm / 2 + COLLAR_OVER_EDGE);
