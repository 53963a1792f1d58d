/** What the shop's values must hold, by means that making them does not use. */
import { immerse } from '../float/immerse.js';
import { isUnder } from '../float/rest.js';
import { checkFinishes } from './check-finishes.js';
import { checkTimeline } from './check-timeline.js';
import { differs } from './differs.js';
import type { Shop, ShopPattern } from './shop.js';
import type { ShopLine, ShopWork } from './work.js';

export const checkShop = (shop: Shop, work: ShopWork): string[] => [
  ...shop.patterns.flatMap((p, i) =>
    [...checkPattern(p, work.lines[i]), ...checkTub(p, work.lines[i])].map(
      (c) => `${p.name}: ${c}`,
    ),
  ),
  ...checkTotals(shop),
  ...checkTimber(shop, work),
  ...checkFinishes(shop, work.lines),
  ...checkTimeline(shop, work.materials.steps),
];

function checkPattern(p: ShopPattern, { floating, blank }: ShopLine): string[] {
  const told = p.weights.map((w) => w.stage).join();
  const known = floating.stages.map((s) => s.name).join();
  const poured = p.weights[2];
  const filledG = p.ballast.reduce((sum, b) => sum + b.filledG, 0);
  // Where glue closes no hole, the scale shows the metal alone.
  const metalOnly = blank.holes.every((h) => h.weight === null && h.fillMm === null);
  return [
    ...(told === known ? [] : [`weights of ${told}, stages ${known}`]),
    ...p.weights.flatMap((w) => [
      ...(w.lowG <= w.massG && w.massG <= w.highG ? [] : [`${w.stage}: mass outside its band`]),
      ...(w.changeG === null ||
      ((w.changeLowG ?? Infinity) < w.changeG && w.changeG < (w.changeHighG ?? 0))
        ? []
        : [`${w.stage}: change outside its band`]),
    ]),
    ...(p.ballast.every((b) => b.filledG >= b.afterShapingG * (1 - 1e-9))
      ? []
      : ['more metal after shaping than was filled in']),
    ...(metalOnly && differs(poured.changeG ?? Number.NaN, filledG)
      ? [`${filledG} g of metal filled in, the stage gains ${poured.changeG} g`]
      : []),
    ...(p.sawnCount >= p.count ? [] : [`${p.sawnCount} blanks sawn for ${p.count}`]),
    ...(p.drilling.filter((d) => d.what === 'ballast').length === blank.holes.length
      ? []
      : ['a ballast hole is not drilled']),
    ...p.drilling.flatMap((d) =>
      d.collarMm === null || d.depthMm === null || d.collarMm > d.depthMm
        ? []
        : [`${d.what} ${d.number}: collar ${d.collarMm} mm for a depth of ${d.depthMm} mm`],
    ),
  ];
}

/**
 * A weight that lowers nose and tail alike turns nothing: it weighs the water of the waterplane over
 * that height, whichever way its rates were found.
 */
function checkTub({ tub }: ShopPattern, { floating }: ShopLine): string[] {
  const { solid, load, attitudes } = floating;
  const [both] = tub.trial;
  const { upInBody, planeOffsetMm } = attitudes[0];
  // On a lure that lies heeled such a weight changes the heel, too.
  const sinks = both.massG !== null && Math.abs(upInBody[1]) < 1e-9 && !isUnder(solid, load);
  const layerG = sinks
    ? immerse(solid, upInBody, planeOffsetMm).areaMm2 * load.waterDensityKgM3 * 1e-6
    : 0;
  return [
    ...(tub.lowG <= tub.massG && tub.massG <= tub.highG ? [] : ['tub: mass outside its band']),
    ...(sinks && differs(both.massG ?? 0, layerG, 1e-6)
      ? [`tub: ${both.massG} g for 1 mm, the waterplane carries ${layerG} g`]
      : []),
    ...(tub.trial.every((t) => (t.massG === null) === (t.why !== null))
      ? []
      : ['tub: no trial weight, and no reason']),
  ];
}

function checkTotals({ patterns, melt, weightsToBuy, hardware }: Shop): string[] {
  const holes = patterns.flatMap((p) => p.ballast.map((b) => ({ ...b, count: p.count })));
  const poured = holes.filter((h) => h.pour !== null);
  const glued = holes.filter((h) => h.weight !== null);
  const sum = <T>(list: readonly T[], of: (item: T) => number) =>
    list.reduce((s, item) => s + of(item), 0);
  const grams = sum(poured, (h) => h.count * h.filledG);
  const pieces = sum(patterns, (p) => p.count * sum(p.hardware, (h) => h.perLure));
  return [
    ...(differs(
      sum(melt, (m) => m.netG),
      grams,
    )
      ? [`melt: ${grams} g go into the holes`]
      : []),
    ...melt.flatMap((m) =>
      m.totalG >= m.netG && !differs(m.totalG - m.netG, m.netG * m.allowanceRatio)
        ? []
        : [`melt: ${m.totalG} g of ${m.metal} for ${m.netG} g`],
    ),
    ...(sum(melt, (m) => m.holes) === sum(poured, (h) => h.count)
      ? []
      : ['melt: holes poured are not holes counted']),
    ...(sum(weightsToBuy, (w) => w.count) === sum(glued, (h) => h.count)
      ? []
      : ['weights to buy are not holes with one']),
    ...(sum(hardware, (h) => h.count) === pieces ? [] : [`hardware: not ${pieces} pieces`]),
  ];
}

/** By block and by face: both ways all blocks of all stacks. */
function checkTimber({ timber, tape }: Shop, { nest }: ShopWork): string[] {
  const faces = nest?.faces ?? [];
  const blocks = faces.reduce((sum, f) => sum + f.layers * f.copies, 0);
  const got = timber.reduce((sum, t) => sum + t.count, 0);
  const stacks = faces.reduce((sum, f) => sum + f.copies, 0);
  return [
    ...(got === blocks ? [] : [`timber: ${got} blocks for stacks of ${blocks}`]),
    ...((tape?.joints ?? 0) === blocks - stacks
      ? []
      : ['tape: not one joint a block but the first']),
  ];
}
