/**
 * Judges a finished jig by its mesh and its workpiece, without asking how it was made. It runs on
 * every build; what it finds is our own fault, never the maker's.
 */
import { type FacetTree, facetTree } from '../geometry/facet-tree.js';
import { meshBox, meshFlaws, meshVolume } from '../geometry/mesh.js';
import type { SolidKernel } from '../solid/kernel.js';
import { measure, sharedVolume } from '../solid/measure.js';
import { turnedBy } from '../solid/placement.js';
import { readBackStl } from '../solid/readback.js';
import { flawsOf, type JigCheck } from './flaw.js';
import type { Jig } from './jig.js';
import type { PrintedPart } from './print.js';
import type { Bed } from './printer.js';
import { clearance } from './proof/clearance.js';
import { type Held, holds } from './proof/hold.js';
import { passage } from './proof/passage.js';
import { type Seated, seated, type Workpieces } from './proof/seated.js';
import { sideOf } from './proof/side.js';
import { thinnestWall } from './walls.js';

const OVERLAP = 1e-6; // mm³: what two solids that do not meet may seem to share by rounding

/** What was found, and how each load of each tool is held. */
export type Judged = JigCheck & { readonly held: readonly Held[] };

/**
 * What every jig must hold: a sound solid, walls as asked, and for its workpiece room within the band
 * that was set, a way out, and hold against its tools.
 */
export function checkJig(kernel: SolidKernel, jig: Jig, workpieces: Workpieces): Judged {
  const solid = checkSolid(kernel, jig);
  // An open mesh cannot be measured further.
  if (solid.flaws.some((f) => f.code === 'mesh-open')) return { ...solid, held: [] };
  const tree = facetTree(jig.mesh);
  const seat = seated(kernel, jig, tree, workpieces);
  const fit = seat ? checkFit(kernel, seat) : { flaws: [], measured: {}, held: [] };
  return { ...joined([solid, fit, checkWalls(jig, tree)]), held: fit.held };
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
      [jig.openings !== null && genus !== jig.openings, 'openings', genus, jig.openings ?? 0],
    ]),
    measured: { pieces, openings: genus },
  };
}

/** The seated workpiece shares nothing with the jig, has its band of room, its way out and its hold. */
function checkFit(kernel: SolidKernel, seated: Seated): Judged {
  const { jig, workpiece, fit, free } = seated;
  // What has a clear way out shares nothing either: on a line that both share, plastic would lie
  // beyond wood. A sawn blank is quick to hold against the jig once more, by the kernel.
  const overlap =
    jig.workpiece === 'sawn' || !free
      ? sharedVolume(kernel, { kind: 'mesh', mesh: jig.mesh }, { kind: 'mesh', mesh: workpiece })
      : 0;
  const { faced, ...gaps } = clearance(seated);
  const held = holds(faced, fit, (normal) => sideOf(turnedBy(jig.jigToBlank, normal)));
  const loose = held.filter((h) => !h.held).length;
  const seat = {
    flaws: flawsOf([
      [overlap > OVERLAP, 'overlaps-blank', overlap, OVERLAP],
      [loose > 0, 'load-not-held', loose, 0],
    ]),
    measured: { overlapMm3: overlap },
  };
  return { ...joined([seat, gaps, passage(seated)]), held };
}

/** Letters may take their depth from a wall. */
function checkWalls({ letters, leastWallMm }: Jig, tree: FacetTree): JigCheck {
  const sunk = Math.max(0, ...letters.map((l) => l.depthMm));
  const least = leastWallMm - sunk - 0.01;
  const thinnest = thinnestWall(tree, letters, leastWallMm + 1);
  return {
    flaws: flawsOf([[thinnest < least, 'wall-thin', thinnest, least]]),
    measured: { thinnestWallMm: thinnest },
  };
}
