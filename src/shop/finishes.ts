/** Sealer and coats of the run: what each application takes, and how it is mixed. */
import { coatMaterial, coatRowOf } from '../mass/coats.js';
import { gPerMm3 } from '../mass/moments.js';
import { rowOf } from '../mass/row.js';
import type { CoatMaterial } from '../tables/materials.js';
import { type Application, applicationsOf } from './applications.js';
import { measured, mixFor, partsOf } from './mixing.js';
import { potEnds } from './pots.js';
import type { Finish, LureCount, MixParts, Pot } from './shop.js';
import type { ShopLine, ShopWork } from './work.js';

/** What the finishes need of the work: they can be looked at before anything is nested. */
export type FinishWork = Pick<ShopWork, 'wish' | 'materials'> & {
  readonly lines: readonly Pick<ShopLine, 'pattern' | 'count' | 'body'>[];
};

/** An application with its row and what it takes, before it is shared out among pots. */
export type PlannedFinish = Omit<Finish, 'pots' | keyof ReturnType<typeof measured>> & {
  readonly material: CoatMaterial;
};

export function plannedFinishes(work: FinishWork): PlannedFinish[] {
  return applicationsOf(work.lines.map((l) => l.pattern.coats)).map((a) => planned(work, a));
}

function planned({ lines, materials }: FinishWork, application: Application): PlannedFinish {
  const row = coatRowOf(application.name, materials);
  const material = rowOf(materials.coats, row);
  const parts = material.mix ? partsOf(material.mix) : null;
  const perLure = application.on.map(({ line, coat }) => {
    const { pattern, count, body } = lines[line];
    const { areaMm2 } = body.properties;
    const density = gPerMm3(coatMaterial(coat, materials).densityKgM3);
    const filmG = areaMm2 * coat.thicknessMm * density;
    const { thicknessMm } = coat;
    return {
      pattern: pattern.name,
      count,
      areaMm2,
      thicknessMm,
      filmG,
      mixG: mixFor(filmG, material),
    };
  });
  return {
    name: application.name,
    coat: application.number,
    of: application.of,
    row,
    material,
    lures: perLure.reduce((sum, l) => sum + l.count, 0),
    perLure,
    filmG: perLure.reduce((sum, l) => sum + l.count * l.filmG, 0),
    solidsRatio: material.solidsRatio,
    wasteRatio: material.wasteRatio,
    parts,
    perLurePartG: parts && perLure.map((l) => partsFor(l, parts)),
    potLifeMin: parts && material.potLifeMin,
    largestPotG: parts && material.largestPotG,
    minutesPerLure: material.minutesPerLure,
    dryHours: material.dryHours,
    cureHours: material.cureHours,
  };
}

function partsFor({ pattern, mixG }: Finish['perLure'][number], parts: MixParts) {
  const { partAG, partBG } = measured(mixG, parts, Number.NaN);
  return { pattern, partAG: partAG ?? Number.NaN, partBG: partBG ?? Number.NaN };
}

/** Every lure must fit in a pot: `potProblems` tells of that first. */
export const finishesOf = (work: FinishWork): Finish[] =>
  plannedFinishes(work).map(({ material, ...finish }) => {
    const { perLure, parts } = finish;
    const totalG = perLure.reduce((sum, l) => sum + l.count * l.mixG, 0);
    return {
      ...finish,
      ...measured(totalG, parts, material.liquidKgM3),
      pots: parts ? potsOf({ perLure, parts, material }, work) : [],
    };
  });

/** What a pot may be in use: it sets, and does not wait over night. */
const potMinutes = (
  { potLifeMin }: Pick<CoatMaterial, 'potLifeMin'>,
  { wish, materials }: Pick<ShopWork, 'wish' | 'materials'>,
): number => Math.min(potLifeMin, 60 * wish.benchHoursPerDay - materials.steps.mix.minutes);

const SAME = 1e-9; // of a lure: 30 min at 1.5 min are 20 lures, whatever rounding says

function potsOf(
  { perLure, parts, material }: Pick<PlannedFinish, 'perLure' | 'material'> & { parts: MixParts },
  work: Pick<ShopWork, 'wish' | 'materials'>,
): Pot[] {
  const { minutesPerLure, largestPotG, liquidKgM3 } = material;
  const mostLures = Math.floor(potMinutes(material, work) / minutesPerLure + SAME);
  const ends = potEnds(perLure, { largestPotG, mostLures });
  return ends.map((end, i): Pot => {
    const lures = between(perLure, i === 0 ? 0 : ends[i - 1], end);
    const luresTotal = lures.reduce((sum, l) => sum + l.count, 0);
    const totalG = lures.reduce((sum, l) => sum + l.count * l.mixG, 0);
    return {
      number: i + 1,
      lures: lures.map(({ pattern, count }): LureCount => ({ pattern, count })),
      luresTotal,
      ...measured(totalG, parts, liquidKgM3),
      minutes: luresTotal * minutesPerLure,
    };
  });
}

/** The lures of a row from one place to another, by pattern. */
function between<L extends LureCount>(row: readonly L[], from: number, to: number): L[] {
  let before = 0;
  return row.flatMap((batch) => {
    const [first, last] = [Math.max(from, before), Math.min(to, before + batch.count)];
    before += batch.count;
    return last > first ? [{ ...batch, count: last - first }] : [];
  });
}
