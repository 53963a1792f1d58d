/** Measures the guides of a drill-stop jig on its mesh, each in a frame whose z is the axis asked for. */
import type { Region } from '../../geometry/ring.js';
import { distance, type Point2, type Point3 } from '../../geometry/vec.js';
import { cross3, length3, sub3 } from '../../geometry/vec3.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsMoved } from '../../solid/measure.js';
import { after, type Matrix, placement, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import { type Bore, boreNear } from './bore.js';
import { type Boring, upright } from './boring.js';
import type { DrillGuide, DrillStopJig } from './jig.js';
import type { DrillStopSetup } from './setup.js';

const PLACE = 0.01; // mm
const ANGLE = 0.01; // degrees
const DIAMETER = 0.02; // mm a bore may be wide; it may not be narrow
const SETTING = 0.02; // mm

/**
 * Everything that is drilled must have a guide on its axis: closed all round near both ends, in
 * place, along the axis, wide enough and not too wide; its stop face square to the axis; a sleeve's
 * seat as long as told, with a shoulder; and the collar setting must give the depth.
 */
export function checkDrillGuides(
  kernel: SolidKernel,
  jig: DrillStopJig,
  borings: readonly Boring[],
  setup: DrillStopSetup,
): JigCheck {
  const byAxis = new Map<string, Boring[]>();
  for (const boring of borings) {
    const key = boring.inward.join(' ');
    byAxis.set(key, [...(byAxis.get(key) ?? []), boring]);
  }
  const looks = [...byAxis.values()].map((group) => lookAt(jig, group, setup));
  const sections = sectionsMoved(kernel, { kind: 'mesh', mesh: jig.mesh }, looks);
  const results = looks.flatMap(({ asked }, i) => {
    let from = 0;
    return asked.map((one) => {
      const own = sections[i].slice(from, from + one.heights.length);
      from += one.heights.length;
      return checkGuide(one, own);
    });
  });
  const worst = (key: string) => Math.max(0, ...results.map((r) => r.measured[key] ?? 0));
  return {
    flaws: results.flatMap((r) => r.flaws),
    measured: {
      guideOffMm: worst('guideOffMm'),
      guideTiltDeg: worst('guideTiltDeg'),
      stopFaceTiltDeg: worst('stopFaceTiltDeg'),
      collarSettingErrorMm: worst('collarSettingErrorMm'),
    },
  };
}

/** The jig seen along an axis: z runs along it into the wood. What is asked there, and the heights to cut at. */
type Look = {
  readonly matrix: Matrix;
  readonly asked: readonly Asked[];
  readonly heights: readonly number[];
};

type Asked = {
  readonly boring: Boring;
  readonly wanted: Wanted;
  /** Null when the jig has no guide for it, or nothing about its axis. */
  readonly found: { readonly guide: DrillGuide; readonly face: StopFace } | null;
  readonly heights: readonly number[];
};

function lookAt(jig: DrillStopJig, borings: readonly Boring[], setup: DrillStopSetup): Look {
  const [dx, dz] = borings[0].inward;
  const turn = placement([dz, 0, dx], [0, 1, 0], [0 - dx, 0, dz], [0, 0, 0]);
  const matrix = after(jig.jigToBlank, turn);
  const { positions } = jig.mesh;
  const corners = Array.from({ length: positions.length / 3 }, (_, v) =>
    pointBy(matrix, [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]]),
  );
  const asked = borings.map((boring): Asked => {
    const wanted = wantedOf(boring, setup);
    const [across] = upright(boring.inward, boring.mouth);
    const guide = jig.guides.find(
      (g) => g.for === boring.for && distance([g.stationMm, g.heightMm], boring.mouth) < PLACE,
    );
    const face = faceAbout(corners, jig, [across, 0], wanted.seatMm / 2);
    if (!guide || !face) return { boring, wanted, found: null, heights: [] };
    const heights = heightsOf(guide, face.alongMm, wanted.leastMm, setup);
    return { boring, wanted, found: { guide, face }, heights };
  });
  return { matrix, asked, heights: asked.flatMap((a) => a.heights) };
}

function checkGuide(
  { boring, wanted, found, heights }: Asked,
  sections: readonly (readonly Region[])[],
): JigCheck {
  const [across, mouth] = upright(boring.inward, boring.mouth);
  const seen = sections.map((section) => boreNear(section, [across, 0]));
  if (!found || seen.some((b) => b === null)) return MISSING;
  const { guide, face } = found;
  const bores = seen as readonly Bore[];
  const [low, high] = [bores[0], bores[bores.length - 1]];
  const off = Math.max(...bores.map((b) => distance(b.center, [across, 0])));
  const rise = heights[heights.length - 1] - heights[0];
  const tilt = degrees(Math.atan2(distance(low.center, high.center), rise));
  const setting = Math.abs(mouth + boring.depthMm - face.alongMm - guide.collarSettingMm);
  const seats = guide.sleeve ? bores.slice(0, 2) : [];
  return {
    flaws: flawsOf([
      [off > PLACE, 'guide-off-station', off, PLACE],
      [tilt > ANGLE, 'guide-out-of-square', tilt, ANGLE],
      [face.tiltDeg > ANGLE, 'stop-face-out-of-square', face.tiltDeg, ANGLE],
      [setting > SETTING, 'collar-setting', setting, SETTING],
      ...bores
        .slice(seats.length)
        .flatMap((b) => sizes(b, wanted.boreMm, 'guide-diameter' as const)),
      ...seats.flatMap((b) => sizes(b, wanted.seatMm, 'sleeve-seat' as const)),
    ]),
    measured: {
      guideOffMm: off,
      guideTiltDeg: tilt,
      stopFaceTiltDeg: face.tiltDeg,
      collarSettingErrorMm: setting,
    },
  };
}

const MISSING: JigCheck = { flaws: flawsOf([[true, 'guide-missing', 0, 1]]), measured: {} };

const degrees = (angle: number): number => (angle * 180) / Math.PI;

const sizes = ({ least, mean }: Bore, wantedMm: number, code: 'guide-diameter' | 'sleeve-seat') =>
  [
    [least < wantedMm - 1e-3, code, least, wantedMm],
    [mean > wantedMm + DIAMETER, code, mean, wantedMm],
  ] as const;

type Wanted = { readonly boreMm: number; readonly seatMm: number; readonly leastMm: number };

/** Diameters and least length by boring and set-up alone. */
function wantedOf({ for: what, diameterMm }: Boring, setup: DrillStopSetup): Wanted {
  const { pilots, bushingOuterDiameterMm: sleeveMm } = setup;
  if (what !== 'ballast') {
    const boreMm = diameterMm + (pilots?.holeClearanceMm ?? 0);
    return { boreMm, seatMm: boreMm, leastMm: pilots?.guideLengthMm ?? 0 };
  }
  const boreMm = diameterMm + setup.holeClearanceMm;
  const seatMm = sleeveMm > 0 ? sleeveMm + setup.bushingFitMm : boreMm;
  return { boreMm, seatMm, leastMm: setup.guideLengthMm };
}

const INSIDE = 0.1; // mm from an end of a bore to where it is measured

/** Near both ends of the bore; of a sleeve's seat near its face and its shoulder first. */
function heightsOf(
  guide: DrillGuide,
  faceMm: number,
  leastMm: number,
  { letters }: DrillStopSetup,
): number[] {
  const start = faceMm + letters.depthMm + INSIDE;
  const end = faceMm + Math.max(leastMm, guide.guideLengthMm) - INSIDE;
  if (!guide.sleeve) return [start, end];
  const shoulder = faceMm + guide.sleeve.lengthMm;
  return [start, shoulder - INSIDE, shoulder + INSIDE, end];
}

type StopFace = { readonly alongMm: number; readonly tiltDeg: number };

const RIM = 0.5; // mm about the bore's radius in which its rim is looked for

/** The face about a bore: lowest rim of the bore along the axis, and how the facets at it lie. */
function faceAbout(
  corners: readonly Point3[],
  { mesh: { triangles } }: DrillStopJig,
  axis: Point2,
  radius: number,
): StopFace | null {
  const aside = ([x, y]: Point3) => distance([x, y], axis);
  const isRim = corners.map((p) => Math.abs(aside(p) - radius) < Math.min(RIM, radius / 2));
  const rim = corners.filter((_, v) => isRim[v]).map(([, , z]) => z);
  if (rim.length === 0) return null;
  const alongMm = rim.reduce((a, b) => Math.min(a, b));
  let tilt = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const facet = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if (!facet.some((v) => isRim[v] && corners[v][2] < alongMm + RIM)) continue;
    const points = facet.map((v) => corners[v]);
    if (!facesOut(points)) continue;
    for (const p of points) {
      if (aside(p) > radius + RIM)
        tilt = Math.max(tilt, Math.abs(p[2] - alongMm) / (aside(p) - radius));
    }
  }
  return { alongMm, tiltDeg: degrees(Math.atan(tilt)) };
}

/** More toward the drill than aside. */
function facesOut([a, b, c]: readonly Point3[]): boolean {
  const normal = cross3(sub3(b, a), sub3(c, a));
  return -normal[2] > Math.SQRT1_2 * length3(normal);
}
