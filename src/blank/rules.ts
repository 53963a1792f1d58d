/** What keeps a design from being made in wood: rules on the resolved shape; `hole-rules.ts` has those of ballast holes. */
import { type BodyShape, offsetAt } from '../body/shape.js';
import { type Point2, sub, times } from '../geometry/vec.js';
import { PATHS, type Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';
import { besideHole, LEAST_WOOD_MM } from './hole-neighbors.js';
import { type LipSlot, slotCorners } from './slot.js';

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
        betweenMm: besideHole(b, stationMm),
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
