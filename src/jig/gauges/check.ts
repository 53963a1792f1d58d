/**
 * Holds the edge of a printed gauge, cut out of its mesh by the kernel, against the edges of the
 * body's mesh where they cross the same plane: everywhere the seat's gap away.
 */
import { halves } from '../../body/properties.js';
import { unitSection } from '../../body/section.js';
import { NOTCH_MM } from '../../gauge/plate.js';
import { meshCrossings } from '../../geometry/mesh.js';
import { ringArea } from '../../geometry/ring.js';
import { distanceToEdge, type Point2, type Point3 } from '../../geometry/vec.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { pointBy } from '../../solid/placement.js';
import { flawsOf, type JigCheck } from '../flaw.js';
import type { JigWork } from '../jig.js';
import type { GaugeJig, ProfileGaugeJig, SectionGaugeJig } from './jig.js';
import type { GaugesSetup } from './setup.js';

const EDGE = 0.03; // mm: chords of plate and body, and the rounding of the mesh
const REFERENCE = 0.005; // mm: how far reference edges and notch may be from center plane and datum line
const CORNER = 1; // mm: nearer to the end of an edge the corner of the plate is nearest

type Finished = Pick<JigWork, 'body'>;

/** The edge to 0.03 mm, the reference edges and the datum notch where they belong, the plate at its station. */
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
  const corner = Math.min(CORNER, jig.halfBreadthMm / 2);
  // The tick on the datum line comes out at the edge.
  const curve = meshCrossings(body.mesh, 0, jig.stationMm)
    .map(([, y, z]): Point2 => [y, z])
    .filter(([y, z]) => y > corner && Math.abs(z) > letters.strokeMm);
  // A slab-sided section has corners that the body's own mesh does not follow so closely.
  const meshOffMm = furthestOff(curve, smoothSection(body.shape, jig.stationMm), 0);
  const width = Math.max(...plate.map((p) => p[0]));
  const notch = plate.filter(([y]) => Math.abs(y - width + NOTCH_MM) < REFERENCE);
  const [faceX] = pointBy(jig.jigToBlank, [0, 0, thicknessMm]);
  return {
    edgeMm: furthestOff(curve, plate, seatClearanceMm),
    limitMm: EDGE + jig.fullerMm + meshOffMm,
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
  const [from, to] = jig.interruptedMm ?? [Infinity, Infinity];
  const { fromMm, toMm } = jig;
  const curve = meshCrossings(body.mesh, 1, BESIDE)
    .map(([x, , z]): Point2 => [x, up * z])
    .filter(([x, z]) => z > CORNER && x > fromMm && x < toMm && (x < from || x > to));
  const hasEnd = fromMm < 0 || toMm > body.shape.lengthMm;
  return {
    edgeMm: furthestOff(curve, plate, seatClearanceMm),
    limitMm: EDGE,
    referenceMm: hasEnd ? Math.abs(Math.min(...plate.map((p) => p[1]))) : 0,
  };
}

const BESIDE = 1e-4; // mm from the center plane, on which corners of the mesh lie

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

const AROUND = 200; // points of a half section, by angle

/** The half section as points of its superellipses, in the center plane closed. */
function smoothSection(shape: JigWork['body']['shape'], stationMm: number): Point2[] {
  const [upper, lower] = halves(shape, stationMm);
  return Array.from({ length: 2 * AROUND + 1 }, (_, i): Point2 => {
    const angle = (Math.PI / 2) * (i / AROUND - 1);
    const { b, h, n } = angle < 0 ? lower : upper;
    const [y, z] = unitSection(angle, n);
    return [b * y, h * z];
  });
}

const furthestOff = (curve: readonly Point2[], plate: readonly Point2[], gapMm: number): number =>
  curve.reduce((most, p) => Math.max(most, Math.abs(distanceToEdge(p, plate) - gapMm)), 0);
