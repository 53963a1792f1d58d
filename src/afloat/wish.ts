/** Whether a lure does what its pattern wishes. */
import { loadMeant, restMeant } from '../ballast/choice.js';
import { farthest, type Missed, missOf, wantedOf } from '../ballast/miss.js';
import { upAt } from '../ballast/wish.js';
import type { WishFile } from '../pattern/wish-schema.js';
import type { Floating } from './floating.js';

export type WishSeen = {
  readonly wish: WishFile;
  /** What is less what is wished, null where the wish says nothing; null for a lure that rolls over. */
  readonly missed: Missed | null;
  /** As near as a choice of ballast must come. */
  readonly met: boolean;
};

const MEANT: Readonly<Record<WishFile['buoyancy'], readonly Floating['verdict'][]>> = {
  floats: ['floats'],
  suspends: ['suspends'],
  rises: ['floats', 'suspends'],
  sinks: ['sinks', 'suspends'],
};

/** By the measure that choices of ballast are judged by. Null for a pattern without a wish. */
export function wishSeen({ pattern, piece, load, verdict }: Floating): WishSeen | null {
  const { wish } = pattern;
  if (!wish) return null;
  const wanted = wantedOf(wish);
  const rest = restMeant(piece, loadMeant(piece, wanted, load), upAt(wanted.trimDeg ?? 0));
  if ('rolls' in rest) return { wish, missed: null, met: false };
  const { missed } = missOf(piece.afloat, wanted, load.massG, rest);
  const met =
    MEANT[wish.buoyancy].includes(verdict) &&
    rest.gmAcrossMm >= wish.leastGmMm &&
    farthest(wanted, missed, load.massG).ratio <= 1;
  return { wish, missed, met };
}
