/** The shipped run and drawn blocks, nested by us and as bounding boxes: three tables of ratios. */
import { gapMm } from '../drawing/cut.js';
import type { NestPart, NestRules } from '../nest/nest.js';
import type { Build } from '../pipeline.js';
import { largeRows, mixedRow, type RunOrder, smallRow } from './nest-boxes.js';
import { table } from './table.js';

/** Layouts tried per face, as in a build. */
const EFFORT = { tries: 24, seed: 1, layouts: 120, clearNoseRatio: 0, largestTiltDeg: 0 };
const TIMES = [1, 20];

export function printNestBoxes({ job, products }: Build): void {
  if (!job.workshop) throw new Error('a run without a workshop');
  const { saw, webMm, stack, blocks } = job.workshop;
  const rules: NestRules = { gapMm: gapMm(saw, webMm), ...stack, ...EFFORT };
  const parts = products.map(({ blank, count, pattern }) => ({
    timber: pattern.timber,
    part: {
      id: blank.name,
      outline: blank.outlineRing,
      thicknessMm: blank.thicknessMm,
      orderedCount: count,
    } satisfies NestPart,
  }));
  const timbers = [...new Set(parts.map((p) => p.timber))];
  const run = timbers.map(
    (timber): RunOrder => ({
      timber,
      parts: parts.filter((p) => p.timber === timber).map((p) => p.part),
      blocks: blocks.filter((b) => b.timber === timber),
    }),
  );
  console.log(
    `Nest against bounding boxes (maxrects-packer), gap ${rules.gapMm} mm: a large face of one outline, and one that whole boxes fill`,
  );
  table(
    parts.flatMap((p) => largeRows(p.part, rules)),
    3,
  );
  console.log('The shipped run, mixed, on clear blocks of its sizes');
  table(
    TIMES.map((times) => mixedRow(run, times, rules)),
    3,
  );
  console.log('Small blocks drawn by chance: area of outlines, ours over the boxes’');
  table([smallRow(1, rules), smallRow(2, rules)], 3);
}
