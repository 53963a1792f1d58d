/** The jig and its workpiece as solids in one frame, the jig's own, ready to be measured. */
import { asRegion } from '../../geometry/clip.js';
import { cornersOf, type Facets, type FacetTree, normalsOf } from '../../geometry/facet-tree.js';
import { type Mesh, reshaped } from '../../geometry/mesh.js';
import type { Point3 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { movedBy, slab } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { inverse, type Matrix, pointBy, turnedBy } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { Jig, JigBlank, JigWork } from '../jig.js';

/** What a jig is held against: the sawn blank, and the body for jigs that hold it. */
export type Workpieces = {
  readonly blank: JigBlank;
  readonly body?: Pick<JigWork['body'], 'mesh'>;
};

export type Seated = {
  readonly jig: Jig;
  readonly tree: FacetTree;
  readonly workpiece: Mesh;
  /** Those of its facets that lie near the jig or pass it on the way out. */
  readonly workpieceFacets: Facets;
  /** Unit; null when there is no way out. */
  readonly free: Point3 | null;
  /** In the frame of the jig. */
  readonly fit: Fit;
};

/**
 * Null for a jig that holds nothing.
 * @param tree of the jig's mesh
 * @throws Fault for one that holds something and does not say how
 */
export function seated(
  kernel: SolidKernel,
  jig: Jig,
  tree: FacetTree,
  workpieces: Workpieces,
): Seated | null {
  if (jig.workpiece === null) return null;
  if (!jig.fit) throw new Fault(`${jig.kind} does not say how its workpiece sits`);
  const toJig = inverse(jig.jigToBlank);
  const workpiece = workpieceOf(kernel, jig, workpieces, toJig);
  const free = jig.freeDirection && turnedBy(toJig, jig.freeDirection);
  const fit = fitBy(toJig, jig.fit);
  const corners = concerned(cornersOf(workpiece), jig, free, fit);
  return {
    jig,
    tree,
    workpiece,
    workpieceFacets: { corners, normals: normalsOf(corners) },
    free,
    fit,
  };
}

/** How far round a jig the workpiece may come near it, beside the play. */
const ROUND_MM = 5;

/** The facets that are near the jig, or that pass it on their way out; a gauge meets few of a body's. */
function concerned(
  corners: Float64Array,
  { sizeMm }: Jig,
  free: Point3 | null,
  { playMm }: Fit,
): Float64Array {
  const round = ROUND_MM + Math.max(0, ...playMm.map((p) => Math.hypot(...p)));
  const far = Math.hypot(...sizeMm) + 2 * round;
  const passes = (o: number): boolean => {
    for (let k = 0; k < 3; k++) {
      const a = corners[o + k];
      const b = corners[o + 3 + k];
      const c = corners[o + 6 + k];
      const way = free ? far * free[k] : 0;
      const low = Math.min(a, b, c) + Math.min(0, way);
      const high = Math.max(a, b, c) + Math.max(0, way);
      if (low > sizeMm[k] + round || high < -round) return false;
    }
    return true;
  };
  const kept: number[] = [];
  for (let o = 0; o < corners.length; o += 9) if (passes(o)) kept.push(o);
  const out = new Float64Array(9 * kept.length);
  for (const [i, o] of kept.entries()) out.set(corners.subarray(o, o + 9), 9 * i);
  return out;
}

function workpieceOf(
  kernel: SolidKernel,
  jig: Jig,
  { blank, body }: Workpieces,
  toJig: Matrix,
): Mesh {
  if (jig.workpiece === 'sawn') {
    const half = blank.thicknessMm / 2;
    return evaluate(kernel, movedBy(toJig, slab([asRegion(blank.profileRing)], -half, half)));
  }
  if (!body) throw new Fault(`${jig.kind} held against no body`);
  return moved(body.mesh, (p) => pointBy(toJig, p));
}

/** The mesh with every corner moved. */
function moved(mesh: Mesh, by: (p: Point3) => Point3): Mesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    positions.set(by([mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]]), i);
  }
  return reshaped(mesh, positions);
}

function fitBy(m: Matrix, { gapMm, playMm, pressed, tools }: Fit): Fit {
  const turned = (d: Point3) => turnedBy(m, d);
  return {
    gapMm,
    playMm: playMm.map(turned),
    pressed: pressed.map((p) => ({
      ...p,
      at: pointBy(m, p.at),
      direction: turned(p.direction),
    })),
    tools: tools.map((tool) => {
      const { originMm, direction } = tool.axis;
      const axis = { originMm: pointBy(m, originMm), direction: turned(direction) };
      return tool.kind === 'saw'
        ? { ...tool, axis, stroke: turned(tool.stroke) }
        : { ...tool, axis };
    }),
  };
}
