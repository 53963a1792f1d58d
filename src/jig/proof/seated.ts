/** The jig and its workpiece as solids in one frame, the jig's own, ready to be measured. */
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
  const corners = cornersOf(workpiece);
  return {
    jig,
    tree,
    workpiece,
    workpieceFacets: { corners, normals: normalsOf(corners) },
    free: jig.freeDirection && turnedBy(toJig, jig.freeDirection),
    fit: fitBy(toJig, jig.fit),
  };
}

function workpieceOf(
  kernel: SolidKernel,
  jig: Jig,
  { blank, body }: Workpieces,
  toJig: Matrix,
): Mesh {
  if (jig.workpiece === 'sawn') {
    const half = blank.thicknessMm / 2;
    return evaluate(kernel, movedBy(toJig, slab(blank.profileRing, -half, half)));
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
