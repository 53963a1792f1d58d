/** What in a wish cannot go together, or is not enough to work with. */
import { type Problem, problem } from '../problem.js';
import type { WishFile } from './wish-schema.js';

type Detail = 'freeboardMm' | 'dryRatio' | 'speedCmS';

/** What each buoyancy can be told more exactly by. */
const DETAILS: Readonly<Record<WishFile['buoyancy'], readonly Detail[]>> = {
  floats: ['freeboardMm', 'dryRatio'],
  suspends: [],
  rises: ['speedCmS'],
  sinks: ['speedCmS'],
};

const WHY: Readonly<Record<Detail, string>> = {
  freeboardMm: 'only a lure that floats has a freeboard',
  dryRatio: 'only a lure that floats has a dry part',
  speedCmS: 'only a lure that rises or sinks has a speed',
};

/** Contradictions and gaps of a wish, in the order of its keys. */
export function wishProblems(wish: WishFile): Problem[] {
  const fits = DETAILS[wish.buoyancy];
  const given = (['freeboardMm', 'dryRatio', 'speedCmS'] as const).filter(
    (key) => wish[key] !== undefined,
  );
  const contradicts = (key: string, first: string, second: string, why: string) =>
    problem('wish-contradicts', ['wish', key], { first, second, why });
  const both = wish.freeboardMm !== undefined && wish.dryRatio !== undefined;
  return [
    ...given
      .filter((key) => !fits.includes(key))
      .map((key) => contradicts(key, `buoyancy ${wish.buoyancy}`, said(wish, key), WHY[key])),
    ...(both && wish.buoyancy === 'floats'
      ? [
          contradicts(
            'dryRatio',
            said(wish, 'freeboardMm'),
            said(wish, 'dryRatio'),
            'each alone says how high it floats',
          ),
        ]
      : []),
    ...(fits.includes('speedCmS') && wish.speedCmS === undefined
      ? [problem('wish-incomplete', ['wish'], { buoyancy: wish.buoyancy })]
      : []),
  ];
}

const said = (wish: WishFile, key: Detail): string => `${key} ${wish[key]}`;
