/** Where to cut a solid: what its planes offer, and the joints that come of it. */
import { meshBox } from '../../geometry/mesh.js';
import { areaOf, type Region } from '../../geometry/ring.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { measure } from '../../solid/measure.js';
import { between, sectionsAcross, solidThroughout, type Whole } from './across.js';
import { type Cuttable, cutsFor, type Span } from './cuts.js';
import { dowelPlaces } from './dowels.js';
import { boreDepthMm, type DowelSetup, type Joint, type SplitOrder } from './split.js';

/** Planes are looked at this far apart, mm, and where pieces would be even. */
const STEP = 1;
/** Pieces more than the fewest that are tried. */
const MORE = 2;

/** A solid with what has been asked about it so far. */
type Asked = Cuttable & {
  /** Planes not looked at because the caller bars them. */
  readonly barred: number;
  /** What is solid as far as a bore and the wall beyond it go, either way. */
  readonly soundAt: (xMm: number) => readonly Region[];
};

export type NoPlane = {
  readonly planes: number;
  readonly barredPlanes: number;
  /** Of the planes that are not barred, those without room for one dowel. */
  readonly thinPlanes: number;
  /** The largest dowel, by whole millimeters, that would find room; 0 if none. */
  readonly worksDiameterMm: number;
};

/** The joints in the order of x, none if the whole is short enough; or why there are none. */
export function planSplit(
  kernel: SolidKernel,
  whole: Whole,
  order: SplitOrder & { readonly mostPieceMm: number },
):
  | { readonly joints: readonly Joint[]; readonly why: null }
  | { readonly joints: null; readonly why: NoPlane } {
  if (whole.max[0] - whole.min[0] <= order.mostPieceMm) return { joints: [], why: null };
  const asked = askedOf(kernel, whole, order);
  const joints = jointsFor(asked, order.dowel);
  return joints ? { joints, why: null } : { joints: null, why: noPlane(asked, order.dowel) };
}

function askedOf(
  kernel: SolidKernel,
  whole: Whole,
  { dowel, keepWholeMm, mostPieceMm }: SplitOrder & { readonly mostPieceMm: number },
): Asked {
  const ends: Span = [whole.min[0], whole.max[0]];
  const xs = placesToCut(ends, mostPieceMm);
  const free = xs.filter((x) => !keepWholeMm.some(([from, to]) => from <= x && x <= to));
  const sections = sectionsAcross(kernel, whole, free);
  const deep = boreDepthMm(dowel) + dowel.wallMm;
  return {
    planes: free.map((xMm, i) => ({
      xMm,
      areaMm2: areaOf(sections[i]),
    })),
    barred: xs.length - free.length,
    ends,
    mostPieceMm,
    leastMiddleMm: deep + boreDepthMm(dowel),
    soundAt: remembered((x: number) =>
      x - deep < ends[0] || x + deep > ends[1]
        ? []
        : solidThroughout(kernel, whole, x - deep, x + deep),
    ),
    holds: remembered((span: Span) => {
      const piece = between(whole, ...span);
      const rests = meshBox(evaluate(kernel, piece))[0][2] === whole.min[2];
      return rests && measure(kernel, piece).pieces === 1;
    }, String),
  };
}

function placesToCut([from, to]: Span, mostPieceMm: number): number[] {
  const steps = Math.ceil((to - from) / STEP) - 1;
  const regular = Array.from({ length: steps }, (_, i) => from + (i + 1) * STEP);
  const even = countsFor([from, to], mostPieceMm).flatMap((count) =>
    Array.from({ length: count - 1 }, (_, j) => from + ((j + 1) * (to - from)) / count),
  );
  // As meshes hold them, so that a piece moved back by its plane begins at zero.
  const xs = [...regular, ...even].map(Math.fround);
  return [...new Set(xs)].sort((a, b) => a - b);
}

/** Numbers of pieces that are tried, the fewest first. */
const countsFor = ([from, to]: Span, mostPieceMm: number): number[] => {
  const fewest = Math.ceil((to - from) / mostPieceMm);
  return Array.from({ length: MORE + 1 }, (_, i) => fewest + i);
};

/** Two dowels to every joint in a few pieces more are better than one in the fewest pieces. */
function jointsFor(asked: Asked, dowel: DowelSetup): Joint[] | null {
  const placesAt = remembered((x: number) => dowelPlaces(asked.soundAt(x), dowel));
  for (const least of [2, 1]) {
    for (const count of countsFor(asked.ends, asked.mostPieceMm)) {
      const cuts = cutsFor(asked, count, (x) => placesAt(x).length >= least);
      if (!cuts) continue;
      return cuts.map((xMm) => ({
        xMm,
        sectionMm2: asked.planes.find((p) => p.xMm === xMm)?.areaMm2 ?? 0,
        dowels: placesAt(xMm).map(([y, z]) => [xMm, y, z] as const),
      }));
    }
  }
  return null;
}

function noPlane(asked: Asked, dowel: DowelSetup): NoPlane {
  const thin = asked.planes.filter((p) => dowelPlaces(asked.soundAt(p.xMm), dowel).length === 0);
  const works = (diameterMm: number): boolean =>
    jointsFor(asked, { ...dowel, diameterMm }) !== null;
  const smaller = Array.from({ length: Math.ceil(dowel.diameterMm) - 1 }, (_, i) => i + 1);
  // Where the smallest does not help, no other will.
  const largest = smaller.length > 0 && works(1) ? smaller.reverse().find(works) : 0;
  return {
    planes: asked.planes.length + asked.barred,
    barredPlanes: asked.barred,
    thinPlanes: thin.length,
    worksDiameterMm: largest ?? 0,
  };
}

/** Asks each question once. */
function remembered<Q, A>(
  ask: (question: Q) => A,
  key: (question: Q) => unknown = (question) => question,
): (question: Q) => A {
  const known = new Map<unknown, A>();
  return (question) => {
    const name = key(question);
    const answer = known.has(name) ? (known.get(name) as A) : ask(question);
    known.set(name, answer);
    return answer;
  };
}
