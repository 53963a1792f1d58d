/** Eyes and what hangs on them: where they are, and what they weigh. */
import { type BodyShape, offsetAt } from '../body/shape.js';
import { add, type Point2, sub, times } from '../geometry/vec.js';
import type { Eye, Pattern } from '../pattern/pattern.js';
import type { KeyPath } from '../problem.js';
import type { Fitting, Materials, ScrewEye } from '../tables/materials.js';
import { alongLine, atPoint, type Moments, summed } from './moments.js';
import { rowOf } from './row.js';

/** Where an eye leaves the body, in the center plane: (station, height), and which way it points. */
export type EyePlace = {
  readonly name: string;
  readonly path: KeyPath;
  readonly eye: Eye;
  readonly surface: Point2;
  readonly outward: Point2;
};

/** Tow eye, hangers from nose to tail as listed, tail eye. Hangers are counted from 1. */
export function eyePlaces(pattern: Pattern, shape: BodyShape): EyePlace[] {
  const { towEye, tailEye } = pattern;
  const tow: EyePlace[] = towEye
    ? [
        {
          name: 'tow',
          path: ['towEye'],
          eye: towEye,
          surface: endSurface(shape, towEye.heightMm, 'nose'),
          outward: [-1, 0],
        },
      ]
    : [];
  const hangers = pattern.hangers.map(
    (hanger, i): EyePlace => ({
      name: `hanger ${i + 1}`,
      path: ['hangers', i],
      eye: hanger,
      surface: [hanger.stationMm, -offsetAt(shape.bellySquared, hanger.stationMm)],
      outward: [0, -1],
    }),
  );
  const tail: EyePlace[] = tailEye
    ? [
        {
          name: 'tail',
          path: ['tailEye'],
          eye: tailEye,
          surface: endSurface(shape, tailEye.heightMm, 'tail'),
          outward: [1, 0],
        },
      ]
    : [];
  return [...tow, ...hangers, ...tail];
}

/** Where the side view ends at a height: the first (or last) station at which the body is there. */
export function endSurface(shape: BodyShape, heightMm: number, end: 'nose' | 'tail'): Point2 {
  const squared = heightMm >= 0 ? shape.backSquared : shape.bellySquared;
  const station = (t: number) => (end === 'nose' ? t : shape.lengthMm - t);
  let [low, high] = [0, shape.lengthMm / 2];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (offsetAt(squared, station(middle)) < Math.abs(heightMm)) low = middle;
    else high = middle;
  }
  return [heightMm === 0 ? station(0) : station(high), heightMm];
}

/** A loop of wire: its diameter, and how wide the loop is inside. */
export type Loop = { readonly wireMm: number; readonly loopMm: number };

/** Middle of an eye's loop, which stands on the body: where the rings hang, and the line pulls. */
export const loopCenter = ({ surface, outward }: EyePlace, { wireMm, loopMm }: Loop): Point2 =>
  add(surface, times(outward, loopMm / 2 + wireMm));

/** Volume of a loop's wire, a torus. */
export const loopMm3 = ({ wireMm, loopMm }: Loop): number =>
  (Math.PI / 4) * wireMm ** 2 * Math.PI * (loopMm + wireMm);

/** The loop of an eye by its kind: that of its screw eye, or of the through-wire. */
export function loopOf({ eye }: EyePlace, pattern: Pattern, materials: Materials): Loop {
  if (eye.kind === 'screw') return screwEye(materials, eye.screwEye);
  return wireLoop(pattern.throughWire?.diameterMm ?? 0, materials);
}

/** The loop of a through-wire: that of the table, or wider where its bends need it. */
export const wireLoop = (wireMm: number, { wire }: Materials): Loop => ({
  wireMm,
  loopMm: Math.max(wire.loopMm, 2 * wire.bendRatio * wireMm),
});

/** A row of kind screw-eye. Another kind under that name is told by `itemRules`; here it is a fault. */
export const screwEye = (materials: Materials, name: string): ScrewEye =>
  fittingOf(materials, name, 'screw-eye');

function fittingOf<K extends Fitting['kind']>(
  materials: Materials,
  name: string,
  kind: K,
): Extract<Fitting, { kind: K }> {
  return rowOf(materials.fittings, name, kind) as Extract<Fitting, { kind: K }>;
}

export type Hung = {
  readonly name: string;
  /** In g. */
  readonly mass: Moments;
  readonly displacedMm3: number;
  /** Where what keeps the water out is taken to be. */
  readonly at: Point2;
};

/**
 * The screw eye of an eye, its ring and its treble. Of a screw eye the loop is outside; the shank is
 * in the wood and presses it aside: the pilot hole is not counted. Ring and treble hang: wherever they
 * swing, they pull at the eye, so they are weighed there, and so is the water they keep out.
 */
export function hungOn(place: EyePlace, pattern: Pattern, materials: Materials): Hung[] {
  const { eye } = place;
  const center = loopCenter(place, loopOf(place, pattern, materials));
  const screw =
    eye.kind === 'screw' ? [screwed(place, center, screwEye(materials, eye.screwEye))] : [];
  const hanging = [
    { part: 'ring', name: eye.ring },
    { part: 'treble', name: eye.treble },
  ] as const;
  return [
    ...screw,
    ...hanging.flatMap(({ part, name }) => {
      if (name === null) return [];
      const { massG, densityKgM3 } = fittingOf(materials, name, part);
      const displacedMm3 = massG / (densityKgM3 * 1e-6);
      return [
        { name: `${place.name} ${part}`, mass: atPoint(massG, center), displacedMm3, at: center },
      ];
    }),
  ];
}

function screwed(place: EyePlace, center: Point2, row: ScrewEye): Hung {
  const gPerMm3 = row.densityKgM3 * 1e-6;
  // A row may be lighter than its own loop would be; then all of it is loop.
  const displacedMm3 = Math.min(loopMm3(row), row.massG / gPerMm3);
  const loopG = displacedMm3 * gPerMm3;
  const tip = sub(place.surface, times(place.outward, row.shankMm));
  const mass = summed([
    [1, atPoint(loopG, center)],
    [1, alongLine(row.massG - loopG, place.surface, tip)],
  ]);
  return { name: `${place.name} eye`, mass, displacedMm3, at: center };
}
