/** Whose body a cradle is for, on its ears. */
import { type Blank, labelOf } from '../../blank/blank.js';
import { type Face, placed } from '../letters.js';
import type { CradleLayout } from './plan.js';
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
    right: [-1, 0, 0],
    up: [0, -1, 0],
    out: [0, 0, 1],
  };
  // Read from the belly's side: right and up are −X and −Y.
  const [bottom, top] = [0 - ears[0][1], 0 - ears[2][1]].sort((a, b) => a - b);
  const clear = screwHoleMm / 2 + 1;
  const rooms = [
    { left: 0 - earMm, right: 0 - nose[0] - clear, bottom, top },
    { left: clear - tail[0], right: earMm - tail[0] - screwHoleMm * 1.5, bottom, top },
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
