/** The through-wire and the bore it lies in. */
import type { BodyShape } from '../body/shape.js';
import { segmentLength } from '../geometry/arcpath.js';
import { distance, mix, type Point2 } from '../geometry/vec.js';
import type { Pattern } from '../pattern/pattern.js';
import { Fault } from '../problem.js';
import type { Materials } from '../tables/materials.js';
import type { BentWire } from '../wire/bent.js';
import { type EyePlace, endSurface, eyePlaces, loopCenter, loopMm3, loopOf } from './eyes.js';
import { alongArc, alongLine, type Moments, summed } from './moments.js';
import { bentFor } from './wire-bent.js';

export type WireParts = {
  /** The whole wire, eyes and windings and all, per mm³. */
  readonly wire: Moments;
  /** Its length, as bent. */
  readonly lengthMm: number;
  /** Wood of the finished body that the bore takes away, per mm³. */
  readonly bore: Moments;
  /** The bore beside the wire, which glue fills, per mm³. */
  readonly room: Moments;
  /** Loops outside the body. */
  readonly loops: readonly { readonly at: Point2; readonly volumeMm3: number }[];
};

/**
 * The wire as it is bent (`wire/bent.ts`), all its mass on its center line. The bore, or the slot sawn
 * for it, runs straight from nose to tail, from the height of the tow eye to that of the tail eye (0
 * without one), and at each hanger of kind wire straight down and back up, so a leg to a hanger
 * counts twice; the bends, which save a few mm of wire, save no wood. Where the bore meets the lip
 * slot or a ballast hole both are counted whole: a 1.2 mm wire through 7 mm of lead makes the budget
 * 0.1 g too heavy.
 * @throws Fault for a wire that can not be bent: `wireProblems` tells of that first.
 */
export function wireParts(
  pattern: Pattern,
  shape: BodyShape,
  materials: Materials,
): WireParts | null {
  const bent = bentFor(pattern, shape, materials);
  if (!pattern.throughWire || !bent) return null;
  if (!bent.wire) throw new Fault(`the wire of ${pattern.name}: ${JSON.stringify(bent.flaws)}`);
  const { diameterMm, boreMm } = pattern.throughWire;
  const eyes = eyePlaces(pattern, shape).filter((p) => p.eye.kind === 'wire');
  const pieces = boredPieces(pattern, shape, eyes);
  const straight = (d: number): Moments =>
    summed(pieces.map(([from, to]) => [1, alongLine(disk(d) * distance(from, to), from, to)]));
  const bore = straight(boreMm);
  const wound = woundMoments(bent.wire);
  return {
    wire: summed([
      [1, centerLineMoments(bent.wire)],
      [1, wound],
    ]),
    lengthMm: bent.wire.lengthMm,
    bore,
    room: summed([
      [1, bore],
      [-1, straight(diameterMm)],
      [-1, wound],
    ]),
    loops: eyes.map((place) => {
      const loop = loopOf(place, pattern, materials);
      return { at: loopCenter(place, loop), volumeMm3: loopMm3(loop) };
    }),
  };
}

const disk = (d: number): number => (Math.PI / 4) * d * d;

const centerLineMoments = ({ pieces, spec }: BentWire): Moments =>
  summed(
    pieces.map((piece) => {
      const amount = disk(spec.diameterMm) * segmentLength(piece);
      return [
        1,
        piece.bulge === 0 ? alongLine(amount, piece.from, piece.to) : alongArc(amount, piece),
      ];
    }),
  );

/** Windings, all their wire on the standing part they are wound round. */
const woundMoments = ({ twists, spec }: BentWire): Moments =>
  summed(
    twists.map(({ from, to, lengthMm }) => [
      1,
      alongLine(disk(spec.diameterMm) * lengthMm, from, to),
    ]),
  );

type Piece = readonly [from: Point2, to: Point2];

function boredPieces(pattern: Pattern, shape: BodyShape, eyes: readonly EyePlace[]): Piece[] {
  const nose = endSurface(shape, pattern.towEye?.heightMm ?? 0, 'nose');
  const tail = endSurface(shape, pattern.tailEye?.heightMm ?? 0, 'tail');
  const legs = eyes
    .filter((p) => p.path[0] === 'hangers')
    .flatMap(({ surface }): Piece[] => {
      const top = mix(nose, tail, (surface[0] - nose[0]) / (tail[0] - nose[0]));
      return [
        [top, surface],
        [surface, top],
      ];
    });
  return [[nose, tail], ...legs];
}
