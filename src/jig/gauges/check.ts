/**
 * Holds the edge of a printed gauge, cut out of its mesh by the kernel, against the edges of the
 * body's mesh where they cross the same plane: everywhere the seat's gap away.
 */
import { NOTCH_MM } from '../../gauge/plate.js';
import type { Mesh } from '../../geometry/mesh.js';
import { ringArea } from '../../geometry/ring.js';
import { distanceToEdge, type Point2, type Point3 } from '../../geometry/vec.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { sectionsAt } from '../../solid/measure.js';
import { pointBy } from '../../solid/placement.js';
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
  const corner = Math.min(CORNER, jig.halfBreadthMm / 2);
  // The tick on the datum line comes out at the edge.
  const curve = crossings(body.mesh, 0, jig.stationMm)
    .map(([, y, z]): Point2 => [y, z])
    .filter(([y, z]) => y > corner && Math.abs(z) > letters.strokeMm);
  const width = Math.max(...plate.map((p) => p[0]));
  const notch = plate.filter(([y]) => Math.abs(y - width + NOTCH_MM) < REFERENCE);
  const [faceX] = pointBy(jig.jigToBlank, [0, 0, thicknessMm]);
  return {
    edgeMm: furthestOff(curve, plate, seatClearanceMm),
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
  const [from, to] = jig.interruptedMm ?? [Infinity, Infinity];
  const { fromMm, toMm } = jig;
  const curve = crossings(body.mesh, 1, BESIDE)
    .map(([x, , z]): Point2 => [x, up * z])
    .filter(([x, z]) => z > CORNER && x > fromMm && x < toMm && (x < from || x > to));
  const hasEnd = fromMm < 0 || toMm > body.shape.lengthMm;
  return {
    edgeMm: furthestOff(curve, plate, seatClearanceMm),
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

/** Where edges of a mesh cross the plane on which one coordinate has a value. */
function crossings({ positions, triangles }: Mesh, axis: 0 | 1, value: number): Point3[] {
  const found: Point3[] = [];
  const corner = (v: number): Point3 => [
    positions[3 * v],
    positions[3 * v + 1],
    positions[3 * v + 2],
  ];
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k++) {
      const [v, w] = [triangles[t + k], triangles[t + ((k + 1) % 3)]];
      const [a, b] = [positions[3 * v + axis], positions[3 * w + axis]];
      // Each edge belongs to two triangles, which run along it in opposite ways.
      if (!(a <= value && b > value)) continue;
      found.push(mix3(corner(v), corner(w), (value - a) / (b - a)));
    }
  }
  return found;
}

const mix3 = (a: Point3, b: Point3, t: number): Point3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

const furthestOff = (curve: readonly Point2[], plate: readonly Point2[], gapMm: number): number =>
  curve.reduce((most, p) => Math.max(most, Math.abs(distanceToEdge(p, plate) - gapMm)), 0);
