/**
 * Judges a finished jig by its mesh and its workpiece, without asking how it was made. It runs on
 * every build; what it finds is our own fault, never the maker's.
 */
import { minkowskiSum } from '../geometry/clip.js';
import { meshBox, meshFlaws, meshVolume } from '../geometry/mesh.js';
import { ring } from '../geometry/ring.js';
import { thinned } from '../geometry/thin.js';
import type { Point3 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { type Csg, movedBy, slab } from '../solid/csg.js';
import type { SolidKernel } from '../solid/kernel.js';
import { measure, sharedVolume } from '../solid/measure.js';
import { readBackStl } from '../solid/readback.js';
import { flawsOf, type JigCheck } from './flaw.js';
import type { Jig, JigBlank, JigWork } from './jig.js';
import { SEAT_CHORD } from './outline.js';
import type { PrintedPart } from './print.js';
import type { Bed } from './printer.js';
import { thinnestWall } from './walls.js';

const OVERLAP = 1e-6; // mm³: what two solids that do not meet may seem to share by rounding

/** What a jig is held against: the sawn blank, and the body for jigs that hold it. */
export type Workpieces = {
  readonly blank: JigBlank;
  readonly body?: Pick<JigWork['body'], 'mesh'>;
};

/** What every jig must hold: a sound solid, clear of its workpiece and its way out, walls as asked. */
export function checkJig(kernel: SolidKernel, jig: Jig, workpieces: Workpieces): JigCheck {
  const solid = checkSolid(kernel, jig);
  // An open mesh cannot be measured further.
  if (solid.flaws.some((f) => f.code === 'mesh-open')) return solid;
  return joined([solid, checkFit(kernel, jig, workpieces), checkWalls(jig)]);
}

/** Several checks as one. */
export const joined = (checks: readonly JigCheck[]): JigCheck => ({
  flaws: checks.flatMap((c) => c.flaws),
  measured: Object.assign({}, ...checks.map((c) => c.measured)),
});

/** A part as printed: on the bed, and not beyond it. */
export function checkPrinted({ mesh }: PrintedPart, bed: Bed): JigCheck {
  const [min, [x, y, z]] = meshBox(mesh);
  const over = Math.min(Math.max(x - bed.xMm, y - bed.yMm), Math.max(y - bed.xMm, x - bed.yMm));
  const off = Math.max(...min.map(Math.abs));
  return {
    flaws: flawsOf([
      [off > 0, 'not-on-bed', off, 0],
      [over > 0, 'off-bed', over, 0],
      [z > bed.zMm, 'off-bed', z, bed.zMm],
    ]),
    measured: {},
  };
}

/** Reads the written STL back and compares it with the mesh that was checked. */
export function checkJigFile({ mesh }: Pick<PrintedPart, 'mesh'>, stl: Uint8Array): JigCheck {
  const { triangles, volumeMm3 } = readBackStl(stl);
  const count = mesh.triangles.length / 3;
  const drift = Math.abs(volumeMm3 / meshVolume(mesh) - 1);
  return {
    flaws: flawsOf([
      [triangles !== count, 'file-differs', triangles, count],
      [!(drift < 1e-5), 'file-differs', drift, 1e-5],
    ]),
    measured: { fileVolumeDrift: drift },
  };
}

function checkSolid(kernel: SolidKernel, jig: Jig): JigCheck {
  const { openEdges, degenerate } = meshFlaws(jig.mesh.positions, jig.mesh.triangles);
  if (openEdges + degenerate > 0) {
    return { flaws: flawsOf([[true, 'mesh-open', openEdges + degenerate, 0]]), measured: {} };
  }
  const { pieces, genus } = measure(kernel, { kind: 'mesh', mesh: jig.mesh });
  return {
    flaws: flawsOf([
      [pieces !== 1, 'not-one-piece', pieces, 1],
      [genus !== jig.openings, 'openings', genus, jig.openings],
    ]),
    measured: { pieces, openings: genus },
  };
}

/** The seated workpiece shares nothing with the jig, and neither does anything it passes on its way out. */
function checkFit(kernel: SolidKernel, jig: Jig, { blank, body }: Workpieces): JigCheck {
  if (jig.workpiece === null) return { flaws: [], measured: {} };
  const inPlace = movedBy(jig.jigToBlank, { kind: 'mesh', mesh: jig.mesh });
  const half = blank.thicknessMm / 2;
  const isSawn = jig.workpiece === 'sawn';
  if (!isSawn && !body) throw new Fault(`${jig.kind} held against no body`);
  const workpiece: Csg =
    isSawn || !body ? slab(blank.profileRing, -half, half) : { kind: 'mesh', mesh: body.mesh };
  const seated = sharedVolume(kernel, inPlace, workpiece);
  const passing =
    isSawn && jig.freeDirection
      ? sharedVolume(kernel, inPlace, passage(jig, jig.freeDirection, blank))
      : 0;
  return {
    flaws: flawsOf([
      [seated > OVERLAP, 'overlaps-blank', seated, OVERLAP],
      [passing > OVERLAP, 'blank-cannot-move', passing, OVERLAP],
    ]),
    measured: { overlapMm3: seated, passageOverlapMm3: passing },
  };
}

/** Width of the thin rectangle that stands for a straight way, as a share of the seat's gap. */
const LINE = 0.4;

/** All the blank covers while it moves out along the free direction, past the far end of the jig. */
function passage({ sizeMm, seatMm }: Jig, [x, y, z]: Point3, blank: JigBlank): Csg {
  const far = Math.hypot(...sizeMm) + 1;
  const half = blank.thicknessMm / 2;
  if (x === 0 && z === 0) {
    return slab(blank.profileRing, Math.min(-half, y * far), Math.max(half, y * far));
  }
  const [dx, dz] = [-z * LINE * seatMm, x * LINE * seatMm];
  const way = ring([
    [0, 0],
    [x * far, z * far],
    [x * far + dx, z * far + dz],
    [dx, dz],
  ]);
  // Thinned inward by a part of the seat's gap: the sum of all points is slow, and says no more.
  const thin = thinned(blank.profileRing, SEAT_CHORD * seatMm);
  return slab(minkowskiSum(thin, way), -half, half);
}

/** Letters may take their depth from a wall. */
function checkWalls({ mesh, letters, leastWallMm }: Jig): JigCheck {
  const sunk = Math.max(0, ...letters.map((l) => l.depthMm));
  const least = leastWallMm - sunk - 0.01;
  const thinnest = thinnestWall(mesh, letters, leastWallMm + 1);
  return {
    flaws: flawsOf([[thinnest < least, 'wall-thin', thinnest, least]]),
    measured: { thinnestWallMm: thinnest },
  };
}
