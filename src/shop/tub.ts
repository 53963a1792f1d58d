/** What the sealed and rigged lure should show in the tub, and what it says when it does not. */

import { isUnder } from '../float/rest.js';
import { waterG } from '../float/water.js';
import { eyePlaces, loopCenter, loopOf } from '../mass/eyes.js';
import { rowOf } from '../mass/row.js';
import { lieOf, type Pulled, perGramAt, pulled } from './pull.js';
import { saysOf } from './says.js';
import type { TubTest } from './shop.js';
import { trialsOf } from './trial.js';
import { lieBandOf } from './tub-band.js';
import { bandOf } from './weights.js';
import type { ShopLine } from './work.js';

export function tubTestOf({ floating: f, body }: Pick<ShopLine, 'floating' | 'body'>): TubTest {
  const { water, load, lure, solid, piece } = f;
  const { densityKgM3: waterDensityKgM3, temperatureC, salinityPsu } = water;
  const { materials } = piece;
  const pull = pulled(f);
  const under = isUnder(solid, load);
  return {
    waterDensityKgM3,
    temperatureC,
    salinityPsu,
    verdict: f.verdict,
    massG: load.massG,
    ...bandOf(load.massG, lure.spreadG),
    netG: load.massG - waterG(solid.volumeMm3, waterDensityKgM3),
    rest: restOf(f, under),
    band: lieBandOf(pull),
    hang: pull ? hangsOf({ floating: f, body }, pull) : [],
    leadShare: 1 - waterDensityKgM3 / rowOf(materials.metals, 'lead').densityKgM3,
    trial: trialsOf(pull),
    says: saysOf(pull),
  };
}

function hangsOf(
  { floating, body }: Pick<ShopLine, 'floating' | 'body'>,
  pull: Pulled,
): TubTest['hang'] {
  const { pattern, piece } = floating;
  return eyePlaces(pattern, body.shape).map((place) => {
    const at = loopCenter(place, loopOf(place, pattern, piece.materials));
    const rate = perGramAt(pull, at);
    const freeboardMm = pull.under ? null : rate.freeboardMm;
    const perG = { ...lieOf(pull, rate, 1), freeboardMm };
    return { at: place.name, stationMm: at[0], heightMm: at[1], perG };
  });
}

function restOf({ attitudes: [rest] }: ShopLine['floating'], under: boolean): TubTest['rest'] {
  if (!rest.stable) return null;
  const height = (mm: number): number | null => (under ? null : mm);
  return {
    noseMm: height(rest.freeboardNoseMm),
    tailMm: height(rest.freeboardTailMm),
    trimDeg: rest.trimDeg,
    freeboardMm: height(rest.freeboardMm),
    dryRatio: rest.dryRatio,
  };
}
