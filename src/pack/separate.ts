/**
 * Guided removal of overlaps: every item that overlaps is put to a better place, and weights grow where
 * overlaps persist, until none is left. After J. Gardeyn, G. Vanden Berghe, T. Wauters,
 * arXiv:2509.13329 (2025); the idea is of J. Egeblad, B. Nielsen, A. Odgaard (2007) and T. Imamichi,
 * M. Yagiura, H. Nagamochi (2009), the weights are of C. Voudouris and E. Tsang.
 */
import {
  type Crowd,
  copyOfPlaces,
  lossOf,
  measureAll,
  type Places,
  put,
  reweigh,
  totalLoss,
} from './crowd.js';
import { type Draws, placer } from './place.js';

export type Effort = {
  readonly draws: Draws;
  /** Sweeps without a clearly lower loss, after which the search goes back to its best. */
  readonly sweeps: number;
  /** So many times in a row it may go back without having found clearly better. */
  readonly strikes: number;
};

/** Least loss found, 0 for a layout, and the places that have it. */
export type Separation = { readonly loss: number; readonly places: Places };

/** A loss lower by this share counts as clearly lower. */
const CLEARLY = 0.02;

/** Pauses after every sweep. */
export type Separating = Generator<void, Separation, void>;

export function separator(crowd: Crowd, draw: () => number) {
  const betterPlace = placer(crowd, draw);
  const order: number[] = [];

  const sweep = (draws: Draws): void => {
    order.length = 0;
    for (let i = 0; i < crowd.movable; i++) if (lossOf(crowd, i) > 0) order.push(i);
    for (let a = order.length - 1; a > 0; a--) {
      const b = Math.floor(draw() * (a + 1));
      [order[a], order[b]] = [order[b], order[a]];
    }
    for (const i of order) {
      if (lossOf(crowd, i) === 0) continue;
      const place = betterPlace(i, draws);
      if (place) put(crowd, i, place.k, place.x, place.y);
    }
  };

  /** Moves items until none overlap, or the effort is spent, or `isOver`: then the least loss is kept. */
  return function* separate(effort: Effort, isOver: () => boolean): Separating {
    let best: Separation = { loss: totalLoss(crowd), places: copyOfPlaces(crowd.places) };
    for (let strikes = 0; strikes < effort.strikes && best.loss > 0; ) {
      const before = best.loss;
      for (let idle = 0; idle < effort.sweeps; ) {
        sweep(effort.draws);
        const loss = totalLoss(crowd);
        idle = loss < (1 - CLEARLY) * best.loss ? 0 : idle + 1;
        if (loss < best.loss) best = { loss, places: copyOfPlaces(crowd.places) };
        if (loss === 0) return best;
        reweigh(crowd);
        yield;
        if (isOver()) return best;
      }
      strikes = best.loss < (1 - CLEARLY) * before ? 0 : strikes + 1;
      restore(crowd, best.places);
    }
    return best;
  };
}

/** Puts all items to the places held. */
export function restore(crowd: Crowd, { turned, x, y }: Places): void {
  crowd.places.turned.set(turned);
  crowd.places.x.set(x);
  crowd.places.y.set(y);
  measureAll(crowd);
}
