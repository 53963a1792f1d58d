import { describe, expect, it } from 'vitest';
import { NO_CUTS } from '../../src/cutplan/cutplan.js';
import { sawnWays } from '../../src/cutplan/open-cuts.js';

const cut = [
  [50, 0],
  [50, 40],
] as const;

describe('ways in as they are sawn', () => {
  it('begin at the last parting cut they cross', () => {
    const path = [
      [100, 20],
      [60, 20],
      [30, 20],
      [30, 10],
    ] as const;
    const other = [
      [80, 0],
      [80, 40],
    ] as const;
    const [way] = sawnWays({ ...NO_CUTS, entryPaths: [path], partingCuts: [cut, other] });
    expect(way).toEqual([
      [50, 20],
      [30, 20],
      [30, 10],
    ]);
  });

  it('are whole where they cross none', () => {
    const path = [
      [0, 20],
      [30, 20],
    ] as const;
    expect(sawnWays({ ...NO_CUTS, entryPaths: [path], partingCuts: [cut] })).toEqual([path]);
  });
});
