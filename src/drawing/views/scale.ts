/** Scales of the views, mm of paper for a mm of the lure: the first that fits is taken. */

/** ISO 5455 has 1, 2 and 5 in each ten (from memory); the others stand between, for what would be drawn too small. */
const STEPS = [1, 1.25, 1.5, 2, 2.5, 4, 5, 7.5] as const;

const reduced = (steps: readonly number[]): readonly number[] =>
  [1, 10, 100].flatMap((ten) => steps.map((step) => 1 / (step * ten)));

/** As large as may be: lines are told apart by their distance. */
export const LARGEST_FIRST: readonly number[] = [10, 5, 4, 2.5, 2, 1.5, 1.25, ...reduced(STEPS)];

/** Lures shorter than this, mm, are drawn larger than they are. */
const TINY = [
  { scale: 10, underMm: 12 },
  { scale: 5, underMm: 30 },
  { scale: 2, underMm: 60 },
] as const;

/** True size, so that the lure can be laid on the sheet; only a tiny one enlarged. */
export const trueSizeFirst = (lengthMm: number): readonly number[] => [
  ...TINY.filter(({ underMm }) => lengthMm < underMm).map(({ scale }) => scale),
  ...reduced([1, 2, 2.5, 5]),
];
