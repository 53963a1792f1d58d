/** What keeps a ballast hole from being drilled: rules on the wood round it. */
import { type Chord, chordsOf } from '../body/chord.js';
import { type BodyShape, offsetAt } from '../body/shape.js';
import type { ArcPath } from '../geometry/arcpath.js';
import { PATHS } from '../pattern/pattern.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import { type BallastHole, pointBeyondMm } from './blank.js';
import { fromUpright, onAxis, reachOf, uprightMouth } from './hole.js';
import { holeAtSlot, LEAST_WOOD_MM, meetingHoles } from './hole-neighbors.js';
import { sawnBellyAlong } from './sawn-belly.js';
import type { LipSlot } from './slot.js';

export function holeProblems(
  holes: readonly BallastHole[],
  slot: LipSlot | null,
  shape: BodyShape,
): Problem[] {
  return [
    ...holes.flatMap((hole, i) => oneHole(hole, i, shape)),
    ...meetingHoles(holes),
    ...(slot ? holes.flatMap((hole, i) => holeAtSlot(hole, i, slot)) : []),
  ];
}

/** A tilted bit must not meet the sawn blank on its way to where it is set. */
export function mouthProblems(holes: readonly BallastHole[], profile: ArcPath): Problem[] {
  return holes.flatMap((hole, i) => {
    const { stationMm, tiltDeg } = hole;
    if (tiltDeg === 0) return [];
    const [place, mouth] = uprightMouth(hole);
    const first = sawnBellyAlong(profile, place, tiltDeg);
    if (first > mouth - SAME_MM) return [];
    const [otherMm] = fromUpright(hole, [place, first]);
    return [problem('hole-mouth-hidden', PATHS.ballast(i), { stationMm, tiltDeg, otherMm })];
  });
}

const SAME_MM = 1e-4; // the mouth found twice, by lines of different directions

function oneHole(hole: BallastHole, i: number, shape: BodyShape): Problem[] {
  const { stationMm, diameterMm, depthMm } = hole;
  const path = PATHS.ballast(i);
  const { foreMm, aftMm } = reachOf(hole);
  const room = { leastMm: foreMm, mostMm: shape.lengthMm - aftMm };
  if (stationMm < room.leastMm || stationMm > room.mostMm) {
    const end = stationMm < room.leastMm ? 'nose' : 'tail';
    return [problem('hole-outside', path, { stationMm, diameterMm, end, ...room })];
  }
  const out: Problem[] = [];
  const { atMm, breadthMm } = narrowest(hole, shape);
  const widest = breadthMm - 2 * LEAST_WOOD_MM;
  if (diameterMm > widest) {
    const facts = {
      stationMm: atMm,
      diameterMm,
      breadthMm,
      limitMm: Math.max(0, widest),
      wallMm: LEAST_WOOD_MM,
    };
    out.push(problem('hole-too-wide', path, facts));
  }
  const ends = deepEnds(hole, shape);
  const over = woodOver(hole, shape, ends);
  const { woodMm, side } = over(depthMm);
  if (woodMm < LEAST_WOOD_MM) {
    const facts = {
      stationMm,
      depthMm,
      pointMm: pointBeyondMm(hole),
      woodMm,
      limitMm: Math.max(0, Math.floor(deepest(over, depthMm) * 10) / 10),
      leastMm: LEAST_WOOD_MM,
      side,
    };
    out.push(problem('hole-through-back', path, facts));
  }
  return [...out, ...shallow(hole, ends, path)];
}

/** Shaping must not take a hole away, nor leave the floor of a tilted one half outside. */
function shallow(hole: BallastHole, ends: readonly DeepEnd[], path: KeyPath): Problem[] {
  const { stationMm, depthMm, tiltDeg } = hole;
  const [, mouth] = uprightMouth(hole);
  const onAxis = ends.filter((end) => end.across === 0 && end.y === 0);
  const enters = (tiltDeg === 0 ? onAxis : ends).map((end) => end.chord.low);
  const limitMm = Math.max(...enters) - mouth;
  if (depthMm > limitMm) return [];
  return tiltDeg === 0
    ? [problem('hole-sanded-away', path, { stationMm, depthMm, limitMm })]
    : [problem('hole-floor-outside', path, { stationMm, depthMm, tiltDeg, limitMm })];
}

/** Where along its full diameter a hole has least body to either side, and how wide that is. */
function narrowest(
  hole: BallastHole,
  { halfBreadthSquared }: BodyShape,
): { readonly atMm: number; readonly breadthMm: number } {
  const [from, to] = [hole.stationMm, onAxis(hole, hole.depthMm)[0]];
  // Between two knots the half-breadth rises or falls all the way.
  const between = halfBreadthSquared.knots.filter((x) => (x - from) * (x - to) < 0);
  const atMm = [from, to, ...between].reduce((a, b) =>
    halfBreadthSquared.value(b) < halfBreadthSquared.value(a) ? b : a,
  );
  return { atMm, breadthMm: 2 * offsetAt(halfBreadthSquared, atMm) };
}

/** A place at the deep end of a hole, by the line through it along the axis. */
type DeepEnd = {
  /** From the axis, and from the center plane. */
  readonly across: number;
  readonly y: number;
  /** Over the full-diameter floor. */
  readonly beyond: number;
  /** The finished body on that line. */
  readonly chord: Chord;
};

const RIM_POINTS = 16; // to a quarter of the hole's rim

/** The rim of the full-diameter floor, all round, and the tip of the point. */
function deepEnds(hole: BallastHole, shape: BodyShape): DeepEnd[] {
  const [place] = uprightMouth(hole);
  const chordsAt = chordsOf(shape, hole.tiltDeg);
  const r = hole.diameterMm / 2;
  const rim = Array.from({ length: 4 * RIM_POINTS }, (_, i) => {
    const angle = (Math.PI * i) / (2 * RIM_POINTS);
    return { across: r * Math.cos(angle), y: Math.abs(r * Math.sin(angle)), beyond: 0 };
  });
  return [...rim, { across: 0, y: 0, beyond: pointBeyondMm(hole) }].map((end) => ({
    ...end,
    chord: chordsAt(place + end.across)(end.y),
  }));
}

/** Wood over a hole of some depth, and the side of the finished body it ends at. */
type WoodOver = (depthMm: number) => { readonly woodMm: number; readonly side: 'back' | 'belly' };

/** Least wood over the deep ends: on along the axis or straight up to the back, whichever is less. */
function woodOver(hole: BallastHole, shape: BodyShape, ends: readonly DeepEnd[]): WoodOver {
  const [place, mouth] = uprightMouth(hole);
  const upward = chordsOf(shape, 0);
  return (depthMm) =>
    ends.reduce<ReturnType<WoodOver>>(
      (least, { across, y, beyond, chord }) => {
        const floor = mouth + depthMm;
        const along = chord.high - beyond - floor;
        const [x, z] = fromUpright(hole, [place + across, floor + beyond]);
        const straightUp = hole.tiltDeg === 0 ? along : upward(x)(y).high - z;
        const woodMm = Math.min(along, straightUp);
        if (woodMm >= least.woodMm) return least;
        const [, exit] = fromUpright(hole, [place + across, chord.high]);
        return { woodMm, side: along <= straightUp && exit < 0 ? 'belly' : 'back' };
      },
      { woodMm: Infinity, side: 'back' },
    );
}

const BACK_OFF_STEPS = 100; // one without a tilt; straight up, every step mends a share of what is missing

/** The depth, less than one that is too deep, that leaves enough wood. */
function deepest(over: WoodOver, tooDeepMm: number): number {
  let depthMm = tooDeepMm;
  for (let i = 0; i < BACK_OFF_STEPS && depthMm > 0; i++) {
    const { woodMm } = over(depthMm);
    if (woodMm > LEAST_WOOD_MM - 1e-6) break;
    depthMm = depthMm + woodMm - LEAST_WOOD_MM;
  }
  return depthMm;
}
