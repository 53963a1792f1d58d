/**
 * The gap between jig and workpiece, measured on the solids.
 *
 * Nearest: the exact distance between the two meshes, seated and at the end of each move the jig
 * says there is play for; never less than the band's least. Farthest: from points all over the
 * workpiece straight out. Where that meets a face of the jig that looks back at it, the place is
 * faced, and the gap is at most the band's greatest and what the play moves that face away: a move p
 * gives a flat or convex place with the normal n just max(0, n · p). Where the workpiece leaves the
 * jig, rims come into view that were not made to fit it; so of each side of the workpiece that is
 * faced a half may open wider, and no more.
 */
import type { Facets } from '../../geometry/facet-tree.js';
import { distanceBetween, distanceToFacets } from '../../geometry/nearness.js';
import { facing, firstHit } from '../../geometry/ray.js';
import { facetArea, type Sample, surfaceSamples } from '../../geometry/surface-samples.js';
import type { Point3 } from '../../geometry/vec.js';
import { along3, dot3, sub3 } from '../../geometry/vec3.js';
import { turnedBy } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { Sunk } from '../letters.js';
import { SEAT_CHORD } from '../outline.js';
import type { Seated } from './seated.js';
import { type Side, sideOf } from './side.js';

/** A place where the jig faces its workpiece, jig frame. */
export type Faced = {
  readonly at: Point3;
  /** Out of the workpiece. */
  readonly normal: Point3;
  readonly gapMm: number;
  /** Play has to be used up before jig and workpiece meet here. */
  readonly afterPlayMm: number;
};

const WIDEST_STEP = 4; // mm between the points that look out
const LEAST_STEP = 1; // on what little of a workpiece a thin plate faces
const LOOKS = 400; // points at least, where the least step allows

/** How far out, past its play, a face still counts as facing, and no longer as merely lying beyond. */
const COVER = 3; // mm
const BACK = Math.cos((30 * Math.PI) / 180);
const ROUNDING = 1e-3; // mm: coordinates of meshes are 32-bit, outlines are told to a micrometer
/** Chords of outline, seat and body, and a hollow that the play slides along. */
const SLACK = 0.03; // mm

/** Of what is faced on one side; and as many places at least, for a few say nothing. */
const MOST_WIDE = 1 / 2;
const LEAST_WIDE = 5;

export type Clearance = JigCheck & { readonly faced: readonly Faced[] };

export function clearance(seated: Seated): Clearance {
  const [least, most] = seated.fit.gapMm;
  const floor = least * (1 - SEAT_CHORD) - ROUNDING;
  const step = stepOn(seated.workpieceFacets);
  const looks = facedPlaces(seated, step);
  const nearest = nearestMm(seated, Math.min(COVER, ...looks.map((l) => l.place.gapMm)));
  const within = looks.filter(isWithin);
  const faced = within.filter((l) => l.bears).map((l) => l.place);
  const atRest = faced.filter((f) => f.afterPlayMm === 0);
  // The edge of a thin plate may stand too aslant to a steep surface to be looked at straight.
  const isAtRest = atRest.length > 0 || (seated.fit.tools.length === 0 && nearest <= most + SLACK);
  const wideShare = widestSide(seated, looks);
  return {
    faced,
    flaws: flawsOf([
      [!(nearest >= floor), 'gap-narrow', nearest, floor],
      [wideShare > MOST_WIDE, 'gap-wide', wideShare, MOST_WIDE],
      [!isAtRest, 'gap-wide', nearest, most],
    ]),
    measured: {
      nearestMm: nearest,
      farthestMm: Math.max(0, ...within.map((l) => l.place.gapMm)),
      facedMm2: within.length * step * step,
      bearingMm2: atRest.length * step * step,
    },
  };
}

const isWithin = ({ overMm }: Look): boolean => overMm <= SLACK;

/** Of the side of the workpiece that is worst, how much of what is faced opens wider than it may. */
function widestSide({ jig }: Seated, looks: readonly Look[]): number {
  const sides = new Map<Side, { all: number; wide: number }>();
  for (const look of looks) {
    const side = sideOf(turnedBy(jig.jigToBlank, look.place.normal));
    const { all, wide } = sides.get(side) ?? { all: 0, wide: 0 };
    sides.set(side, { all: all + 1, wide: wide + (isWithin(look) ? 0 : 1) });
  }
  const worth = [...sides.values()].filter(({ wide }) => wide >= LEAST_WIDE);
  return Math.max(0, ...worth.map(({ all, wide }) => wide / all));
}

/** The nearest of the seated place and of the end of each move. */
function nearestMm({ tree, workpieceFacets, fit }: Seated, upTo: number): number {
  const atRest = distanceBetween(tree, workpieceFacets, { upTo });
  return fit.playMm.reduce(
    (least, move) => distanceBetween(tree, workpieceFacets, { upTo: least, move }),
    atRest,
  );
}

/** What is seen from a place: over its limit by so much; the bottom of a letter does not bear. */
type Look = { readonly place: Faced; readonly overMm: number; readonly bears: boolean };

/** Mm between the points. */
function stepOn({ corners }: Facets): number {
  let area = 0;
  for (let o = 0; o < corners.length; o += 9) area += facetArea(corners, o);
  return Math.min(WIDEST_STEP, Math.max(LEAST_STEP, Math.sqrt(area / LOOKS)));
}

function facedPlaces(seated: Seated, step: number): Look[] {
  return surfaceSamples(seated.workpieceFacets, step).flatMap((sample) => {
    const look = lookFrom(seated, sample);
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
  const met = along3(at, hit.distance, normal);
  if (onToolsWay(fit, met)) return null;
  const sunk = letterDepth(jig.letters, met, normal);
  const most = rest + afterPlay + sunk;
  // A wall that turns a corner is nearer aside than straight out.
  const gapMm =
    hit.distance <= most + SLACK ? hit.distance : distanceToFacets(tree, at, hit.distance);
  const afterPlayMm = gapMm <= rest + SLACK ? 0 : gapMm - rest;
  return { place: { at, normal, gapMm, afterPlayMm }, overMm: gapMm - most, bears: sunk === 0 };
}

/** On the faces of the way a tool takes through the jig, which bear on the tool and not on the workpiece. */
function onToolsWay({ tools }: Fit, at: Point3): boolean {
  return tools.some((tool) => {
    const from = sub3(at, tool.axis.originMm);
    const lines = tool.kind === 'saw' ? [tool.axis.direction, tool.stroke] : [tool.axis.direction];
    const aside = lines.reduce((rest, unit) => along3(rest, -dot3(rest, unit), unit), from);
    return Math.hypot(...aside) < tool.widthMm / 2 + SLACK;
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
