/** What is written on a drying comb: whose it is, and how many hang how far apart. */
import { type Blank, labelOf } from '../../blank/blank.js';
import { type Face, placed, type Room } from '../letters.js';
import type { CombLayout } from './plan.js';
import type { DryingCombSetup } from './setup.js';

export function combLetters(
  blank: Pick<Blank, 'name' | 'lengthMm' | 'version'>,
  { places, pitchMm }: { readonly places: number; readonly pitchMm: number },
  setup: DryingCombSetup,
  { lengthMm, screws }: CombLayout,
) {
  const face: Face = {
    name: 'top',
    origin: [0, 0, setup.thicknessMm],
    right: [1, 0, 0],
    up: [0, 1, 0],
    out: [0, 0, 1],
  };
  const clear = setup.screwHoleMm / 2 + 1;
  const room = (left: number, right: number): Room => ({
    left,
    right,
    bottom: 0,
    top: setup.shelfMm,
  });
  const [first, last] = screws.map(([x]) => x);
  const rooms = [
    room(first + clear, last - clear),
    room(0, first - clear),
    room(last + clear, lengthMm),
  ];
  const label = labelOf(blank);
  return placed(
    [
      { breaks: [[label], label.split(' ')], places: [{ face, rooms }] },
      {
        breaks: [[`${places} X ${pitchMm} MM`], [`${places} X`, `${pitchMm} MM`]],
        places: [{ face, rooms }],
      },
    ],
    setup.letters,
  );
}
