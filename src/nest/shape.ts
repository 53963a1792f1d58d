/**
 * What the placement knows of an outline at one turn: its true box, its area, and a band that
 * contains it grown by half the gap. Two outlines whose bands do not overlap are a gap apart.
 */
import { asRegion, offset } from '../geometry/clip.js';
import { movedRing, type Ring, ring, ringArea, ringBox, selfCrossing } from '../geometry/ring.js';
import { type Box, distanceToPiece, type Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { type Band, bandAround, bandPoints, bandUpTo } from './band.js';
import type { NestPart, NestRules, TurnDeg } from './nest.js';

export type Shape = {
  /** Place of its part in the order. */
  readonly partIndex: number;
  readonly part: string;
  readonly turnDeg: TurnDeg;
  /** The outline turned, not yet moved. */
  readonly outline: Ring;
  readonly box: Box;
  readonly areaMm2: number;
  /** Off the grain; the filling of faces lays out what is not. */
  readonly isTilted: boolean;
  /** Contains the turned outline grown by half the gap, and its nose part; for the search. */
  readonly ring: Ring;
  readonly noseRing: Ring | null;
  /** Contains the turned outline grown by half the gap. */
  readonly grown: Band;
  /** The part of `grown` that holds the nose part grown alike; null when no clear nose is asked for. */
  readonly nose: Band | null;
};

/** What is kept clear round an outline, and round its nose; and how far it may be tilted. */
export type Keep = Pick<NestRules, 'gapMm' | 'clearNoseRatio' | 'largestTiltDeg'>;

/** Chord error of the round corners clipping makes, mm: they lie inside the true arc. */
const ARC_MM = 0.002;
/** A simplified outline strays this far to either side, so up to twice this outside: 0.05 mm, which a saw never sees. */
const SIMPLE_MM = 0.025;
/**
 * Added so that a gap is kept in spite of rounding, mm: clipping keeps 1e-6, touching is decided to
 * 1e-7 (see `contact.ts`), twice each.
 */
const ROUNDING_MM = 1e-5;
/** Hollows and slots narrower than twice this, beyond the gap, are filled: nothing could lie in them, mm. */
const CLOSING_MM = 2;

/** Tilts between the grain and the largest, to either side. */
const TILT_STEPS = 2;

/** Both turns of a part along the grain, 0° first; then both at every tilt. */
export function shapesOf(part: NestPart, partIndex: number, keep: Keep): readonly Shape[] {
  const grownRing = grownOutline(part.outline, keep.gapMm / 2);
  const noseRing = nosePart(part.outline, grownRing, keep);
  return turnsOf(keep).map(({ turnDeg, isTilted }) => {
    const turned = (r: Ring): Ring => movedRing({ turnDeg, move: [0, 0] }, r);
    const outline = turned(part.outline);
    const ring = turned(grownRing);
    return {
      partIndex,
      part: part.id,
      turnDeg,
      outline,
      box: ringBox(outline),
      areaMm2: ringArea(outline),
      isTilted,
      ring,
      noseRing: noseRing && turned(noseRing),
      grown: bandAround(ring),
      nose: noseRing && bandAround(turned(noseRing)),
    };
  });
}

function turnsOf({ largestTiltDeg }: Keep): { turnDeg: number; isTilted: boolean }[] {
  const tilts = Array.from({ length: largestTiltDeg > 0 ? TILT_STEPS : 0 }, (_, i) => {
    const tiltDeg = (largestTiltDeg * (i + 1)) / TILT_STEPS;
    return [tiltDeg, -tiltDeg];
  }).flat();
  return [0, ...tilts].flatMap((tiltDeg) =>
    [tiltDeg, 180 + tiltDeg].map((turnDeg) => ({ turnDeg, isTilted: tiltDeg !== 0 })),
  );
}

/** Growing moves the aft end of the nose part aft, too. */
function nosePart(outline: Ring, grown: Ring, { gapMm, clearNoseRatio }: Keep): Ring | null {
  if (clearNoseRatio === 0) return null;
  const [minX, , maxX] = ringBox(outline);
  const to = minX + clearNoseRatio * (maxX - minX) + gapMm / 2 + ROUNDING_MM;
  const band = bandUpTo(bandAround(grown), to);
  return ring(bandPoints(band));
}

/**
 * An outline that contains everything within `by` of the outline, and little more: at most
 * 2 × SIMPLE_MM + ARC_MM, except in hollows too narrow to use.
 */
function grownOutline(outline: Ring, by: number): Ring {
  const reach = by + SIMPLE_MM + ARC_MM + ROUNDING_MM;
  const wide = onlyOuter(offset([asRegion(outline)], reach + CLOSING_MM, ARC_MM));
  const grown = onlyOuter(offset([asRegion(wide)], -CLOSING_MM, ARC_MM));
  return simplified(grown, SIMPLE_MM);
}

function onlyOuter(regions: ReturnType<typeof offset>): Ring {
  if (regions.length !== 1) throw new Fault(`a grown outline fell into ${regions.length} pieces`);
  return regions[0].outer;
}

/**
 * The ring with fewer points: between the points kept it strays at most `tolerance` to either side
 * (D. Douglas and T. Peucker, 1973). A ring that would cross itself stays as it was.
 */
function simplified(points: Ring, tolerance: number): Ring {
  const left = points.reduce((best, p, i) => (p[0] < points[best][0] ? i : best), 0);
  const right = points.reduce((best, p, i) => (p[0] > points[best][0] ? i : best), 0);
  const round = (from: number, to: number): Point2[] =>
    from <= to ? points.slice(from, to + 1) : [...points.slice(from), ...points.slice(0, to + 1)];
  const out = [
    ...thinned(round(left, right), tolerance).slice(0, -1),
    ...thinned(round(right, left), tolerance).slice(0, -1),
  ];
  return out.length < 3 || selfCrossing(out) ? points : ring(out);
}

function thinned(line: readonly Point2[], tolerance: number): Point2[] {
  const [first, last] = [line[0], line[line.length - 1]];
  let far = 0;
  let at = -1;
  for (let i = 1; i < line.length - 1; i++) {
    const d = distanceToPiece(line[i], first, last);
    if (d > far) [far, at] = [d, i];
  }
  if (far <= tolerance) return [first, last];
  return [
    ...thinned(line.slice(0, at + 1), tolerance).slice(0, -1),
    ...thinned(line.slice(at), tolerance),
  ];
}
