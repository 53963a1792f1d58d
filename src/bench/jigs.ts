/**
 * Each jig's booleans by the mesh kernel against the same tree by @jscad/modeling's own booleans, in
 * one run on one machine: the ratio is what counts, not the milliseconds.
 */
import { meshFlaws, meshVolume } from '../geometry/mesh.js';
import type { Jig } from '../jig/jig.js';
import { evaluate } from '../solid/evaluate.js';
import { jscadBooleans, jscadEvaluate } from '../solid/jscad.js';
import type { SolidKernel } from '../solid/kernel.js';
import { medianMs } from './median.js';

export type JigBenchRow = {
  /** Pattern and kind. */
  readonly jig: string;
  readonly triangles: number;
  /** Median, from the tree to a welded, proved triangle mesh. */
  readonly kernelMs: number;
  /** Median, from the tree to triangles after that library's own repair, which still leaves edges open. */
  readonly jscadMs: number;
  /** How many times faster to triangles. */
  readonly ratio: number;
  /** Median of that library's booleans alone: polygons with corners on each other's edges, no mesh yet. */
  readonly jscadBooleansMs: number;
  /** How many times faster our mesh is than its booleans alone. */
  readonly booleansRatio: number;
  readonly openEdges: number;
  /** After that library's own repair. */
  readonly jscadOpenEdges: number;
  readonly volumeMm3: number;
  readonly jscadVolumeMm3: number;
};

const RUNS = { warm: 3, kernel: 11, jscad: 5 };

/** The first jig of each kind: the second kernel takes seconds for one. */
export const oneOfEachKind = (jigs: readonly Jig[]): readonly Jig[] =>
  jigs.filter((jig, i) => jigs.findIndex(({ kind }) => kind === jig.kind) === i);

/** One row a jig, in their order. */
export function benchJigs(kernel: SolidKernel, jigs: readonly Jig[]): readonly JigBenchRow[] {
  return jigs.map((jig) => {
    for (let i = 0; i < RUNS.warm; i++) evaluate(kernel, jig.csg);
    const kernelMs = medianMs(RUNS.kernel, () => evaluate(kernel, jig.csg));
    const second = jscadEvaluate(jig.csg);
    const jscadMs = medianMs(RUNS.jscad, () => jscadEvaluate(jig.csg));
    const jscadBooleansMs = medianMs(RUNS.jscad, () => jscadBooleans(jig.csg));
    return {
      jig: `${jig.pattern} ${jig.kind}`,
      triangles: jig.mesh.triangles.length / 3,
      kernelMs,
      jscadMs,
      ratio: jscadMs / kernelMs,
      jscadBooleansMs,
      booleansRatio: jscadBooleansMs / kernelMs,
      openEdges: meshFlaws(jig.mesh.positions, jig.mesh.triangles).openEdges,
      jscadOpenEdges: second.openEdges,
      volumeMm3: meshVolume(jig.mesh),
      jscadVolumeMm3: second.volumeMm3,
    };
  });
}
