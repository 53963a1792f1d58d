/**
 * The gap between jig and workpiece, measured on the solids.
 *
 * Nearest: the exact distance between the two meshes, seated and at the end of each move the jig
 * says there is play for; never less than the band's least. Farthest: from points all over the
 * workpiece straight out. Where that meets a face of the jig that looks back at it, the place is
 * faced, and the gap is at most the band's greatest and what the play moves that face away: a move p
 * gives a flat or convex place with the normal n just max(0, n · p).
 */
import { distanceBetween, distanceToFacets } from '../../geometry/nearness.js';
import { facing, firstHit } from '../../geometry/ray.js';
import { type Sample, surfaceSamples } from '../../geometry/surface-samples.js';
import type { Point3 } from '../../geometry/vec.js';
import { along3, dot3, sub3 } from '../../geometry/vec3.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { Sunk } from '../letters.js';
import { SEAT_CHORD } from '../outline.js';
import type { Seated } from './seated.js';

/** A place where the jig faces its workpiece, jig frame. */
export type Faced = {
  readonly at: Point3;
  /** Out of the workpiece. */
  readonly normal: Point3;
  readonly gapMm: number;
  /** Play has to be used up before jig and workpiece meet here. */
  readonly afterPlayMm: number;
};

const STEP = 4; // mm between the points that look out
/** How far out, past its play, a face still counts as facing, and no longer as merely lying beyond. */
const COVER = 3; // mm
const BACK = Math.cos((30 * Math.PI) / 180);
const ROUNDING = 1e-3; // mm: coordinates of meshes are 32-bit, outlines are told to a micrometer
/** Chords of outline, seat and body, and a hollow that the play slides along. */
const SLACK = 0.03; // mm

export type Clearance = JigCheck & { readonly faced: readonly Faced[] };

export function clearance(seated: Seated): Clearance {
  const [least, most] = seated.fit.gapMm;
  const floor = least * (1 - SEAT_CHORD) - ROUNDING;
  const nearest = nearestMm(seated);
  const looks = facedPlaces(seated);
  const faced = looks.filter((l) => l.overMm <= SLACK).map((l) => l.place);
  const over = Math.max(0, ...looks.map((l) => l.overMm));
  const atRest = faced.filter((f) => f.afterPlayMm === 0);
  return {
    faced,
    flaws: flawsOf([
      [!(nearest >= floor), 'gap-narrow', nearest, floor],
      [over > SLACK, 'gap-wide', over, SLACK],
      [atRest.length === 0, 'gap-wide', Number.POSITIVE_INFINITY, most],
    ]),
    measured: {
      nearestMm: nearest,
      farthestMm: Math.max(0, ...faced.map((f) => f.gapMm)),
      facedMm2: faced.length * STEP * STEP,
      bearingMm2: atRest.length * STEP * STEP,
    },
  };
}

/** The nearest of the seated place and of the end of each move. */
const nearestMm = ({ tree, workpieceTree, fit }: Seated): number =>
  [STILL, ...fit.playMm].reduce(
    (upTo, move) => distanceBetween(tree, workpieceTree, { upTo, move }),
    COVER,
  );

const STILL: Point3 = [0, 0, 0];

type Look = { readonly place: Faced; readonly overMm: number };

function facedPlaces(seated: Seated): Look[] {
  return surfaceSamples(seated.workpieceTree, STEP).flatMap((sample) => {
    const look = inToolsWay(seated, sample.at) ? null : lookFrom(seated, sample);
    return look ? [look] : [];
  });
}

function lookFrom({ jig, tree, fit, free }: Seated, { at, normal }: Sample): Look | null {
  // Toward the way out nothing may stand; whether it does is the passage's question.
  if (free && dot3(normal, free) > 0.01) return null;
  const [, rest] = fit.gapMm;
  const afterPlay = fit.playMm.reduce((sum, move) => sum + Math.max(0, dot3(move, normal)), 0);
  const hit = firstHit(tree, at, normal, { upTo: rest + afterPlay + COVER, sides: 'in' });
  if (!hit || facing(tree, hit.facet, normal) > -BACK) return null;
  const sunk = letterDepth(jig.letters, along3(at, hit.distance, normal), normal);
  const most = rest + afterPlay + sunk;
  // A wall that turns a corner is nearer aside than straight out.
  const gapMm =
    hit.distance <= most + SLACK ? hit.distance : distanceToFacets(tree, at, hit.distance);
  const afterPlayMm = gapMm <= rest + SLACK ? 0 : gapMm - rest;
  return { place: { at, normal, gapMm, afterPlayMm }, overMm: gapMm - most };
}

/** A blade leaves an opening of its own in the faces it passes. */
function inToolsWay({ fit }: Seated, at: Point3): boolean {
  return fit.tools.some((tool) => {
    if (tool.kind !== 'saw') return false;
    const { originMm, direction } = tool.axis;
    const from = sub3(at, originMm);
    const inPlane = [direction, tool.stroke].reduce(
      (rest, unit) => along3(rest, -dot3(rest, unit), unit),
      from,
    );
    return Math.hypot(...inPlane) < tool.widthMm;
  });
}

/** How deep the letters are whose bottom a point lies on, seen along the way; 0 on no letter. */
function letterDepth(letters: readonly Sunk[], at: Point3, way: Point3): number {
  const sunk = letters.find(
    ({ face, depthMm }) =>
      dot3(face.out, way) < -BACK &&
      Math.abs(dot3(sub3(at, face.origin), face.out) + depthMm) < 10 * ROUNDING,
  );
  return sunk ? sunk.depthMm : 0;
}
