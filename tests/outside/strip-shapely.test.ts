import { rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { folderOf, hasShapely, judge, kindsTold, WHY_SKIPPED } from './shapely.js';

type Laid = { item: number; turnDeg: number; x: number; y: number };

/** Four right triangles of 4 × 3 make two rectangles; with two bars of 3 × 1 they fill 9 × 3. */
const instance = {
  name: 'bars',
  strip_height: 3,
  items: [
    {
      id: 0,
      demand: 4,
      allowed_orientations: [0, 180],
      shape: {
        data: [
          [0, 0],
          [4, 0],
          [0, 3],
          [0, 0],
        ],
      },
    },
    {
      id: 1,
      demand: 1,
      allowed_orientations: [90],
      shape: {
        data: [
          [0, 0],
          [3, 0],
          [3, 1],
          [0, 1],
        ],
      },
    },
  ],
};
const good: Laid[] = [
  { item: 0, turnDeg: 0, x: 0, y: 0 },
  { item: 0, turnDeg: 180, x: 4, y: 3 },
  { item: 0, turnDeg: 0, x: 4, y: 0 },
  { item: 0, turnDeg: 180, x: 8, y: 3 },
  { item: 1, turnDeg: 90, x: 9, y: 0 },
];
const result = (placements: readonly Laid[], more: object = {}): unknown => ({
  name: 'bars',
  stripHeight: 3,
  length: 9,
  placements,
  ...more,
});
const changed = (at: number, more: Partial<Laid>): unknown =>
  result(good.map((p, i) => (i === at ? { ...p, ...more } : p)));

describe.skipIf(!hasShapely)(`the judge of strips${WHY_SKIPPED}`, () => {
  const results: Record<string, { data: unknown; kinds: string[] }> = {
    good: { data: result(good, { densityPercent: 100 }), kinds: [] },
    height: { data: result(good, { stripHeight: 3.1 }), kinds: ['height'] },
    few: { data: result(good.slice(1)), kinds: ['item'] },
    many: {
      data: result([...good, { item: 0, turnDeg: 0, x: 9, y: 0 }], { length: 13 }),
      kinds: ['item'],
    },
    turn: { data: changed(4, { turnDeg: 270, x: 8, y: 3 }), kinds: ['turn'] },
    right: { data: changed(4, { x: 9.001 }), kinds: ['inside'] },
    down: { data: changed(4, { y: -0.001 }), kinds: ['inside'] },
    overlap: { data: changed(4, { x: 8.99 }), kinds: ['overlap'] },
    // The whole of one triangle on another: no edges cross.
    same: { data: changed(2, { x: 0 }), kinds: ['overlap'] },
    density: { data: result(good, { densityPercent: 99.9 }), kinds: ['density'] },
    short: { data: result(good, { length: 8.9 }), kinds: ['density', 'inside'] },
  };
  const instances = folderOf(
    Object.fromEntries([
      ...Object.keys(results).map((name) => [`${name}.json`, instance]),
      ['records.json', { good: 80 }],
    ]),
  );
  const folder = folderOf(
    Object.fromEntries(Object.entries(results).map(([name, r]) => [`${name}.json`, r.data])),
  );
  const only = folderOf({ 'good.json': results.good.data });
  afterAll(() => {
    for (const made of [instances, folder, only]) rmSync(made, { recursive: true, force: true });
  });

  it('is content with a tiling, and measures its density', () => {
    const { status, lines } = judge('strip_shapely.py', instances, only);
    expect(lines[0]).toBe('good: 100.000 %, record 80 %, ratio 1.2500; greatest overlap 0, 0 deep');
    expect(lines[lines.length - 1]).toBe(
      'shapely: 1 results, 5 placements; flaws: height 0, item 0, turn 0, inside 0, overlap 0, density 0',
    );
    expect(status).toBe(0);
  });

  it('sees what is wrong with damaged results, and nothing else', () => {
    const verdict = judge('strip_shapely.py', instances, folder);
    expect(verdict.status).toBe(1);
    for (const [name, { kinds }] of Object.entries(results)) {
      expect(kindsTold(verdict, `${name}: `), name).toEqual(kinds);
    }
    // 0.01 of the bar lies on the triangle beside it, whose upright edge is 3 long.
    expect(verdict.lines).toContainEqual(
      expect.stringMatching(/^overlap: .*greatest overlap 0.03, 0.01 deep$/),
    );
  });

  it('fails without a result, and for one of no instance', () => {
    const empty = folderOf({});
    expect(judge('strip_shapely.py', instances, empty).status).toBe(1);
    rmSync(empty, { recursive: true });
    const stray = folderOf({ 'stray.json': results.good.data });
    expect(judge('strip_shapely.py', instances, stray).status).toBe(1);
    rmSync(stray, { recursive: true });
  });
});
