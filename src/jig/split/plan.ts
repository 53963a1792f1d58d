/**
 * Where to cut: the fewest pieces that fit the bed, at planes with room for dowels, each plane with a
 * section as large as can be had; among like sections the pieces are made even.
 */
import { meshBox } from '../../geometry/mesh.js';
import { type Region, regionArea } from '../../geometry/ring.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { measure } from '../../solid/measure.js';
import { between, sectionsAcross, solidThroughout, type Whole } from './across.js';
import { dowelPlaces } from './dowels.js';
import { boreDepthMm, type DowelSetup, type Joint, type SplitOrder } from './split.js';

/** Planes are looked at this far apart, mm, and where pieces would be even. */
const STEP = 1;
/** Pieces more than the fewest that are tried. */
const MORE = 2;
/** Sections are held for alike within this part of the largest. */
const ALIKE = 0.05;
/** Spans whose pieces may turn out unsound before so many pieces are given up. */
const MOST_UNSOUND = 200;

type Plane = { readonly xMm: number; readonly areaMm2: number };

/** A solid with what has been asked about it so far. */
type Asked = {
  readonly planes: readonly Plane[];
  /** Planes not looked at because the caller bars them. */
  readonly barred: number;
  readonly ends: readonly [fromX: number, toX: number];
  readonly mostPieceMm: number;
  /** Between two cuts the bores of both must find room, one after the other. */
  readonly leastMiddleMm: number;
  /** What is solid as far as a bore and the wall beyond it go, either way. */
  readonly soundAt: (xMm: number) => readonly Region[];
  /** Whether what is between is one piece that rests on the bed. */
  readonly holds: (span: Span) => boolean;
};

type Span = readonly [fromX: number, toX: number];

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
      areaMm2: sections[i].reduce((sum, region) => sum + regionArea(region), 0),
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

/** Planes are opened one by one, the best first, until some of them part the whole into so many sound pieces. */
function cutsFor(asked: Asked, count: number, hasRoom: (x: number) => boolean): number[] | null {
  const open: number[] = [];
  const unsound = new Set<string>();
  for (const x of bestFirst(asked, count)) {
    if (!hasRoom(x)) continue;
    open.push(x);
    open.sort((a, b) => a - b);
    for (;;) {
      const chain = linked(asked, count, open, unsound);
      if (!chain) break;
      const bad = spansOf(chain).find((span) => !asked.holds(span));
      if (!bad) return chain.slice(1, -1);
      if (unsound.size === MOST_UNSOUND) return null;
      unsound.add(String(bad));
    }
  }
  return null;
}

/** Planes that can part the whole into so many pieces, by their sections; like sections by how even the pieces get. */
function bestFirst({ planes, ends: [from, to], mostPieceMm }: Asked, count: number): number[] {
  const even = (to - from) / count;
  const useful = planes.filter(({ xMm }) => {
    const [before, after] = [xMm - from, to - xMm];
    return Array.from({ length: count - 1 }, (_, j) => j + 1).some(
      (j) => before <= j * mostPieceMm && after <= (count - j) * mostPieceMm,
    );
  });
  const largest = Math.max(...useful.map((p) => p.areaMm2));
  const rank = ({ areaMm2 }: Plane): number => Math.ceil(areaMm2 / (ALIKE * largest) - 1e-6);
  const unevenness = ({ xMm }: Plane): number => {
    const share = (xMm - from) / even;
    return Math.abs(share - Math.round(share));
  };
  return [...useful]
    .sort((a, b) => rank(b) - rank(a) || unevenness(a) - unevenness(b) || a.xMm - b.xMm)
    .map((p) => p.xMm);
}

/** So many spans from end to end with cuts at open planes, as even as each step finds them; the ends are in it. */
function linked(
  { ends: [from, to], mostPieceMm, leastMiddleMm }: Asked,
  count: number,
  open: readonly number[],
  unsound: ReadonlySet<string>,
): number[] | null {
  const even = (to - from) / count;
  const fits = (a: number, b: number): boolean =>
    b - a <= mostPieceMm &&
    (a === from || b === to || b - a >= leastMiddleMm) &&
    !(unsound.size > 0 && unsound.has(String([a, b])));
  let reached: readonly number[][] = [[from]];
  for (let j = 1; j <= count; j++) {
    reached = (j === count ? [to] : open).flatMap((x) => {
      const before = reached
        .filter((chain) => chain[j - 1] < x && fits(chain[j - 1], x))
        .map((chain) => ({ chain, off: Math.abs(x - chain[j - 1] - even) }));
      if (before.length === 0) return [];
      return [[...before.reduce((a, b) => (b.off < a.off ? b : a)).chain, x]];
    });
  }
  return reached[0] ?? null;
}

const spansOf = (chain: readonly number[]): Span[] =>
  chain.slice(1).map((x, i) => [chain[i], x] as const);

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
