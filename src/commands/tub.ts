/** What the tub says of a lure, and what to drill next time. */

import { type Floating, reballasted } from '../afloat/floating.js';
import { type DepthFor, depthFor } from '../ballast/depth-for.js';
import { type Workpiece, workpiece } from '../ballast/workpiece.js';
import { offsetAt } from '../body/shape.js';
import type { Attitude } from '../float/attitude.js';
import { trimmed } from '../formats/number.js';
import { type Explained, explain } from '../tub/explain.js';
import { tubLure } from '../tub/lure.js';
import type { Reading } from '../tub/reading.js';
import { ArgumentProblem } from './arguments.js';
import { depthText, leanText, refusalText } from './ballast-words.js';
import { lying } from './float-table.js';
import { table } from './table.js';

export type Tub = {
  readonly lure: Floating;
  readonly found: Explained;
  /** Depths for the next lure of this timber, poured the same way, to weigh what was planned; null when nothing is well explained. */
  readonly next: DepthFor | null;
  /** How that one then lies. */
  readonly after: Attitude | null;
};

/** @throws ArgumentProblem for readings this lure cannot give */
function assertReadable(lure: Floating, readings: readonly Reading[]): void {
  for (const { hungStationMm, ...reading } of readings) {
    const inWater = Object.keys(reading).some((key) => key !== 'massG' && key !== 'hungG');
    if (inWater && lure.attitudes[0].dryRatio === 0)
      throw new ArgumentProblem(
        '--seen: this lure goes under, so that only massG can be read; weigh it.',
      );
    if (hungStationMm !== undefined && hungStationMm > lure.pattern.lengthMm)
      throw new ArgumentProblem(
        `--seen: hungStationMm is ${hungStationMm}; the lure is ${trimmed(lure.pattern.lengthMm, 1)} mm long.`,
      );
  }
}

export function tubOf(lure: Floating, readings: readonly Reading[]): Tub {
  assertReadable(lure, readings);
  const { shape } = lure.piece.design.body;
  const found = explain(
    tubLure({
      items: lure.lure.items,
      timber: lure.timber,
      solid: lure.solid,
      load: lure.load,
      rest: lure.attitudes[0],
      bellyMm: (stationMm) => -offsetAt(shape.bellySquared, stationMm),
      leadKgM3: lure.piece.materials.metals.lead.densityKgM3,
    }),
    readings,
  );
  if (!found.well) return { lure, found, next: null, after: null };
  const piece = asFound(lure, found);
  const next = depthFor(piece, lure.pattern.ballast, lure.lure.massG);
  const timber = { ...lure.timber, densityKgM3: found.timberKgM3 };
  const again = next.kind === 'depths' && reballasted({ ...lure, piece, timber }, next.holes);
  return { lure, found, next, after: again ? again.attitudes[0] : null };
}

/** The lure's workpiece with the timber that was found, and metal as light in its holes. */
function asFound({ piece }: Floating, { timberKgM3, metalShare }: Explained): Workpiece {
  const metals = Object.fromEntries(
    Object.entries(piece.materials.metals).map(([name, metal]) => [
      name,
      {
        ...metal,
        densityKgM3: metal.densityKgM3 * metalShare,
        liquidKgM3: metal.liquidKgM3 === null ? null : metal.liquidKgM3 * metalShare,
      },
    ]),
  );
  return workpiece(
    piece.design,
    {
      materials: { ...piece.materials, metals },
      timber: { ...piece.timber, densityKgM3: timberKgM3 },
    },
    { ...piece.afloat, displacing: piece.bare.displacing },
  );
}

export const tubData = ({ found, next, after, lure }: Tub) => ({
  timberDensityKgM3: found.timberKgM3,
  timberSpreadKgM3: found.timberSpreadKgM3,
  metalShare: found.metalShare,
  metalShareSpread: found.metalSpread,
  holes: lure.holes.map(({ stationMm, plugMassG }) => ({
    stationMm,
    plugMassG: plugMassG * found.metalShare,
  })),
  readings: found.readings,
  misfit: found.misfit,
  wellExplained: found.well,
  next: next && { ...next, attitude: after },
});

const READ = {
  trimDeg: ['nose up', '°'],
  freeboardNoseMm: ['nose out', ' mm'],
  freeboardTailMm: ['tail out', ' mm'],
  massG: ['on the scale', ' g'],
} as const;

export function tubText({ lure, found, next, after }: Tub): string {
  const number = (value: number | null, unit: string) =>
    value === null ? 'goes under' : `${trimmed(value, 1)}${unit}`;
  const rows = found.readings.map(({ what, reading, seen, planned, explained }) => {
    const [name, unit] = READ[what];
    return [
      `${reading}: ${name}`,
      number(seen, unit),
      number(planned, unit),
      number(explained, unit),
    ];
  });
  const metal =
    lure.holes.length === 0
      ? ''
      : ` and metal that weighs ${trimmed(100 * found.metalShare, 0)} ± ${trimmed(100 * found.metalSpread, 0)} % of the plan`;
  return [
    `What was read is ${found.well ? 'well' : 'not well'} explained by timber of ${trimmed(found.timberKgM3, 0)} ± ${trimmed(found.timberSpreadKgM3, 0)} kg/m³ (planned ${trimmed(lure.timber.densityKgM3, 0)})${metal}.`,
    table(['read in the tub', 'seen', 'planned', 'so explained'], rows),
    ...(found.well
      ? []
      : [
          'Something else differs: look at lip, hooks and coats, at what was read, and read more (weight and trim together tell most). No depth is advised on this.',
        ]),
    ...(next && lure.holes.length > 0 ? [nextText(lure, next, after)] : []),
  ].join('\n\n');
}

function nextText(lure: Floating, next: DepthFor, after: Attitude | null): string {
  switch (next.kind) {
    case 'depths': {
      const drill = next.holes.map(
        (hole, i) =>
          `${depthText(hole)} at station ${trimmed(hole.stationMm, 1)} mm${leanText(hole)} (planned ${trimmed(lure.pattern.ballast[i].depthMm, 1)})`,
      );
      const lies = after
        ? ` It then lies: ${lying(after)}; planned: ${lying(lure.attitudes[0])}.`
        : '';
      return `Next time, in this timber and poured alike, drill ${drill.join(' and ')}.${lies}`;
    }
    case 'refused':
      return `No depth makes the next one weigh what was planned: ${refusalText(next.refusal)}.`;
    case 'nothing-to-change':
      return 'No hole is poured full, so no depth changes its weight: choose another ready-made weight.';
  }
}
