/** The plan of a run's nest as tables and as data. */
import { trimmed } from '../formats/number.js';
import type { Job } from '../job.js';
import { faceLimitRatio } from '../nest/limit.js';
import type { Nest } from '../nest/nest.js';
import { nestTotals } from '../nest/totals.js';
import { blanksOf, FACE_COLUMNS, faceCells, offcutWords, timberWords } from './nest-words.js';
import { soMany } from './so-many.js';
import { table } from './table.js';

const percent = (ratio: number): string => `${trimmed(100 * ratio, 1)} %`;

/** @param shortestMm length of the shortest blank ordered */
export function nestText({ name }: Job, nest: Nest, shortestMm: number): string {
  const patterns = table(
    ['pattern', 'ordered', 'made', 'limit'],
    Object.entries(nest.made).map(([part, made]) => [
      part,
      String(nest.ordered[part]),
      String(made),
      percent(nest.limitRatios[part]),
    ]),
  );
  const faces = table(
    [...FACE_COLUMNS, 'used', 'limit', 'of the limit'],
    nest.faces.map((f) => {
      const limit = faceLimitRatio(f, nest.limitRatios);
      return [...faceCells(f), percent(f.usedRatio), percent(limit), percent(f.usedRatio / limit)];
    }),
  );
  const blanks = Object.values(nest.made).reduce((sum, n) => sum + n, 0);
  return [
    `${name}: ${soMany(blanks, 'blank')} in ${soMany(nest.stacks, 'stack')} with ${soMany(nest.faces.length, 'layout')} to trace`,
    patterns,
    faces,
    'Limit: what copies in their densest double lattice would take of endless wood, the gap between them; edges and flaws keep a face below it.',
    timberWords(nest),
    offcutWords(nest, shortestMm),
    'Nothing was written: blankwright make draws the faces.',
    '',
  ].join('\n\n');
}

export const nestData = (nest: Nest) => ({
  patterns: Object.entries(nest.made).map(([name, made]) => ({
    name,
    ordered: nest.ordered[name],
    made,
    latticeLimitRatio: nest.limitRatios[name],
  })),
  faces: nest.faces.map((face) => {
    const latticeLimitRatio = faceLimitRatio(face, nest.limitRatios);
    const { id, lengthMm, widthMm, thicknessMm, marginMm, gapMm } = face;
    return {
      ...{ id, lengthMm, widthMm, thicknessMm, marginMm, gapMm },
      layers: face.layers,
      copies: face.copies,
      stacks: face.stacks,
      blanks: blanksOf(face),
      usedRatio: face.usedRatio,
      latticeLimitRatio,
      offcut: face.offcut,
      placements: face.placements.map(({ part, xMm, yMm, turnDeg }) => ({
        pattern: part,
        ...{ xMm, yMm, turnDeg },
      })),
    };
  }),
  ...nestTotals(nest),
});
