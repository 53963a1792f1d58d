/**
 * Hollows that a blade can not follow. A blade of width w just turns in its own kerf at a radius R;
 * the play it has for that is w²/(4R). Round a tighter hollow of radius r it still goes for a stretch
 * s with s²/(4r) no more than that play, so s = w·√(r/R): relief cuts so far apart let the waste
 * fall off before the blade binds. Bulges do not count: a saw leaves the line there into the waste.
 */
import {
  type ArcPath,
  arcOf,
  pathPoints,
  pointOn,
  type Segment,
  segmentLength,
  segmentsOf,
} from '../geometry/arcpath.js';
import { add, distance, type Point2, sub, times, unit } from '../geometry/vec.js';
import { type Problem, problem } from '../problem.js';
import { type Blades, bladeFor, narrowestOf, turningRadiusMm } from '../tables/blades.js';

/** A place of a hollow where a relief cut meets the outline, and the way square out of it. */
type Relief = { readonly at: Point2; readonly outward: Point2 };

type Hollow = { readonly stationMm: number; readonly radiusMm: number };

/** What a blade of this width can not follow: told with a narrower one that can, or that none can. */
export function hollowProblems(
  name: string,
  profile: ArcPath,
  bladeWidthMm: number,
  blades: Blades,
): Problem[] {
  const limitMm = turningRadiusMm(blades, bladeWidthMm);
  const tightest = hollowsOf(profile).reduce<Hollow | null>(
    (a, b) => (a === null || b.radiusMm < a.radiusMm ? b : a),
    null,
  );
  if (!tightest || tightest.radiusMm >= limitMm) return [];
  const key = ['saw', 'bladeWidthMm'];
  const narrower = bladeFor(blades, tightest.radiusMm);
  if (narrower) {
    const narrowerMm = narrower.widthMm;
    return [
      problem('blade-too-wide', key, { name, ...tightest, bladeWidthMm, limitMm, narrowerMm }),
    ];
  }
  const { widthMm, leastRadiusMm } = narrowestOf(blades);
  const facts = { name, ...tightest, narrowestMm: widthMm, limitMm: leastRadiusMm };
  return [problem('hollow-too-tight-for-saw', key, facts)];
}

const hollowsOf = (profile: ArcPath): Hollow[] =>
  segmentsOf(profile)
    .filter((s) => s.bulge < 0)
    .map((s) => ({ stationMm: s.from[0], radiusMm: arcOf(s).radius }));

/**
 * The relief cuts that help a blade round the hollows of an outline, blank frame: each straight from
 * the mouth of its hollow (the line from lip to lip) to the outline. Where the waste is no wider
 * than the kerf it falls as dust, and none is needed.
 */
export function mouthCuts(
  profile: ArcPath,
  { bladeWidthMm, kerfMm }: { readonly bladeWidthMm: number; readonly kerfMm: number },
  blades: Blades,
): (readonly Point2[])[] {
  const limitMm = turningRadiusMm(blades, bladeWidthMm);
  const tight = (s: Segment) => s.bulge < 0 && arcOf(s).radius < limitMm;
  return runsOf(segmentsOf(profile), tight)
    .flatMap((run) => {
      const lengthMm = run.reduce((sum, s) => sum + segmentLength(s), 0);
      const radiusMm = Math.min(...run.map((s) => arcOf(s).radius));
      const apartMm = bladeWidthMm * Math.sqrt(radiusMm / limitMm);
      if (lengthMm <= apartMm / 2) return [reliefAt(run, lengthMm / 2)];
      const count = Math.ceil(lengthMm / apartMm);
      return Array.from({ length: count + 1 }, (_, k) => reliefAt(run, (lengthMm * k) / count));
    })
    .flatMap((relief) => fromTheMouth(profile, relief, kerfMm));
}

/** Stretches of neighboring segments that all fit, round the closed path. */
function runsOf(segments: readonly Segment[], fits: (s: Segment) => boolean): Segment[][] {
  const first = segments.findIndex((s) => !fits(s));
  if (first < 0) return [[...segments]];
  const runs: Segment[][] = [];
  let run: Segment[] = [];
  for (let k = 0; k <= segments.length; k++) {
    const s = segments[(first + k) % segments.length];
    if (k < segments.length && fits(s)) run.push(s);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  return runs;
}

function reliefAt(run: readonly Segment[], alongMm: number): Relief {
  let left = alongMm;
  for (const s of run) {
    const long = segmentLength(s);
    if (left <= long || s === run[run.length - 1]) {
      const at = pointOn(s, Math.min(1, left / long));
      // The middle of a hollow's arc lies in the waste.
      return { at, outward: unit(sub(arcOf(s).center, at)) };
    }
    left -= long;
  }
  throw new RangeError('a run without segments');
}

function fromTheMouth(profile: ArcPath, { at, outward }: Relief, kerfMm: number): Point2[][] {
  const points = pathPoints(profile, 0.02);
  const leave = (ring: readonly Point2[]): number =>
    Math.min(
      ...ring.map((p, i) => rayShare({ at, outward }, p, ring[(i + 1) % ring.length], kerfMm / 4)),
    );
  const mouth = leave(hullOf(points));
  const wood = leave(points);
  // The outline lies in between when it is met before its hull, on which it may also lie.
  if (!Number.isFinite(mouth) || mouth < kerfMm || wood < mouth - 1e-6) return [];
  return [[add(at, times(outward, mouth)), at]];
}

/** Distance along the ray at which it meets the edge from p to q, beyond `least`; Infinity if it does not. */
function rayShare({ at, outward }: Relief, p: Point2, q: Point2, least: number): number {
  const [ex, ey] = sub(q, p);
  const [sx, sy] = sub(p, at);
  const turn = outward[0] * ey - outward[1] * ex;
  if (turn === 0) return Infinity;
  const t = (sx * ey - sy * ex) / turn;
  const u = (sx * outward[1] - sy * outward[0]) / turn;
  return t > least && u >= 0 && u <= 1 ? t : Infinity;
}

/** Convex hull, counter-clockwise (A. Andrew's monotone chain, 1979). */
function hullOf(points: readonly Point2[]): Point2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point2[]): Point2[] => {
    const out: Point2[] = [];
    for (const p of list) {
      while (out.length > 1 && !turnsLeft(out[out.length - 2], out[out.length - 1], p)) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())].filter(
    (p, i, all) => distance(p, all[(i + 1) % all.length]) > 0,
  );
}

const turnsLeft = (a: Point2, b: Point2, c: Point2): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
