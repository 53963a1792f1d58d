/** What a check of a jig finds. */

export type JigFlawCode =
  | 'mesh-open'
  | 'not-one-piece'
  | 'openings'
  | 'not-on-bed'
  | 'off-bed'
  | 'overlaps-blank'
  | 'blank-cannot-move'
  | 'gap-narrow'
  | 'gap-wide'
  | 'load-not-held'
  | 'wall-thin'
  | 'first-layer'
  | 'tips-over'
  | 'guide-missing'
  | 'guide-off-station'
  | 'guide-out-of-square'
  | 'guide-diameter'
  | 'stop-face-out-of-square'
  | 'sleeve-seat'
  | 'collar-setting'
  | 'slot-missing'
  | 'slot-off-place'
  | 'slot-off-angle'
  | 'slot-out-of-square'
  | 'slot-width'
  | 'slot-depth'
  | 'slot-line-missing'
  | 'stop-missing'
  | 'cheeks-apart'
  | 'wing-at-blade'
  | 'wing-short'
  | 'angle-not-held'
  | 'cradle-floor'
  | 'cradle-tight'
  | 'comb-slots'
  | 'comb-too-near'
  | 'peg-missing'
  | 'rim-off-center'
  | 'tick-missing'
  | 'tick-too-deep'
  | 'gauge-off-body'
  | 'gauge-off-reference'
  | 'file-differs';

/** What was measured, and the limit it passed. */
export type JigFlaw = {
  readonly code: JigFlawCode;
  readonly measured: number;
  readonly limit: number;
};

export type JigCheck = {
  readonly flaws: readonly JigFlaw[];
  /** Figures for the record: overlap, thinnest wall, errors of axes and planes. */
  readonly measured: Readonly<Record<string, number>>;
};

type Finding = readonly [wrong: boolean, code: JigFlawCode, measured: number, limit: number];

/** The flaws among findings. */
export const flawsOf = (findings: readonly Finding[]): JigFlaw[] =>
  findings
    .filter(([wrong]) => wrong)
    .map(([, code, measured, limit]) => ({ code, measured, limit }));
