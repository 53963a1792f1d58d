/** Two-part coats that can not be mixed and put on as the tables or a run say. */
import { type KeyPath, type Problem, problem } from '../problem.js';
import { type FinishWork, type PlannedFinish, plannedFinishes } from './finishes.js';

/**
 * One problem a row and a reason, told where the run gives the row its figures; a single pattern has
 * only its coats to change.
 */
export function potProblems(work: FinishWork, kind: 'run' | 'pattern'): Problem[] {
  const found = plannedFinishes(work)
    .filter((f) => f.parts !== null)
    .flatMap((f) => unfit(f, work, kind));
  return found.filter(
    (p, i) => found.findIndex((q) => q.code === p.code && q.facts.row === p.facts.row) === i,
  );
}

function unfit(finish: PlannedFinish, work: FinishWork, kind: 'run' | 'pattern'): Problem[] {
  const { name: coat, row, material } = finish;
  const { minutesPerLure, potLifeMin, largestPotG } = material;
  const at = (key: string): KeyPath =>
    kind === 'run' ? ['materials', 'coats', row, key] : ['coats'];
  const minutes = work.materials.steps.mix.minutes + minutesPerLure;
  const limitMin = 60 * work.wish.benchHoursPerDay;
  const heaviest = finish.perLure.reduce((a, b) => (b.mixG > a.mixG ? b : a));
  return [
    ...(minutesPerLure > potLifeMin
      ? [problem('pot-life-short', at('potLifeMin'), { coat, row, minutesPerLure, potLifeMin })]
      : []),
    ...(heaviest.mixG > largestPotG
      ? [
          problem('pot-too-small', at('largestPotG'), {
            coat,
            row,
            name: heaviest.pattern,
            mixG: heaviest.mixG,
            largestPotG,
          }),
        ]
      : []),
    ...(minutes > limitMin
      ? [
          problem('bench-day-short', kind === 'run' ? ['shop', 'benchHoursPerDay'] : ['coats'], {
            coat,
            row,
            minutes,
            limitMin,
          }),
        ]
      : []),
  ];
}
