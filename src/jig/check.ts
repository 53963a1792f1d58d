/**
 * Judges a finished jig by its mesh and the blank, without asking how it was made. It runs on every
 * build; what it finds is our own fault, never the maker's.
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
import { checkDrillGuides } from './check-drill-stop.js';
import { checkSawSlot } from './check-lip-slot.js';
import { flawsOf, type JigCheck } from './flaw.js';
import type { Jig, JigBlank } from './jig.js';
import { SEAT_CHORD } from './outline.js';

import type { DrillStopSetup, JigSetup, JigSetups, LipSlotGuideSetup } from './setup.js';
import { thinnestWall } from './walls.js';

const OVERLAP = 1e-6; // mm³: what two solids that do not meet may seem to share by rounding

type Checked = {
  readonly jig: Jig;
  readonly blank: JigBlank;
  readonly setups: JigSetups;
};

/** Every check of a jig against the blank and the set-ups it was made for. */
export function checkJig(kernel: SolidKernel, checked: Checked): JigCheck {
  const { jig, blank, setups } = checked;
  const setup = setupOf(jig, setups);
  const solid = checkSolid(kernel, jig, setup);
  // An open mesh cannot be measured further.
  if (solid.flaws.some((f) => f.code === 'mesh-open')) return solid;
  const kind =
    jig.kind === 'drill-stop'
      ? checkDrillGuides(kernel, jig, blank, setup as DrillStopSetup)
      : checkSawSlot(kernel, jig, blank, setup as LipSlotGuideSetup);
  const parts = [solid, checkFit(kernel, checked), checkWalls(jig, setup), kind];
  return {
    flaws: parts.flatMap((p) => p.flaws),
    measured: Object.assign({}, ...parts.map((p) => p.measured)),
  };
}

function setupOf({ kind, pattern }: Jig, { drillStop, lipSlotGuide }: JigSetups): JigSetup {
  const setup = kind === 'drill-stop' ? drillStop : lipSlotGuide;
  if (!setup) throw new Fault(`${kind} of ${pattern} was made without a set-up`);
  return setup;
}

/** Reads the written STL back and compares it with the mesh that was checked. */
export function checkJigFile(jig: Jig, stl: Uint8Array): JigCheck {
  const { triangles, volumeMm3 } = readBackStl(stl);
  const count = jig.mesh.triangles.length / 3;
  const drift = Math.abs(volumeMm3 / meshVolume(jig.mesh) - 1);
  return {
    flaws: flawsOf([
      [triangles !== count, 'file-differs', triangles, count],
      [!(drift < 1e-5), 'file-differs', drift, 1e-5],
    ]),
    measured: { fileVolumeDrift: drift },
  };
}

function checkSolid(kernel: SolidKernel, jig: Jig, setup: JigSetup): JigCheck {
  const { openEdges, degenerate } = meshFlaws(jig.mesh.positions, jig.mesh.triangles);
  if (openEdges + degenerate > 0) {
    return { flaws: flawsOf([[true, 'mesh-open', openEdges + degenerate, 0]]), measured: {} };
  }
  const { pieces, genus } = measure(kernel, { kind: 'mesh', mesh: jig.mesh });
  const [min, [x, y, z]] = meshBox(jig.mesh);
  const { bed } = setup;
  const over = Math.min(Math.max(x - bed.xMm, y - bed.yMm), Math.max(y - bed.xMm, x - bed.yMm));
  return {
    flaws: flawsOf([
      [pieces !== 1, 'not-one-piece', pieces, 1],
      [genus !== jig.openings, 'openings', genus, jig.openings],
      [Math.max(...min.map(Math.abs)) > 0, 'not-on-bed', Math.max(...min.map(Math.abs)), 0],
      [over > 0, 'off-bed', over, 0],
      [z > bed.zMm, 'off-bed', z, bed.zMm],
    ]),
    measured: { pieces, openings: genus },
  };
}

/** The seated blank shares nothing with the jig, and neither does anything it passes on its way out. */
function checkFit(kernel: SolidKernel, { jig, blank, setups }: Checked): JigCheck {
  const setup = setupOf(jig, setups);
  const inPlace = movedBy(jig.jigToBlank, { kind: 'mesh', mesh: jig.mesh });
  const half = blank.thicknessMm / 2;
  const seated = sharedVolume(kernel, inPlace, slab(blank.profileRing, -half, half));
  const passing = sharedVolume(kernel, inPlace, passage(jig, blank, setup.seatClearanceMm));
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
function passage({ freeDirection, sizeMm }: Jig, blank: JigBlank, seatMm: number): Csg {
  const far = Math.hypot(...sizeMm) + 1;
  const half = blank.thicknessMm / 2;
  const [x, y, z]: Point3 = freeDirection;
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
function checkWalls(jig: Jig, setup: JigSetup): JigCheck {
  const asked =
    setup.jig === 'drill-stop'
      ? Math.min(setup.wallMm, setup.floorMm, setup.webMm + setup.letters.depthMm)
      : Math.min(setup.wallMm, setup.cheekMm);
  const least = asked - setup.letters.depthMm - 0.01;
  const thinnest = thinnestWall(jig.mesh, jig.letters, asked + 1);
  return {
    flaws: flawsOf([[thinnest < least, 'wall-thin', thinnest, least]]),
    measured: { thinnestWallMm: thinnest },
  };
}
