/** Measures the guides of a drill-stop jig on sections of its mesh, in the frame of the blank. */
import { meshBox } from '../../geometry/mesh.js';
import { type Region, type Ring, ringArea } from '../../geometry/ring.js';
import { cross, distance, dot, mix, type Point2, sub } from '../../geometry/vec.js';
import { movedBy } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { flawsOf, type JigCheck, type JigFlaw } from '../flaw.js';
import type { JigBlank } from '../jig.js';
import { columnAt } from '../outline.js';
import type { DrillStopJig } from './jig.js';
import type { DrillStopSetup } from './setup.js';

const PLACE = 0.01; // mm
const ANGLE = 0.01; // degrees
const DIAMETER = 0.02; // mm a bore may be wide; it may not be narrow

/**
 * Each ballast hole must have a bore round its axis, closed all round near both ends of its guide,
 * square to the datum line and wide enough; and the collar setting must give the hole's depth.
 */
export function checkDrillGuides(
  kernel: SolidKernel,
  jig: DrillStopJig,
  blank: JigBlank,
  setup: DrillStopSetup,
): JigCheck {
  const results = blank.holes.map((hole) => checkGuide(kernel, jig, { blank, setup, hole }));
  const worst = (key: string) => Math.max(0, ...results.map((r) => r.measured[key] ?? 0));
  return {
    flaws: results.flatMap((r) => r.flaws),
    measured: { guideOffMm: worst('guideOffMm'), guideTiltDeg: worst('guideTiltDeg') },
  };
}

type Asked = {
  readonly blank: JigBlank;
  readonly setup: DrillStopSetup;
  readonly hole: JigBlank['holes'][number];
};

function checkGuide(
  kernel: SolidKernel,
  jig: DrillStopJig,
  { blank, setup, hole }: Asked,
): JigCheck {
  const guide = jig.guides.find((g) => g.stationMm === hole.stationMm);
  const inPlace = movedBy(jig.jigToBlank, { kind: 'mesh', mesh: jig.mesh });
  const stopFaceMm = stopFaceOf(jig);
  const length = Math.max(setup.guideLengthMm, guide?.guideLengthMm ?? 0);
  const heights = [setup.letters.depthMm + 0.1, length - 0.1].map((h) => stopFaceMm + h);
  const asked: Point2 = [hole.stationMm, 0];
  const bores = sectionsAt(kernel, inPlace, heights).map((section) => boreNear(section, asked));
  if (!guide || bores.some((b) => b === null)) {
    return { flaws: flawsOf([[true, 'guide-missing', 0, 1]]), measured: {} };
  }
  const [low, high] = bores as readonly Bore[];
  const off = Math.max(distance(low.center, asked), distance(high.center, asked));
  const drift = distance(low.center, high.center);
  const tilt = (Math.atan2(drift, heights[1] - heights[0]) * 180) / Math.PI;
  const wanted = (setup.bushingOuterDiameterMm || hole.diameterMm) + setup.holeClearanceMm;
  const narrow = Math.min(low.least, high.least);
  const wide = Math.max(low.mean, high.mean);
  return {
    flaws: [
      ...flawsOf([
        [off > PLACE, 'guide-off-station', off, PLACE],
        [tilt > ANGLE, 'guide-out-of-square', tilt, ANGLE],
        [narrow < wanted - 1e-3, 'guide-diameter', narrow, wanted],
        [wide > wanted + DIAMETER, 'guide-diameter', wide, wanted],
      ]),
      ...collarFlaws(guide.collarSettingMm - hole.depthMm, stopFaceMm, hole, blank),
    ],
    measured: { guideOffMm: off, guideTiltDeg: tilt },
  };
}

/** Under the collar lie the jig's wall and the air over the belly; the rest of the bit is in the wood. */
function collarFlaws(
  aboveWoodMm: number,
  stopFaceMm: number,
  hole: Asked['hole'],
  blank: JigBlank,
): JigFlaw[] {
  const belly = columnAt(blank.profileRing, hole.stationMm)?.low ?? Number.NaN;
  const error = Math.abs(belly - stopFaceMm - aboveWoodMm);
  return flawsOf([[!(error < 0.02), 'collar-setting', error, 0.02]]);
}

/** Lowest place of the jig under the blank, from its mesh. */
function stopFaceOf({ mesh, jigToBlank }: DrillStopJig): number {
  const [, [, yMax]] = meshBox(mesh);
  // The belly side of the jig is its greatest Y, and Y runs straight down.
  return jigToBlank[14] + jigToBlank[6] * yMax;
}

type Bore = { readonly center: Point2; readonly least: number; readonly mean: number };

/** The closed loop of air about a point; null where the material is not closed round it. */
function boreNear(section: readonly Region[], [x, y]: Point2): Bore | null {
  const holes = section.flatMap((region) => region.holes).map(boreOf);
  const near = holes.filter((b) => distance(b.center, [x, y]) < b.mean / 2);
  return near.length === 1 ? near[0] : null;
}

function boreOf(loop: Ring): Bore {
  const center = centroid(loop);
  const gaps = loop.map((p, i) => toSegment(center, p, loop[(i + 1) % loop.length]));
  return {
    center,
    least: 2 * Math.min(...gaps),
    mean: 2 * Math.sqrt(ringArea(loop) / Math.PI),
  };
}

/** To the segment, not to its line: an edge a micrometer long has no direction to rely on. */
function toSegment(from: Point2, p: Point2, q: Point2): number {
  const along = sub(q, p);
  const t = dot(sub(from, p), along) / dot(along, along);
  return distance(from, mix(p, q, Math.min(1, Math.max(0, t))));
}

function centroid(loop: Ring): Point2 {
  let [x, y] = [0, 0];
  const [ox, oy] = loop[0];
  loop.forEach((p, i) => {
    const q = loop[(i + 1) % loop.length];
    const w = cross(sub(p, [ox, oy]), sub(q, [ox, oy]));
    x += w * (p[0] + q[0] - 2 * ox);
    y += w * (p[1] + q[1] - 2 * oy);
  });
  const six = 6 * ringArea(loop);
  return [ox + x / six, oy + y / six];
}
