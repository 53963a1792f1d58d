/** Holds the edge of a printed gauge, cut out of its mesh, against the body's mesh cut by the kernel. */
import { NOTCH_MM } from '../../gauge/plate.js';
import { offset } from '../../geometry/clip.js';
import { type Ring, ringArea } from '../../geometry/ring.js';
import { distanceToEdge, type Point2, type Point3 } from '../../geometry/vec.js';
import { movedBy } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { type Matrix, placement, pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { JigWork } from '../jig.js';
import type { GaugeJig, ProfileGaugeJig, SectionGaugeJig } from './jig.js';
import type { GaugesSetup } from './setup.js';

const EDGE = 0.02; // mm: chords of plate and body, and the rounding of the mesh
const REFERENCE = 0.005; // mm: how far reference edges and notch may be from center plane and datum line
const CORNER = 1; // mm: nearer to the end of an edge the corner of the plate is nearest

type Finished = Pick<JigWork, 'body'>;

/** The edge to 0.02 mm, the reference edges and the datum notch where they belong, the plate at its station. */
export function checkGauge(
  kernel: SolidKernel,
  jig: GaugeJig,
  work: Finished,
  setup: GaugesSetup,
): JigCheck {
  const found =
    jig.kind === 'section-gauge'
      ? sectionErrors(kernel, jig, work, setup)
      : profileErrors(kernel, jig, work, setup);
  const { edgeMm, limitMm, referenceMm } = found;
  return {
    flaws: flawsOf([
      [!(edgeMm <= limitMm), 'gauge-off-body', edgeMm, limitMm],
      [!(referenceMm <= REFERENCE), 'gauge-off-reference', referenceMm, REFERENCE],
    ]),
    measured: { edgeErrorMm: edgeMm, referenceErrorMm: referenceMm },
  };
}

type Errors = {
  readonly edgeMm: number;
  readonly limitMm: number;
  readonly referenceMm: number;
};

function sectionErrors(
  kernel: SolidKernel,
  jig: SectionGaugeJig,
  { body }: Finished,
  { thicknessMm, edgeMm, seatClearanceMm, letters }: GaugesSetup,
): Errors {
  const port = jig.lies === 'fore' ? 1 : -1;
  const height = thicknessMm - Math.min(edgeMm, thicknessMm) / 2;
  const plate = plateAt(kernel, jig, height, ([, y, z]) => [port * y, z]);
  const across = placement([0, 0, 1], [1, 0, 0], [0, 1, 0], [0, 0, 0]);
  const finished = grownCut(kernel, body.mesh, across, jig.stationMm, seatClearanceMm);
  // The tick on the datum line comes out at the edge.
  const curve = finished.filter(([y, z]) => y > CORNER && Math.abs(z) > letters.strokeMm);
  const width = Math.max(...plate.map((p) => p[0]));
  const notch = plate.filter(([y]) => Math.abs(y - width + NOTCH_MM) < REFERENCE);
  const [faceX] = pointBy(jig.jigToBlank, [0, 0, thicknessMm]);
  return {
    edgeMm: furthest(curve, plate),
    limitMm: EDGE + jig.fullerMm,
    referenceMm: Math.max(
      Math.abs(Math.min(...plate.map((p) => p[0]))),
      Math.min(...notch.map(([, z]) => Math.abs(z))),
      Math.abs(faceX - jig.stationMm),
    ),
  };
}

function profileErrors(
  kernel: SolidKernel,
  jig: ProfileGaugeJig,
  { body }: Finished,
  { thicknessMm, letters, seatClearanceMm }: GaugesSetup,
): Errors {
  const up = jig.side === 'back' ? 1 : -1;
  const height = (thicknessMm - letters.depthMm) / 2;
  const plate = plateAt(kernel, jig, height, ([x, , z]) => [x, up * z]);
  const along = placement([1, 0, 0], [0, 0, -1], [0, 1, 0], [0, 0, 0]);
  const finished = grownCut(kernel, body.mesh, along, BESIDE, seatClearanceMm);
  const [from, to] = jig.interruptedMm ?? [Infinity, Infinity];
  const { fromMm, toMm } = jig;
  const curve = finished
    .map(([x, z]): Point2 => [x, up * z])
    .filter(([x, z]) => z > CORNER && x > fromMm && x < toMm && (x < from || x > to));
  const hasEnd = fromMm < 0 || toMm > body.shape.lengthMm;
  return {
    edgeMm: furthest(curve, plate),
    limitMm: EDGE,
    referenceMm: hasEnd ? Math.abs(Math.min(...plate.map((p) => p[1]))) : 0,
  };
}

const BESIDE = 0.01; // mm from the center plane, on which corners of the mesh lie

/** The plate cut parallel to its faces, in a frame of the lure's. */
function plateAt(
  kernel: SolidKernel,
  { mesh, jigToBlank }: GaugeJig,
  heightMm: number,
  seen: (p: Point3) => Point2,
): readonly Point2[] {
  const [regions] = sectionsAt(kernel, { kind: 'mesh', mesh }, [heightMm]);
  // Inside letters there are islands.
  const outer = regions.map((r) => r.outer).reduce((a, b) => (ringArea(b) > ringArea(a) ? b : a));
  return outer.map(([x, y]) => seen(pointBy(jigToBlank, [x, y, heightMm])));
}

/** The body cut at a height after a turn, grown by the gap of the seat. */
function grownCut(
  kernel: SolidKernel,
  mesh: JigWork['body']['mesh'],
  turn: Matrix,
  heightMm: number,
  seatMm: number,
): Ring {
  const [regions] = sectionsAt(kernel, movedBy(turn, { kind: 'mesh', mesh }), [heightMm]);
  return offset(regions, seatMm)[0].outer;
}

const furthest = (points: readonly Point2[], plate: readonly Point2[]): number =>
  points.reduce((most, p) => Math.max(most, distanceToEdge(p, plate)), 0);
