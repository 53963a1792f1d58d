/** What the scale should show after every stage, with the band that is right. */
import { plugIn } from '../ballast/workpiece.js';
import type { Item } from '../mass/item.js';
import { gPerMm3 } from '../mass/moments.js';
import { HOLE_DEPTH_SPREAD_MM } from '../mass/spread.js';
import { coatSteps } from '../mass/stages.js';
import type { HeavyCode, LightCode, StageWeight } from './shop.js';
import type { ShopLine } from './work.js';

/** Half a band in standard deviations: of lures that are right, 19 of 20 lie inside. */
export const BAND_SIGMAS = 2;
/** How evenly a body is shaped by hand to its gauges, one standard deviation; common practice, no source. */
const SHAPED_SPREAD_MM = 0.1;
/** Reading a scale in steps of 0.1 g, one standard deviation, as in the tub; common practice, no source. */
const READING_SPREAD_G = 0.05;

type Verdicts = { readonly light: LightCode; readonly heavy: HeavyCode };

const TIMBER: Verdicts = { light: 'lighter-timber', heavy: 'heavier-timber' };

/**
 * Every stage of the lure, by its name and in its order. The band of the mass holds the spread of the
 * board, of holes, metal and coats. The band of the change is of one lure weighed twice: the board
 * counts only by the wood that goes, so that a short plug shows where the whole lure's band hides it.
 */
export function weightsOf(line: ShopLine): StageWeight[] {
  const { stages } = line.floating;
  const steps = stepsOf(line);
  return stages.map((stage, i): StageWeight => {
    const { name, massG, spreadG } = stage;
    const { verdicts, spreads } = steps[i];
    const changeG = i === 0 ? null : massG - stages[i - 1].massG;
    const half = BAND_SIGMAS * Math.hypot(...spreads, Math.SQRT2 * READING_SPREAD_G);
    return {
      stage: name,
      massG,
      spreadG,
      ...bandOf(massG, spreadG),
      changeG,
      changeLowG: changeG === null ? null : changeG - half,
      changeHighG: changeG === null ? null : changeG + half,
      ...verdicts,
    };
  });
}

/** No lure weighs less than nothing. */
export const bandOf = (massG: number, spreadG: number) => ({
  lowG: Math.max(0, massG - BAND_SIGMAS * spreadG),
  highG: massG + BAND_SIGMAS * spreadG,
});

/** What a stage's mass mostly tells of, and what spreads the change to it. */
type Step = { readonly verdicts: Verdicts; readonly spreads: readonly number[] };

function stepsOf({ pattern, blank, body, floating }: ShopLine): Step[] {
  const { stages, timber, lure, piece } = floating;
  const density = gPerMm3(timber.densityKgM3);
  const board = timber.spreadKgM3 / timber.densityKgM3;
  const change = (i: number): number => Math.abs(stages[i].massG - stages[i - 1].massG);
  const spreadsOf = (...kinds: readonly Item['kind'][]): number[] =>
    lure.items.filter((i) => kinds.includes(i.kind)).map((i) => i.spreadG);
  const depths = blank.holes.map(
    (h) => density * (Math.PI / 4) * h.diameterMm ** 2 * HOLE_DEPTH_SPREAD_MM,
  );
  const sanded = blank.holes.filter((h) => h.fillMm === null).map((hole) => plugIn(piece, hole));
  const coats = coatItemsOf(pattern, lure.items);
  return [
    { verdicts: TIMBER, spreads: [] },
    { verdicts: drilledVerdicts(blank.holes), spreads: [board * change(1), ...depths] },
    { verdicts: filledVerdicts(blank.holes), spreads: spreadsOf('poured', 'weight') },
    {
      verdicts: { light: 'rounded-much', heavy: 'rounded-little' },
      spreads: [board * change(3)],
    },
    {
      verdicts: { light: 'sanded-much', heavy: 'sanded-little' },
      spreads: [
        board * change(4),
        density * body.properties.areaMm2 * SHAPED_SPREAD_MM,
        ...sanded.map((plug) => plug.gPerMm * SHAPED_SPREAD_MM),
      ],
    },
    ...coatSteps(pattern.coats).map(
      ({ coat, added }): Step => ({
        verdicts: { light: 'coat-thin', heavy: 'coat-thick' },
        spreads: [(coats[coat] * added) / pattern.coats[coat].count],
      }),
    ),
    {
      verdicts: { light: 'fittings-light', heavy: 'fittings-heavy' },
      spreads: spreadsOf('rig', 'glue'),
    },
  ];
}

type Holes = ShopLine['blank']['holes'];

const drilledVerdicts = (holes: Holes): Verdicts =>
  holes.length === 0 ? TIMBER : { light: 'hole-deep', heavy: 'hole-shallow' };

function filledVerdicts(holes: Holes): Verdicts {
  if (holes.length === 0) return TIMBER;
  return holes.some((h) => h.weight === null)
    ? { light: 'plug-short', heavy: 'plug-long' }
    : { light: 'weight-light', heavy: 'weight-heavy' };
}

/** Spread of each coat, all its applications together: coats come as items in the pattern's order. */
function coatItemsOf({ coats }: ShopLine['pattern'], items: readonly Item[]): number[] {
  const spreads = items.filter((i) => i.kind === 'coat').map((i) => i.spreadG);
  return coats.map((_, i) => spreads[i] ?? 0);
}
