/** Paper as pages are laid out on it: its size, what of it is printed, how much the printer errs. */
import { type Problem, problem } from '../problem.js';
import { PAPER_SIZES, type PaperFile, type PaperName } from './paper-schema.js';

/** Lengths across the sheet and along it as it goes through the printer. */
export type AcrossAlong = { readonly acrossMm: number; readonly alongMm: number };

export type Paper = AcrossAlong & {
  readonly size: PaperName | 'custom';
  readonly marginMm: number;
  readonly overlapMm: number;
  /** Lengths of the two lines of the page that measures the printer. */
  readonly check: AcrossAlong;
  /** What those lines measured; as they should be where nothing was told. */
  readonly printed: AcrossAlong;
};

/** What a command line says of paper; it goes before the file. */
export type PaperWish = {
  readonly size?: PaperName | readonly [acrossMm: number, alongMm: number];
  readonly printed?: AcrossAlong;
};

/** The option of the command line that a problem of paper comes from; null: the file. */
export function optionOf({ code }: Problem, { size, printed }: PaperWish = {}): string | null {
  if (code === 'paper-too-small' && size !== undefined) return '--paper';
  return code === 'printer-correction-large' && printed !== undefined ? '--printed' : null;
}

/** How far a printer's lengths may be off, as a share. More is a page that was fitted or shrunk. */
export const MOST_OFF_RATIO = 0.03;

const ROUNDING_MM = 1e-9; // the limit itself is allowed

/** Paper of a run or a pattern, and what is wrong with what was said of it. */
export function paperOf(
  file: PaperFile | undefined,
  wish: PaperWish = {},
): { readonly paper: Paper; readonly problems: readonly Problem[] } {
  const { marginMm, overlapMm } = file ?? { marginMm: 8, overlapMm: 10 };
  const asked = wish.size ?? file?.sizeMm ?? file?.size ?? 'A4';
  const [acrossMm, alongMm] = typeof asked === 'string' ? PAPER_SIZES[asked] : asked;
  const check = {
    acrossMm: checkMm(acrossMm - 2 * marginMm - BESIDE_MM, 180),
    alongMm: checkMm(alongMm - 2 * marginMm - OVER_MM, 240),
  };
  const printed = wish.printed ?? {
    acrossMm: file?.printedAcrossMm ?? check.acrossMm,
    alongMm: file?.printedAlongMm ?? check.alongMm,
  };
  const size = typeof asked === 'string' ? asked : 'custom';
  const paper = { size, acrossMm, alongMm, marginMm, overlapMm, check, printed } as const;
  const named = wish.size === undefined && file?.sizeMm ? file.size : undefined;
  return {
    paper,
    problems: [
      ...(named ? [problem('paper-size-twice', ['paper', 'sizeMm'], { size: named })] : []),
      ...offProblems(paper, wish.printed !== undefined),
    ],
  };
}

/** Room beside the line across and over and under the line along, with their end marks, mm. */
const [BESIDE_MM, OVER_MM] = [14, 8];

/** As long as on the sizes that have a name, or the most whole centimeters that there is room for. */
const checkMm = (roomMm: number, usualMm: number): number =>
  Math.max(10, Math.min(usualMm, 10 * Math.floor(roomMm / 10)));

function offProblems({ check, printed }: Paper, told: boolean): Problem[] {
  const ways = [
    { key: 'printedAcrossMm', nominalMm: check.acrossMm, printedMm: printed.acrossMm },
    { key: 'printedAlongMm', nominalMm: check.alongMm, printedMm: printed.alongMm },
  ];
  return ways
    .filter(
      ({ printedMm, nominalMm }) =>
        !(Math.abs(printedMm - nominalMm) <= MOST_OFF_RATIO * nominalMm + ROUNDING_MM),
    )
    .map(({ key, nominalMm, printedMm }) =>
      problem('printer-correction-large', ['paper', key], {
        key: told ? `--printed (${key})` : `paper.${key}`,
        printedMm,
        nominalMm,
        offPercent: 100 * (printedMm / nominalMm - 1),
        mostPercent: 100 * MOST_OFF_RATIO,
        leastMm: nominalMm * (1 - MOST_OFF_RATIO),
        mostMm: nominalMm * (1 + MOST_OFF_RATIO),
      }),
    );
}

/** What lengths across and along are multiplied by, so that they come out true on this printer. */
export const correctionOf = ({
  check,
  printed,
}: Pick<Paper, 'check' | 'printed'>): { readonly x: number; readonly y: number } => ({
  x: check.acrossMm / printed.acrossMm,
  y: check.alongMm / printed.alongMm,
});
