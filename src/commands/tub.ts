/** What the tub says of a lure, and what to drill next time. */

import type { Floating } from '../afloat/floating.js';
import { type DepthFor, depthFor } from '../ballast/depth-for.js';
import { type Workpiece, workpiece } from '../ballast/workpiece.js';
import { offsetAt } from '../body/shape.js';
import { trimmed } from '../formats/number.js';
import { type Explained, explain } from '../tub/explain.js';
import { tubLure } from '../tub/lure.js';
import type { Reading } from '../tub/reading.js';
import { refusalText } from './ballast-words.js';
import { table } from './table.js';

export type Tub = {
  readonly lure: Floating;
  readonly found: Explained;
  /** Depths for the next lure of this timber, poured the same way, to weigh what was planned. */
  readonly next: DepthFor;
};

export function tubOf(lure: Floating, readings: readonly Reading[]): Tub {
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
  const next = depthFor(asFound(lure, found), lure.pattern.ballast, lure.lure.massG);
  return { lure, found, next };
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

const WELL = 1.5; // misfit in units of what can be read: beyond it something else differs

export const tubData = ({ found, next, lure }: Tub) => ({
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
  wellExplained: found.misfit <= WELL && !found.farFetched,
  next,
});

const READ = {
  trimDeg: ['nose up', '°'],
  freeboardNoseMm: ['nose out', ' mm'],
  freeboardTailMm: ['tail out', ' mm'],
  massG: ['on the scale', ' g'],
} as const;

export function tubText({ lure, found, next }: Tub): string {
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
    `What was read is ${found.misfit <= WELL ? 'well' : 'not well'} explained by timber of ${trimmed(found.timberKgM3, 0)} ± ${trimmed(found.timberSpreadKgM3, 0)} kg/m³ (planned ${trimmed(lure.timber.densityKgM3, 0)})${metal}.`,
    table(['read in the tub', 'seen', 'planned', 'so explained'], rows),
    ...(found.misfit > WELL || found.farFetched
      ? ['Something else differs too: look at lip, hooks, coats and what the scale said.']
      : []),
    ...(lure.holes.length > 0 ? [nextText(lure, next)] : []),
  ].join('\n\n');
}

function nextText(lure: Floating, next: DepthFor): string {
  switch (next.kind) {
    case 'depths': {
      const drill = next.holes.map(
        (hole, i) =>
          `${trimmed(hole.depthMm, 1)} mm at station ${trimmed(hole.stationMm, 1)} mm (planned ${trimmed(lure.pattern.ballast[i].depthMm, 1)})`,
      );
      return `Next time, in this timber and poured alike, drill ${drill.join(' and ')}.`;
    }
    case 'refused':
      return `No depth makes the next one weigh what was planned: ${refusalText(next.refusal)}`;
    case 'nothing-to-change':
      return 'No hole is poured full, so no depth changes its weight: choose another ready-made weight.';
  }
}
