/** Our nest against bounding boxes laid by a packer of rectangles, same margins and gaps: ratios. */

import { seededDraws } from '../geometry/random.js';
import { ringArea, ringBox } from '../geometry/ring.js';
import type { Block, FaceSize, NestPart, NestRules } from '../nest/nest.js';
import { flawsOf } from '../nest/stack.js';
import { boxedFace, boxOfPart, facesForBoxes } from './boxes.js';
import { drawnOutline } from './drawn-outline.js';
import { latticeLimitRatio, nestOf, packedCounts } from './nest-door.js';

/** What a run orders, with the blocks it is sawn from, timber by timber. */
export type RunOrder = {
  readonly timber: string;
  readonly parts: readonly NestPart[];
  readonly blocks: readonly Block[];
};

export type LargeRow = {
  readonly outline: string;
  /** Length × width, mm. */
  readonly face: string;
  readonly ours: number;
  readonly boxes: number;
  readonly ratio: number;
  /** Lattice limit over box density on an endless plane, the gap grown into both. */
  readonly possible: number;
  readonly 'ratio / possible': number;
  readonly 'share of possible gain': number;
};

const LARGE: FaceSize = { lengthMm: 2000, widthMm: 600, marginMm: 4, ...flawsOf([]) };

/**
 * One outline, as many as find room on a large face, and on the next smaller one that whole boxes
 * fill to the margins: there boxes lose nothing at the edges, so no ratio owes anything to rounding.
 */
export function largeRows(part: NestPart, rules: NestRules): readonly LargeRow[] {
  const { gapMm } = rules;
  const [left, bottom, right, top] = ringBox(part.outline);
  const whole = (size: number, own: number): number => {
    const clear = size - 2 * LARGE.marginMm;
    return Math.floor((clear + gapMm) / (own + gapMm)) * (own + gapMm) - gapMm + 2 * LARGE.marginMm;
  };
  const exact: FaceSize = {
    ...LARGE,
    lengthMm: whole(LARGE.lengthMm, right - left),
    widthMm: whole(LARGE.widthMm, top - bottom),
  };
  const boxRatio = ringArea(part.outline) / ((right - left + gapMm) * (top - bottom + gapMm));
  const possible = latticeLimitRatio(part, gapMm) / boxRatio;
  return [LARGE, exact].map((face) => largeRow(part, face, rules, possible));
}

function largeRow(part: NestPart, face: FaceSize, rules: NestRules, possible: number): LargeRow {
  const most = Math.ceil((face.lengthMm * face.widthMm) / ringArea(part.outline));
  const [ours] = packedCounts([{ ...part, orderedCount: most }], face, rules);
  const boxes = boxedFace(copies(part, 0, most), face, rules.gapMm).count;
  const ratio = ours / boxes;
  return {
    outline: part.id,
    face: `${face.lengthMm.toFixed(0)} × ${face.widthMm.toFixed(0)}`,
    ours,
    boxes,
    ratio,
    possible,
    'ratio / possible': ratio / possible,
    'share of possible gain': (ratio - 1) / (possible - 1),
  };
}

const copies = (part: NestPart, index: number, count: number) =>
  Array.from({ length: count }, () => boxOfPart(part, index));

export type MixedRow = {
  readonly order: string;
  readonly blanks: number;
  readonly 'our timber, dm³': number;
  readonly 'boxes’ timber, dm³': number;
  /** Blanks per timber, ours over the boxes’. */
  readonly ratio: number;
};

/** An order `times` over, on as many blocks of the run's sizes as it needs, clear of knots. */
export function mixedRow(run: readonly RunOrder[], times: number, rules: NestRules): MixedRow {
  const timber = run.map((order) => timberFor(order, times, rules));
  const sum = (of: (t: Timber) => number): number => timber.reduce((s, t) => s + of(t), 0);
  const [ours, boxes] = [sum((t) => t.oursMm3), sum((t) => t.boxesMm3)];
  return {
    order: `${times} times the run`,
    blanks: sum((t) => t.blanks),
    'our timber, dm³': ours / 1e6,
    'boxes’ timber, dm³': boxes / 1e6,
    ratio: boxes / ours,
  };
}

type Timber = { readonly blanks: number; readonly oursMm3: number; readonly boxesMm3: number };

function timberFor({ parts, blocks }: RunOrder, times: number, rules: NestRules): Timber {
  const wanted = parts.map((p) => ({ ...p, orderedCount: p.orderedCount * times }));
  const blanks = wanted.reduce((sum, p) => sum + p.orderedCount, 0);
  const sizes = blocks
    .filter((b, i) => blocks.findIndex((a) => sizeOf(a) === sizeOf(b)) === i)
    .map((b) => ({ ...b, ...flawsOf([]), count: blanks }));
  const volumeMm3 = (b: Block): number => b.lengthMm * b.widthMm * b.thicknessMm;
  const nest = nestOf(wanted, sizes, rules);
  if (Object.keys(nest.missing).length > 0)
    throw new Error('the run’s blocks do not hold its order');
  const oursMm3 = sizes.reduce((sum, b) => sum + nest.blocksUsed[b.name] * volumeMm3(b), 0);
  // Boxes: each thickness on the one size that takes least timber; a face stands for its layers.
  const thicknesses = [...new Set(wanted.map((p) => p.thicknessMm))];
  const boxesMm3 = thicknesses.reduce((sum, thicknessMm) => {
    const among = wanted.filter((p) => p.thicknessMm === thicknessMm);
    const boxes = among.flatMap((p, i) => copies(p, i, Math.ceil(p.orderedCount / rules.layers)));
    const fitting = sizes.filter((b) => b.thicknessMm === thicknessMm);
    const needs = fitting.map(
      (b) => facesForBoxes(boxes, b, rules.gapMm) * rules.layers * volumeMm3(b),
    );
    return sum + Math.min(...needs);
  }, 0);
  return { blanks, oursMm3, boxesMm3 };
}

const sizeOf = (b: Block): string => [b.lengthMm, b.widthMm, b.thicknessMm, b.marginMm].join(' ');

export type SmallRow = {
  readonly faces: string;
  readonly fewer: number;
  readonly equal: number;
  readonly more: number;
  readonly 'least ratio': number;
  readonly 'mean ratio': number;
};

const SMALL_FACES = 100;
const SMALL_SEED = 71;
const OUTLINES = { least: 2, most: 12 };

/** Small blocks drawn by chance that hold 2 to 12 outlines of one or two kinds; ratios of their area. */
export function smallRow(kinds: 1 | 2, rules: NestRules): SmallRow {
  const draw = seededDraws(SMALL_SEED + kinds);
  const ratios: number[] = [];
  while (ratios.length < SMALL_FACES) {
    const parts = Array.from(
      { length: kinds },
      (_, i): NestPart => ({
        id: `p${i}`,
        outline: drawnOutline(draw, [50, 160]),
        thicknessMm: 20,
        orderedCount: OUTLINES.most + 1,
      }),
    );
    const face = {
      lengthMm: 120 + 300 * draw(),
      widthMm: 40 + 80 * draw(),
      marginMm: 6 * draw(),
      ...flawsOf([]),
    };
    const gapMm = 0.3 + 5.7 * draw();
    const counts = packedCounts(parts, face, { ...rules, gapMm });
    const boxes = boxedFace(
      parts.flatMap((p, i) => copies(p, i, p.orderedCount)),
      face,
      gapMm,
    );
    const count = Math.max(
      counts.reduce((sum, n) => sum + n, 0),
      boxes.count,
    );
    if (count < OUTLINES.least || count > OUTLINES.most) continue;
    const areaMm2 = counts.reduce((sum, n, i) => sum + n * ringArea(parts[i].outline), 0);
    ratios.push(areaMm2 / boxes.areaMm2);
  }
  const share = (is: (ratio: number) => boolean): number => ratios.filter(is).length;
  return {
    faces: `${SMALL_FACES}, ${kinds === 1 ? 'one outline' : 'two outlines'}`,
    fewer: share((r) => r < 1 - SAME),
    equal: share((r) => Math.abs(r - 1) <= SAME),
    more: share((r) => r > 1 + SAME),
    'least ratio': Math.min(...ratios),
    'mean ratio': ratios.reduce((sum, r) => sum + r, 0) / SMALL_FACES,
  };
}

const SAME = 1e-9;
