/** What in a drill-stop jig would be in each other's way: guides, collars, and the clamps on its ears. */
import { asRegion, intersect } from '../../geometry/clip.js';
import { ring } from '../../geometry/ring.js';
import { cross, distanceToPiece, type Point2, sub } from '../../geometry/vec.js';
import type { JigProblem } from '../jig.js';
import { fromBelly, fromUpright } from './boring.js';
import type { Cradle } from './cradle.js';
import { bossHalf, type Faced, leans, withCollar } from './guided.js';
import type { DrillStopSetup, Ears } from './setup.js';

/** Guides with less plastic between them than asked. */
export function tooClose(guides: readonly Faced[]): JigProblem[] {
  return pairs(guides).flatMap(([a, b]) => {
    const betweenMm = webOf(a, b);
    const webMm = Math.min(a.webMm, b.webMm);
    if (betweenMm >= webMm) return [];
    const facts = {
      stationMm: a.boring.mouth[0],
      nextStationMm: b.boring.mouth[0],
      betweenMm,
      webMm,
    };
    return [{ code: 'jig-guides-too-close', path: b.boring.path, facts }];
  });
}

/** Thinnest plastic between any two guides; Infinity for one guide. */
export const thinnestWeb = (guides: readonly Faced[]): number =>
  Math.min(...pairs(guides).map(([a, b]) => webOf(a, b)));

const pairs = <T>(items: readonly T[]): [T, T][] =>
  items.flatMap((b, j) => items.slice(0, j).map((a): [T, T] => [a, b]));

/** Between the strips of two guides in the side view, from their faces to the mouths of their holes. */
function webOf(a: Faced, b: Faced): number {
  const [p, q, r, s] = [a.face, a.boring.mouth, b.face, b.boring.mouth];
  const side = (from: Point2, to: Point2, point: Point2) =>
    Math.sign(cross(sub(to, from), sub(point, from)));
  const meet = side(p, q, r) !== side(p, q, s) && side(r, s, p) !== side(r, s, q);
  const axes = meet
    ? 0
    : Math.min(
        distanceToPiece(p, r, s),
        distanceToPiece(q, r, s),
        distanceToPiece(r, p, q),
        distanceToPiece(s, p, q),
      );
  return axes - a.seatRadius - b.seatRadius;
}

/** Collars that would strike the boss of another guide, or a clamp. */
export const collarsThatHit = (
  guides: readonly Faced[],
  cradle: Cradle,
  setup: DrillStopSetup,
): JigProblem[] => {
  const belly = guides.filter(({ boring }) => fromBelly(boring));
  const { ears } = setup;
  return [
    ...belly.flatMap((g) =>
      hitsBoss(
        g,
        belly.filter((o) => o !== g && leans(o)),
      ),
    ),
    ...(ears ? belly.flatMap((g) => hitsClamp(g, cradle, ears)) : []),
  ];
};

const COLLAR_STEP = 0.5; // mm between the diameters tried

function hitsBoss(guide: Faced, others: readonly Faced[]): JigProblem[] {
  const { boring, collarMm } = guide;
  return others.flatMap((other) => {
    if (!meets(guide, collarMm, other)) return [];
    const steps = Math.floor(collarMm / COLLAR_STEP);
    const smaller = Array.from({ length: steps }, (_, i) => collarMm - (i + 1) * COLLAR_STEP);
    const fitsMm = smaller.find((d) => d > boring.diameterMm && !meets(guide, d, other)) ?? 0;
    const facts = {
      stationMm: boring.mouth[0],
      otherMm: other.boring.mouth[0],
      collarMm,
      fitsMm,
    };
    return [{ code: 'jig-collar-hits-guide', path: boring.path, facts }];
  });
}

/** Along its axis a collar comes from far outside down to its own face. */
const FAR_OUT = 200; // mm
const TOUCH = 0.05; // mm: on its own face it may rest

/** With a collar of this diameter on every bit that takes the same: a smaller one needs a smaller boss, too. */
function meets(guide: Faced, collarMm: number, other: Faced): boolean {
  const { boring, acrossMm, faceMm } = guide;
  const half = bossHalf(other.collarMm === guide.collarMm ? withCollar(other, collarMm) : other);
  const way = box(acrossMm, collarMm / 2, faceMm - FAR_OUT, faceMm - TOUCH).map((p) =>
    fromUpright(boring.inward, p),
  );
  const boss = box(other.acrossMm, half, other.faceMm, other.mouthMm).map((p) =>
    fromUpright(other.boring.inward, p),
  );
  return intersect([asRegion(ring(way))], [asRegion(ring(boss))]).length > 0;
}

const box = (across: number, half: number, from: number, to: number): Point2[] => [
  [across - half, from],
  [across + half, from],
  [across + half, to],
  [across - half, to],
];

/** A clamp stands on an ear, beyond the end of the block; it must be lower than the collar, or out of its reach. */
function hitsClamp(guide: Faced, cradle: Cradle, ears: Ears): JigProblem[] {
  const { boring, face, collarMm } = guide;
  const [sin, cos] = boring.inward;
  const lowest = cradle.baseMm - face[1] - (collarMm / 2) * Math.abs(sin);
  const limitMm = Math.max(0, lowest - ears.thicknessMm);
  const { noseEndMm, aftEndMm, wallsAlone } = cradle;
  const ends = [
    { end: 'nose', awayMm: face[0] - noseEndMm, wallMm: face[0] - wallsAlone.noseMm },
    { end: 'tail', awayMm: aftEndMm - face[0], wallMm: wallsAlone.aftMm - face[0] },
  ];
  return ends.flatMap(({ end, awayMm, wallMm }) => {
    if (ears.clampHeightMm <= limitMm || awayMm >= (collarMm / 2) * cos) return [];
    const facts = {
      stationMm: boring.mouth[0],
      end,
      clampMm: ears.clampHeightMm,
      limitMm,
      collarMm,
      // The block ends where a large collar is carried: a smaller one brings the end nearer, to the wall.
      fitsMm: Math.max(0, (2 * wallMm) / cos),
    };
    return [{ code: 'jig-collar-hits-clamp', path: boring.path, facts }];
  });
}
