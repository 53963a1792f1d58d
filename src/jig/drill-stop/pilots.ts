/** Pilots of the screw eyes and bores of the through-wire, and what keeps them out of the jig. */
import { sideView, tipDepthMm } from '../../blank/hole.js';
import { slotView } from '../../blank/slot.js';
import { halves } from '../../body/properties.js';
import type { BodyShape } from '../../body/shape.js';
import { betweenOutlines } from '../../geometry/clip.js';
import { add, dot, mix, type Point2, quarterLeft, sub, times } from '../../geometry/vec.js';
import { type EyePlace, endSurface, eyePlaces, screwEye } from '../../mass/eyes.js';
import type { Pattern } from '../../pattern/pattern.js';
import { USUAL_POINT_DEG } from '../../pattern/schema.js';
import { Fault } from '../../problem.js';
import type { JigBlank, JigProblem, JigWork } from '../jig.js';
import type { Boring, BoringFor } from './boring.js';
import type { Pilots } from './setup.js';
import { entrance } from './way-in.js';

/** Least wood round a pilot's bit, and between it and a slot or a hole, mm: common practice, no source. */
const LEAST_WOOD_MM = 0.5;
/** A pilot starts in the surface; it must have wood round it this far in, as the pattern's eyes must. */
const INSET_MM = 5;

export type PilotBorings = {
  readonly borings: readonly Boring[];
  /** Of pilots that are left out. */
  readonly problems: readonly JigProblem[];
};

/**
 * A boring for every eye, but for those whose bit would not stay in the wood, which are told. The
 * through-wire is bored from end to end and may come near to anything; where it is begun it must only
 * not come out.
 */
export function pilotBorings(work: JigWork, pilots: Pilots): PilotBorings {
  const { pattern, body, blank } = work;
  const results = eyePlaces(pattern, body.shape).flatMap((place) => {
    const boring = eyeBoring(place, work, pilots);
    if (!boring) return [];
    const begun = place.eye.kind === 'wire' && boring.for !== 'hanger';
    const problem =
      outsideWood(boring, body.shape, begun ? 0 : LEAST_WOOD_MM) ??
      (begun ? null : meets(boring, blank));
    return [{ boring, problem }];
  });
  return {
    borings: results.flatMap(({ boring, problem }) => (problem ? [] : [boring])),
    problems: results.flatMap(({ problem }) => (problem ? [problem] : [])),
  };
}

const CALLED: Readonly<Record<string, BoringFor>> = {
  towEye: 'tow eye',
  hangers: 'hanger',
  tailEye: 'tail eye',
};

/** The boring of an eye. Null for a hanger of wire that hangs under the wire already: it has no leg. */
export function eyeBoring(
  place: EyePlace,
  work: Pick<JigWork, 'pattern' | 'body' | 'materials'> & {
    readonly blank: Pick<JigBlank, 'profileRing'>;
  },
  pilots: Pick<Pilots, 'wireStartMm'>,
): Boring | null {
  const { pattern, body, blank, materials } = work;
  const inward = sub([0, 0], place.outward);
  const mouth = entrance(blank.profileRing, place.surface, inward);
  if (!mouth) throw new Fault(`${place.name} eye outside its blank`);
  const common = {
    for: CALLED[place.path[0]],
    path: place.path,
    mouth,
    inward,
    pointAngleDeg: USUAL_POINT_DEG,
  };
  const depthTo = (floor: Point2) => dot(sub(floor, mouth), inward);
  if (place.eye.kind === 'screw') {
    const { pilotMm, wireMm, shankMm } = screwEye(materials, place.eye.screwEye);
    const floor = add(place.surface, times(inward, shankMm));
    return { ...common, diameterMm: pilotMm ?? 0.75 * wireMm, depthMm: depthTo(floor) };
  }
  const diameterMm = pattern.throughWire?.boreMm ?? Number.NaN;
  if (common.for !== 'hanger') {
    return { ...common, diameterMm, depthMm: Math.min(pilots.wireStartMm, pattern.lengthMm / 2) };
  }
  const top = wireOver(pattern, body.shape, place.surface[0]);
  return top[1] > place.surface[1] ? { ...common, diameterMm, depthMm: depthTo(top) } : null;
}

/** The through-wire's line over a station: straight from the tow eye's height to the tail eye's. */
function wireOver({ towEye, tailEye }: Pattern, shape: BodyShape, stationMm: number): Point2 {
  const nose = endSurface(shape, towEye?.heightMm ?? 0, 'nose');
  const tail = endSurface(shape, tailEye?.heightMm ?? 0, 'tail');
  return mix(nose, tail, (stationMm - nose[0]) / (tail[0] - nose[0]));
}

/** The problem of a bit that comes out of the finished body, with the greatest depth that does not. */
function outsideWood(boring: Boring, shape: BodyShape, limitMm: number): JigProblem | null {
  const woodMm = leastWood(boring, shape);
  if (woodMm >= limitMm) return null;
  const { diameterMm, depthMm } = boring;
  const steps = Math.floor(depthMm / DEPTH_STEP_MM);
  const fits = Array.from({ length: steps }, (_, i) => depthMm - (i + 1) * DEPTH_STEP_MM).find(
    (d) => leastWood({ ...boring, depthMm: d }, shape) >= limitMm,
  );
  const facts = {
    eye: boring.for,
    stationMm: boring.mouth[0],
    diameterMm,
    depthMm,
    tipMm: tipDepthMm(boring),
    woodMm,
    limitMm,
    fitsMm: fits ?? 0,
  };
  return { code: 'pilot-outside', path: boring.path, facts };
}

const DEPTH_STEP_MM = 0.1;
const PLACES = 12; // along a pilot at which its wood is measured

/** Least wood of the finished body above, below and beside the bit, at full diameter and at its tip. */
function leastWood(boring: Boring, shape: BodyShape): number {
  const { mouth, inward, depthMm } = boring;
  const radius = boring.diameterMm / 2;
  const tip = tipDepthMm(boring);
  const from = Math.min(INSET_MM, depthMm / 2);
  const along = Array.from(
    { length: PLACES + 1 },
    (_, i) => from + ((depthMm - from) * i) / PLACES,
  );
  const rim = times(quarterLeft(inward), radius);
  const points = along.flatMap((t) => {
    const p = add(mouth, times(inward, t));
    return [woodAt(shape, add(p, rim), 0), woodAt(shape, sub(p, rim), 0), woodAt(shape, p, radius)];
  });
  return Math.min(...points, woodAt(shape, add(mouth, times(inward, tip)), 0));
}

/** Above and below a point of the center plane, and beside it from `asideMm` on; negative beyond nose or tail. */
function woodAt(shape: BodyShape, [x, z]: Point2, asideMm: number): number {
  const ends = Math.min(x, shape.lengthMm - x);
  if (ends <= 0) return ends;
  const [upper, lower] = halves(shape, x);
  const { b, h, n } = z >= 0 ? upper : lower;
  const level = Math.min(upper.h - z, lower.h + z);
  if (level <= 0 || h === 0) return level;
  return Math.min(level, b * (1 - Math.min(1, Math.abs(z) / h) ** n) ** (1 / n) - asideMm);
}

/** The problem of a pilot that runs into the lip slot or a ballast hole. */
function meets(boring: Boring, blank: JigBlank): JigProblem | null {
  const near = [
    ...(blank.slot ? [{ what: 'lip slot', view: slotView(blank.slot, blank.slot.depthMm) }] : []),
    ...blank.holes.map((hole) => ({ what: 'ballast hole', view: sideView(hole) })),
  ].map(({ what, view }) => ({ what, betweenMm: betweenOutlines(pilotView(boring), view) }));
  const nearest = near.reduce<(typeof near)[number] | null>(
    (a, b) => (a && a.betweenMm <= b.betweenMm ? a : b),
    null,
  );
  if (!nearest || nearest.betweenMm >= LEAST_WOOD_MM) return null;
  const facts = {
    eye: boring.for,
    stationMm: boring.mouth[0],
    diameterMm: boring.diameterMm,
    depthMm: boring.depthMm,
    ...nearest,
    limitMm: LEAST_WOOD_MM,
  };
  return { code: 'pilot-meets', path: boring.path, facts };
}

/** Outline of a pilot seen from the side, its tip included. */
function pilotView(boring: Boring): Point2[] {
  const { mouth, inward, depthMm, diameterMm } = boring;
  const rim = times(quarterLeft(inward), diameterMm / 2);
  const floor = add(mouth, times(inward, depthMm));
  const tip = add(mouth, times(inward, tipDepthMm(boring)));
  return [sub(mouth, rim), sub(floor, rim), tip, add(floor, rim), add(mouth, rim)];
}
