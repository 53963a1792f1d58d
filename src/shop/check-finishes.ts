/** What every coat and every pot of it must hold. */
import { differs } from './differs.js';
import type { Finish, Measured, Pot, Shop } from './shop.js';
import type { ShopLine } from './work.js';

export function checkFinishes(
  { finishes, patterns }: Shop,
  lines: readonly Pick<ShopLine, 'pattern' | 'count'>[],
): string[] {
  const names = patterns.map((p) => p.name);
  return [
    ...finishes.flatMap((finish) =>
      [
        ...checkAmounts(finish),
        ...(finish.parts ? checkPots(finish, finish.parts, names) : []),
      ].map((c) => `${finish.name} ${finish.coat}: ${c}`),
    ),
    ...checkFilms(patterns, finishes),
    ...lines.flatMap(({ pattern }) => checkCounts(pattern, finishes)),
  ];
}

/** Forward from the liquid to the film, where it was made the other way. */
function checkAmounts(finish: Finish): string[] {
  const { perLure, solidsRatio, wasteRatio, lures } = finish;
  const used = perLure.reduce((sum, l) => sum + l.count * l.mixG, 0);
  return [
    ...(perLure.every((l) => !differs((l.mixG / (1 + wasteRatio)) * solidsRatio, l.filmG))
      ? []
      : ['a lure’s liquid does not leave its film']),
    ...(differs(used, finish.totalG) ? [`${finish.totalG} g for lures that take ${used} g`] : []),
    ...(perLure.reduce((sum, l) => sum + l.count, 0) === lures ? [] : ['lures miscounted']),
  ];
}

function checkPots(
  finish: Finish,
  parts: NonNullable<Finish['parts']>,
  names: readonly string[],
): string[] {
  const { pots, perLure, largestPotG, potLifeMin, minutesPerLure } = finish;
  const inPots = (of: (pot: Pot) => number): number => pots.reduce((sum, p) => sum + of(p), 0);
  const order = pots.flatMap((pot) => pot.lures.map((l) => names.indexOf(l.pattern)));
  const amounts = ['totalG', 'partAG', 'partBG', 'partAMl', 'partBMl'] as const;
  return [
    ...amounts.flatMap((key) =>
      differs(
        inPots((p) => p[key] ?? Number.NaN),
        finish[key] ?? Number.NaN,
      )
        ? [`the pots’ ${key} is not that of the coat`]
        : [],
    ),
    ...[finish, ...pots].flatMap((m) => checkParts(m, parts)),
    ...perLure.flatMap(({ pattern, count }) =>
      inPots((p) => p.lures.reduce((s, l) => s + (l.pattern === pattern ? l.count : 0), 0)) ===
      count
        ? []
        : [`${count} ${pattern} are not each in one pot`],
    ),
    ...(order.every((n, i) => n >= 0 && (i === 0 || n >= order[i - 1]))
      ? []
      : ['pots are not in the order of the run']),
    ...pots.flatMap((p) => [
      ...(p.totalG <= (largestPotG ?? 0) * (1 + 1e-6) ? [] : [`pot ${p.number} is too large`]),
      ...(p.minutes <= (potLifeMin ?? 0) + 1e-6 ? [] : [`pot ${p.number} sets first`]),
      ...(differs(p.minutes, p.luresTotal * minutesPerLure) ? [`pot ${p.number}: minutes`] : []),
      ...(p.luresTotal > 0 ? [] : [`pot ${p.number} is for no lure`]),
    ]),
  ];
}

/** Both ratios as they stand on the tin, and the densities between them. */
function checkParts(m: Measured, parts: NonNullable<Finish['parts']>): string[] {
  const { partAG, partBG, partAMl, partBMl, totalG } = m;
  if (partAG === null || partBG === null || partAMl === null || partBMl === null)
    return ['a two-part coat without its parts'];
  return [
    ...(differs(partAG + partBG, totalG) ? [`parts of ${totalG} g do not add up`] : []),
    ...(differs(partBG * parts.aByMass, partAG * parts.bByMass) ? ['ratio by mass'] : []),
    ...(differs(partBMl * parts.aByVolume, partAMl * parts.bByVolume) ? ['ratio by volume'] : []),
    ...(differs(partAMl * parts.densityAKgM3, 1000 * partAG) ? ['density of part A'] : []),
  ];
}

/** What a lure gains on the scale between shaping and its last coat is all its films together. */
function checkFilms(patterns: Shop['patterns'], finishes: readonly Finish[]): string[] {
  return patterns.flatMap(({ name, weights }) => {
    const shaped = weights.find((w) => w.stage === 'shaped')?.massG ?? Number.NaN;
    const coated = weights[weights.length - 2].massG;
    const films = finishes
      .flatMap((f) => f.perLure)
      .reduce((sum, l) => sum + (l.pattern === name ? l.filmG : 0), 0);
    return Math.abs(coated - shaped - films) <= 1e-6 * coated
      ? []
      : [`${name}: films of ${films} g, the scale gains ${coated - shaped} g`];
  });
}

/** Every coat of a pattern goes on once. */
function checkCounts({ name, coats }: ShopLine['pattern'], finishes: readonly Finish[]): string[] {
  const wanted = coats.reduce((sum, c) => sum + c.count, 0);
  const given = finishes.filter((f) => f.perLure.some((l) => l.pattern === name)).length;
  return given === wanted ? [] : [`${name}: ${given} coats of ${wanted}`];
}
