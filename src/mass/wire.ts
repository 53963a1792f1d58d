/** The through-wire and the bore it lies in. */
import type { BodyShape } from '../body/shape.js';
import { distance, mix, type Point2 } from '../geometry/vec.js';
import type { Pattern } from '../pattern/pattern.js';
import type { Materials } from '../tables/materials.js';
import { type EyePlace, endSurface, eyePlaces, loopCenter, loopMm3, loopOf } from './eyes.js';
import { alongLine, atPoint, type Moments, summed } from './moments.js';

export type WireParts = {
  /** The whole wire, loops and all, per mm³. */
  readonly wire: Moments;
  /** Its length, loops included. */
  readonly lengthMm: number;
  /** Wood of the finished body that the bore takes away, per mm³. */
  readonly bore: Moments;
  /** The bore beside the wire, which glue fills, per mm³. */
  readonly room: Moments;
  /** Loops outside the body. */
  readonly loops: readonly { readonly at: Point2; readonly volumeMm3: number }[];
};

/**
 * One wire straight from nose to tail, from the height of the tow eye to that of the tail eye (0
 * without one), led down to each hanger of kind wire and back up at its station; a loop at each eye
 * of kind wire. The bore, or the slot sawn for it, follows it, so a leg to a hanger counts twice.
 * Where it meets the lip slot or a ballast hole both are counted whole: a 1.2 mm wire through 7 mm of
 * lead makes the budget 0.1 g too heavy.
 */
export function wireParts(
  pattern: Pattern,
  shape: BodyShape,
  materials: Materials,
): WireParts | null {
  if (!pattern.throughWire) return null;
  const { diameterMm, boreMm } = pattern.throughWire;
  const eyes = eyePlaces(pattern, shape).filter((p) => p.eye.kind === 'wire');
  const pieces = piecesOf(pattern, shape, eyes);
  const ofDiameter = (d: number): Moments =>
    summed(
      pieces.map(([from, to]) => [
        1,
        alongLine((Math.PI / 4) * d * d * distance(from, to), from, to),
      ]),
    );
  const loops = eyes.map((place) => {
    const loop = loopOf(place, pattern, materials);
    return { at: loopCenter(place, loop), volumeMm3: loopMm3(loop) };
  });
  const [inside, bore] = [ofDiameter(diameterMm), ofDiameter(boreMm)];
  const around = Math.PI * (materials.wire.loopMm + diameterMm);
  return {
    wire: summed([[1, inside], ...loops.map((l) => [1, atPoint(l.volumeMm3, l.at)] as const)]),
    lengthMm: pieces.reduce((sum, [a, b]) => sum + distance(a, b), 0) + eyes.length * around,
    bore,
    room: summed([
      [1, bore],
      [-1, inside],
    ]),
    loops,
  };
}

type Piece = readonly [from: Point2, to: Point2];

function piecesOf(pattern: Pattern, shape: BodyShape, eyes: readonly EyePlace[]): Piece[] {
  const nose = endSurface(shape, pattern.towEye?.heightMm ?? 0, 'nose');
  const tail = endSurface(shape, pattern.tailEye?.heightMm ?? 0, 'tail');
  const legs = eyes
    .filter((p) => p.path[0] === 'hangers')
    .flatMap(({ surface }): Piece[] => {
      const top = mix(nose, tail, (surface[0] - nose[0]) / (tail[0] - nose[0]));
      // In a hollow belly the wire may lie lower than the hanger: then there is no leg.
      if (top[1] <= surface[1]) return [];
      return [
        [top, surface],
        [surface, top],
      ];
    });
  return [[nose, tail], ...legs];
}
