/** What keeps a design from being made in wood: rules on the resolved shape. */
import { halves } from '../body/properties.js';
import { type BodyShape, offsetAt } from '../body/shape.js';
import { asRegion, intersect } from '../geometry/clip.js';
import { ring } from '../geometry/ring.js';
import { add, distanceToEdge, type Point2, sub, times } from '../geometry/vec.js';
import { PATHS, type Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import { type BallastHole, pointBeyondMm } from './blank.js';
import { type LipSlot, slotCorners } from './slot.js';

/** Least wood over a slot, beside, over and between holes, mm: common practice, no source. */
export const LEAST_WOOD_MM = 2;
const EYE_INSET_MM = 5; // an eye's height must be inside the body this far from nose or tail

export function thicknessProblems(pattern: Pattern, shape: BodyShape): Problem[] {
  const widest = Math.max(
    ...shape.halfBreadthSquared.knots.map((x) => offsetAt(shape.halfBreadthSquared, x)),
  );
  const facts = { breadthMm: 2 * widest, thicknessMm: pattern.blockThicknessMm };
  return facts.breadthMm > facts.thicknessMm + 1e-9
    ? [problem('body-wider-than-block', PATHS.thickness, facts)]
    : [];
}

export function eyeProblems(pattern: Pattern, shape: BodyShape): Problem[] {
  const inset = Math.min(EYE_INSET_MM, shape.lengthMm / 4);
  const ends = [
    { key: 'towEye', eye: pattern.towEye, end: 'nose', station: inset },
    { key: 'tailEye', eye: pattern.tailEye, end: 'tail', station: shape.lengthMm - inset },
  ];
  return ends.flatMap(({ key, eye, end, station }) => {
    if (!eye) return [];
    const [lowMm, highMm] = [
      -offsetAt(shape.bellySquared, station),
      offsetAt(shape.backSquared, station),
    ];
    if (eye.heightMm >= lowMm && eye.heightMm <= highMm) return [];
    const name = key === 'towEye' ? 'tow eye' : 'tail eye';
    return [
      problem('eye-outside', [key], {
        eye: name,
        heightMm: eye.heightMm,
        end,
        insetMm: inset,
        lowMm,
        highMm,
      }),
    ];
  });
}

/** Wood above (back) and below (belly) a point of the finished body; −Infinity beyond nose or tail. */
function woodAround(
  shape: BodyShape,
  [x, z]: Point2,
): { readonly back: number; readonly belly: number } {
  if (x <= 0 || x >= shape.lengthMm) return { back: -Infinity, belly: -Infinity };
  return { back: offsetAt(shape.backSquared, x) - z, belly: z + offsetAt(shape.bellySquared, x) };
}

/** Hangers need wood: not in the ballast, not in the mouth of the lip slot. */
export function hangerProblems(pattern: Pattern, slot: LipSlot | null): Problem[] {
  return pattern.hangers.flatMap(({ stationMm }, i) => {
    const near = [
      ...pattern.ballast.map((b) => ({
        what: 'ballast hole',
        betweenMm: Math.abs(b.stationMm - stationMm) - b.diameterMm / 2,
      })),
      ...(slot
        ? [{ what: 'lip slot', betweenMm: Math.abs(slot.mouth[0] - stationMm) - slot.widthMm / 2 }]
        : []),
    ];
    return near
      .filter((n) => n.betweenMm < LEAST_WOOD_MM)
      .map((n) =>
        problem('hanger-meets', ['hangers', i], { stationMm, ...n, limitMm: LEAST_WOOD_MM }),
      );
  });
}

export function slotProblems(slot: LipSlot, shape: BodyShape): Problem[] {
  const [right, left] = slotCorners(slot);
  const tell = (side: string, woodMm: number, at: Point2) => [
    problem('lip-slot-outside', PATHS.slot, {
      side,
      woodMm,
      stationMm: at[0],
      limitMm: LEAST_WOOD_MM,
    }),
  ];
  for (const corner of [right, left]) {
    const wood = woodAround(shape, corner);
    if (wood.back === -Infinity)
      return tell('body', Math.min(corner[0], shape.lengthMm - corner[0]), corner);
    if (wood.back < LEAST_WOOD_MM) return tell('back', wood.back, corner);
    if (wood.belly <= 0) return tell('belly', wood.belly, corner);
  }
  // The center line must run inside all the way: a slot in a rising belly could leave and come back.
  for (let k = 1; k < 20; k++) {
    const at = sub(slot.mouth, times(slot.outward, (slot.depthMm * k) / 20));
    const wood = woodAround(shape, at);
    if (wood.belly <= 0 || wood.back <= 0)
      return tell('belly', Math.min(wood.belly, wood.back), at);
  }
  return [];
}

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

function oneHole(hole: BallastHole, i: number, shape: BodyShape): Problem[] {
  const { stationMm, diameterMm, depthMm, bellyMm } = hole;
  const r = diameterMm / 2;
  const path = PATHS.ballast(i);
  const ends = { leastMm: r, mostMm: shape.lengthMm - r };
  if (stationMm < ends.leastMm || stationMm > ends.mostMm) {
    const end = stationMm < ends.leastMm ? 'nose' : 'tail';
    return [problem('hole-outside', path, { stationMm, diameterMm, end, ...ends })];
  }
  const out: Problem[] = [];
  const breadthMm = 2 * offsetAt(shape.halfBreadthSquared, stationMm);
  const widest = breadthMm - 2 * LEAST_WOOD_MM;
  if (diameterMm > widest) {
    const facts = {
      stationMm,
      diameterMm,
      breadthMm,
      limitMm: Math.max(0, widest),
      wallMm: LEAST_WOOD_MM,
    };
    out.push(problem('hole-too-wide', path, facts));
  }
  // Either the rim at full depth or the tip of the point comes nearest to the back.
  const rim = Math.min(...rimUnderBack(shape, stationMm, r));
  const pointMm = pointBeyondMm(hole);
  const deepest = Math.min(rim, offsetAt(shape.backSquared, stationMm) - pointMm);
  const woodMm = deepest - (bellyMm + depthMm);
  if (woodMm < LEAST_WOOD_MM) {
    const limitMm = Math.max(0, Math.floor((depthMm + woodMm - LEAST_WOOD_MM) * 10) / 10);
    const facts = { stationMm, depthMm, pointMm, woodMm, limitMm, leastMm: LEAST_WOOD_MM };
    out.push(problem('hole-through-back', path, facts));
  }
  const sanded = -offsetAt(shape.bellySquared, stationMm) - bellyMm;
  if (depthMm <= sanded)
    out.push(problem('hole-sanded-away', path, { stationMm, depthMm, limitMm: sanded }));
  return out;
}

const RIM_POINTS = 16; // to a quarter of the hole's rim

/** Height of the finished back straight over the rim of a hole, all round: at its sides a round back comes down. */
function rimUnderBack(shape: BodyShape, stationMm: number, r: number): number[] {
  return Array.from({ length: 4 * RIM_POINTS }, (_, i) => {
    const angle = (Math.PI * i) / (2 * RIM_POINTS);
    const [upper] = halves(shape, stationMm + r * Math.cos(angle));
    const out = Math.min(1, Math.abs(r * Math.sin(angle)) / (upper.b || Number.EPSILON));
    return upper.h * (1 - out ** upper.n) ** (1 / upper.n);
  });
}

function meetingHoles(holes: readonly BallastHole[]): Problem[] {
  return holes.flatMap((b, j) =>
    holes.slice(0, j).flatMap((a) => {
      const betweenMm = Math.abs(a.stationMm - b.stationMm) - (a.diameterMm + b.diameterMm) / 2;
      const facts = {
        firstMm: a.stationMm,
        secondMm: b.stationMm,
        betweenMm,
        limitMm: LEAST_WOOD_MM,
      };
      return betweenMm < LEAST_WOOD_MM ? [problem('holes-meet', PATHS.ballast(j), facts)] : [];
    }),
  );
}

/** Distance from the hole's side view (a rectangle) to the slot's (another), by their corners and edges. */
function holeAtSlot(hole: BallastHole, i: number, slot: LipSlot): Problem[] {
  const r = hole.diameterMm / 2;
  const [x, low, high] = [hole.stationMm, hole.bellyMm, hole.bellyMm + hole.depthMm];
  const bore: Point2[] = [
    [x - r, low],
    [x + r, low],
    [x + r, high],
    [x - r, high],
  ];
  const [right, left] = slotCorners(slot);
  const out = times(slot.outward, slot.depthMm);
  const cut: Point2[] = [right, left, add(left, out), add(right, out)];
  const overlap = intersect([asRegion(ring(bore))], [asRegion(ring(cut))]).length > 0;
  const betweenMm = overlap
    ? 0
    : Math.min(
        ...bore.map((p) => distanceToEdge(p, cut)),
        ...cut.map((p) => distanceToEdge(p, bore)),
      );
  if (betweenMm >= LEAST_WOOD_MM) return [];
  return [
    problem('hole-meets-slot', PATHS.ballast(i), {
      stationMm: x,
      betweenMm,
      limitMm: LEAST_WOOD_MM,
    }),
  ];
}
