/**
 * Each jig's booleans by the mesh kernel against the same tree by @jscad/modeling's own booleans, in
 * one run on one machine: the ratio is what counts, not the milliseconds.
 */
import { meshFlaws, meshVolume } from '../geometry/mesh.js';
import type { Jig } from '../jig/jig.js';
import { evaluate } from '../solid/evaluate.js';
import { jscadBooleans, jscadEvaluate } from '../solid/jscad.js';
import type { SolidKernel } from '../solid/kernel.js';

export type JigBenchRow = {
  /** Pattern and kind. */
  readonly jig: string;
  readonly triangles: number;
  /** Median, from tree to checked mesh. */
  readonly kernelMs: number;
  /** Median, booleans only. */
  readonly jscadMs: number;
  /** How many times faster. */
  readonly ratio: number;
  readonly openEdges: number;
  /** After that library's own repair. */
  readonly jscadOpenEdges: number;
  readonly volumeMm3: number;
  readonly jscadVolumeMm3: number;
};

const RUNS = { warm: 2, kernel: 9, jscad: 3 };

/** One row a jig, in their order. */
export function benchJigs(kernel: SolidKernel, jigs: readonly Jig[]): readonly JigBenchRow[] {
  return jigs.map((jig) => {
    for (let i = 0; i < RUNS.warm; i++) evaluate(kernel, jig.csg);
    const kernelMs = median(RUNS.kernel, () => evaluate(kernel, jig.csg));
    const jscadMs = median(RUNS.jscad, () => jscadBooleans(jig.csg));
    const second = jscadEvaluate(jig.csg);
    return {
      jig: `${jig.pattern} ${jig.kind}`,
      triangles: jig.mesh.triangles.length / 3,
      kernelMs,
      jscadMs,
      ratio: jscadMs / kernelMs,
      openEdges: meshFlaws(jig.mesh.positions, jig.mesh.triangles).openEdges,
      jscadOpenEdges: second.openEdges,
      volumeMm3: meshVolume(jig.mesh),
      jscadVolumeMm3: second.volumeMm3,
    };
  });
}

function median(runs: number, work: () => unknown): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(runs / 2)];
}
