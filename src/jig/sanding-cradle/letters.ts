/** Whose body a cradle is for, on its ears. */
import { type Blank, labelOf } from '../../blank/blank.js';
import { type Face, placed } from '../letters.js';
import type { CradleLayout } from './make.js';
import type { SandingCradleSetup } from './setup.js';

/** Name on the nose ear, size and version on the tail ear; all on one if the other is too small. */
export function cradleLetters(
  blank: Pick<Blank, 'name' | 'lengthMm' | 'version'>,
  setup: SandingCradleSetup,
  { ears, screws: [nose, tail] }: CradleLayout,
) {
  const { earMm, screwHoleMm, earThicknessMm } = setup;
  const face: Face = {
    name: 'ears',
    origin: [0, 0, earThicknessMm],
    right: [1, 0, 0],
    up: [0, 1, 0],
    out: [0, 0, 1],
  };
  const [bottom, top] = [ears[0][1], ears[2][1]].sort((a, b) => a - b);
  const clear = screwHoleMm / 2 + 1;
  const rooms = [
    { left: nose[0] + clear, right: earMm, bottom, top },
    { left: tail[0] + screwHoleMm * 1.5 - earMm, right: tail[0] - clear, bottom, top },
  ];
  const words = labelOf(blank).split(' ');
  const [name, ...rest] = words;
  const onEars = rooms.map((room) => ({ face, rooms: [room] }));
  return placed(
    [
      { breaks: [[name], name.split('-')], places: onEars },
      { breaks: [[rest.join(' ')], rest], places: [...onEars].reverse() },
    ],
    setup.letters,
  );
}
