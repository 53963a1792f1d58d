/** What the command line says of paper. */
import type { PaperWish } from '../pattern/paper.js';
import { PAPER_NAMES, PAPER_SIZES, SHEET_RANGE } from '../pattern/paper-schema.js';
import { ArgumentProblem, numberOf, type Range } from './arguments.js';

export type PaperOptions = { readonly paper?: string; readonly printed?: string };

/** @throws ArgumentProblem */
export function paperWish({ paper, printed }: PaperOptions): PaperWish {
  const measured = printed === undefined ? null : pairOf('--printed', printed, PRINTED_RANGE);
  return {
    ...(paper === undefined ? {} : { size: sizeOf(paper) }),
    ...(measured ? { printed: { acrossMm: measured[0], alongMm: measured[1] } } : {}),
  };
}

const PRINTED_RANGE: Range = { least: 1, most: 1000 };
const POSITIVE: Range = { least: 0, most: 1e6 };
const SIDES: Range = { least: SHEET_RANGE.leastMm, most: SHEET_RANGE.mostMm };

function sizeOf(text: string): NonNullable<PaperWish['size']> {
  const named = PAPER_NAMES.find((name) => name.toLowerCase() === text.trim().toLowerCase());
  if (named) return named;
  if (!/x/i.test(text))
    throw new ArgumentProblem(
      `--paper is "${text}": it must be ${PAPER_NAMES.join(', ')}, or two lengths in mm like 210x297.`,
    );
  const sides = pairOf('--paper', text, POSITIVE);
  if (sides.some((side) => side < SIDES.least || side > SIDES.most))
    throw new ArgumentProblem(
      `--paper is "${text}": lengths are in mm, ${SIDES.least} to ${SIDES.most} each.${inInches(sides)} These sizes have a name: ${PAPER_NAMES.join(', ')}.`,
    );
  return sides;
}

/** The name of a size that was given in inches, as a sentence; empty when none is. */
function inInches(sides: readonly [number, number]): string {
  const [short, long] = [...sides].sort((a, b) => a - b).map((side) => side * 25.4);
  const isNear = (mm: number, other: number) => Math.abs(mm - other) < 0.5;
  const name = PAPER_NAMES.find(
    (n) => isNear(PAPER_SIZES[n][0], short) && isNear(PAPER_SIZES[n][1], long),
  );
  return name ? ` In inches it is ${name}: write --paper ${name}.` : '';
}

function pairOf(option: string, text: string, range: Range): readonly [number, number] {
  const parts = text.split(/[x×]/i);
  if (parts.length !== 2)
    throw new ArgumentProblem(
      `${option} is "${text}": give two lengths in mm, across first, like 179.6x240.4.`,
    );
  const [across, along] = parts.map((part) => numberOf(option, part, range) ?? 0);
  return [across, along];
}
