/** From a pattern to the bytes of its jigs, kind by kind, and what the proof of them takes besides. */
import { stl } from '../formats/stl.js';
import { checkJig } from '../jig/check.js';
import type { JigWork } from '../jig/jig.js';
import { JIG_KINDS } from '../jig/kinds.js';
import type { JigSetups } from '../jig/set-ups.js';
import type { SolidKernel } from '../solid/kernel.js';
import { medianMs } from './median.js';

export type JigTimeRow = {
  readonly jig: string;
  readonly parts: number;
  readonly triangles: number;
  /** Median, from the pattern to STL bytes, all parts. */
  readonly bytesMs: number;
  /** Median, the kind's own measures and what every jig must hold. */
  readonly proofMs: number;
};

const RUNS = 5;

/** One row a kind, and one of all. */
export function benchJigTimes(
  kernel: SolidKernel,
  work: JigWork,
  { byKind, printer }: JigSetups,
): readonly JigTimeRow[] {
  const rows = JIG_KINDS.flatMap((kind): JigTimeRow[] => {
    const setup = byKind[kind.kind];
    if (!setup) return [];
    const set = { setup, printer };
    const { jigs } = kind.make(kernel, work, set);
    if (jigs.length === 0) return [];
    const bytesMs = medianMs(RUNS, () =>
      kind.make(kernel, work, set).jigs.map(({ mesh }) => stl(mesh, kind.kind)),
    );
    const proofMs = medianMs(RUNS, () =>
      jigs.map((jig) => [checkJig(kernel, jig, work), kind.measure(kernel, jig, work, set)]),
    );
    const triangles = jigs.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
    return [{ jig: kind.called, parts: jigs.length, triangles, bytesMs, proofMs }];
  });
  const sum = (of: (row: JigTimeRow) => number) => rows.reduce((total, row) => total + of(row), 0);
  return [
    ...rows,
    {
      jig: `all for ${work.blank.name}`,
      parts: sum((r) => r.parts),
      triangles: sum((r) => r.triangles),
      bytesMs: sum((r) => r.bytesMs),
      proofMs: sum((r) => r.proofMs),
    },
  ];
}
