import { rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { circleRing, movedRing, type Ring, ring } from '../../src/geometry/ring.js';
import type { NestFace, Placement } from '../../src/nest/nest.js';
import { planNest } from '../../src/nest/plan.js';
import { faceRecord } from '../../src/record/build-json.js';
import { block, lure, part, RULES, SEARCH } from '../nest/outlines.js';
import { folderOf, hasShapely, judge, kindsTold, WHY_SKIPPED } from './shapely.js';

const parts = [part('long', lure(120, 30, 4), 9), part('short', lure(70, 20), 6)];
const blocks = [block('b', [450, 110], 1, { knots: [{ xMm: 200, yMm: 104, radiusMm: 5 }] })];
const nest = planNest(parts, blocks, { ...RULES, layers: 1 }, SEARCH);
const [face] = nest.faces;

const recordOf = (
  one: NestFace,
  among: readonly { id: string; outline: Ring }[] = parts,
  counts: { made?: unknown; ordered?: unknown; missing?: unknown } = nest,
): unknown => ({
  patterns: among.map((p) => ({ name: p.id, outline: p.outline })),
  nest: {
    faces: [faceRecord(one)],
    made: counts.made,
    ordered: counts.ordered,
    missing: counts.missing,
  },
});

const moved = (p: Placement, x: number, y: number): Placement => ({
  ...p,
  xMm: p.xMm + x,
  yMm: p.yMm + y,
  outline: movedRing({ turnDeg: 0, move: [x, y] }, p.outline),
});
const withPlacement = (at: number, change: (p: Placement) => Placement): unknown =>
  recordOf({ ...face, placements: face.placements.map((p, i) => (i === at ? change(p) : p)) });

/** Outlines at given places of a wide face, with counts that are right. */
function faceOf(placed: readonly (readonly [outline: Ring, x: number, y: number])[]): unknown {
  const among = placed.map(([outline], i) => ({ id: `p${i}`, outline }));
  const placements = placed.map(([outline, xMm, yMm], i): Placement => {
    const there = movedRing({ turnDeg: 0, move: [xMm, yMm] }, outline);
    return { part: `p${i}`, xMm, yMm, turnDeg: 0, outline: there };
  });
  const areaMm2 = placements.reduce((sum, p) => sum + shoelace(p.outline), 0);
  const size = { lengthMm: 300, widthMm: 200, gapMm: 3, knots: [] };
  const each = Object.fromEntries(among.map((p) => [p.id, 1]));
  return recordOf({ ...face, ...size, placements, usedRatio: areaMm2 / (300 * 200) }, among, {
    made: each,
    ordered: each,
    missing: {},
  });
}
const shoelace = (r: Ring): number =>
  r.reduce((sum, [x, y], i) => {
    const [nx, ny] = r[(i + 1) % r.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/** A ring with a slit `mouthMm` wide at its right. */
const horseshoe = (mouthMm: number): Ring => {
  const half = Math.asin(mouthMm / 2 / 30);
  const arc = (radius: number, from: number, to: number) =>
    Array.from({ length: 41 }, (_, i) => {
      const a = from + ((to - from) * i) / 40;
      return [radius * Math.cos(a), radius * Math.sin(a)] as const;
    });
  return ring([...arc(40, half, 2 * Math.PI - half), ...arc(30, 2 * Math.PI - half, half)]);
};
const dot = circleRing([0, 0], 8, { segments: 24 });

describe.skipIf(!hasShapely)(`the judge of nests${WHY_SKIPPED}`, () => {
  const middle = face.placements[2];
  const [nearX, nearY] = face.placements[1].outline[0];
  const files: Record<string, { data: unknown; kinds: string[] }> = {
    good: { data: recordOf(face), kinds: [] },
    'on-another': {
      data: withPlacement(2, (p) =>
        moved(p, face.placements[3].xMm - p.xMm, face.placements[3].yMm - p.yMm),
      ),
      kinds: ['gap', 'overlap', 'reach'],
    },
    margin: { data: recordOf({ ...face, marginMm: face.marginMm + 0.01 }), kinds: ['margin'] },
    gap: { data: recordOf({ ...face, gapMm: face.gapMm + 0.2 }), kinds: ['gap', 'reach'] },
    knot: {
      data: recordOf({ ...face, knots: [{ xMm: nearX, yMm: nearY - 3, radiusMm: 1.6 }] }),
      kinds: ['knot'],
    },
    elsewhere: { data: withPlacement(2, (p) => ({ ...p, xMm: p.xMm + 0.01 })), kinds: ['outline'] },
    'no-pattern': {
      data: withPlacement(2, (p) => ({ ...p, part: 'nobody' })),
      kinds: ['count', 'outline'],
    },
    crossed: {
      data: withPlacement(2, (p) => ({
        ...p,
        outline: [
          ...p.outline.slice(0, 9),
          ...p.outline.slice(9, 30).reverse(),
          ...p.outline.slice(30),
        ] as unknown as Ring,
      })),
      kinds: ['count', 'outline'],
    },
    made: {
      data: recordOf(face, parts, { ...nest, made: { ...nest.made, long: 1 } }),
      kinds: ['count'],
    },
    missing: { data: recordOf(face, parts, { ...nest, missing: { short: 1 } }), kinds: ['count'] },
    ratio: { data: recordOf({ ...face, usedRatio: face.usedRatio + 0.001 }), kinds: ['count'] },
    // Two dots with a way all round; the same with less than a kerf between them.
    open: {
      data: faceOf([
        [dot, 60, 60],
        [dot, 79.1, 60],
      ]),
      kinds: [],
    },
    // A dot in a horseshoe: a blade of 3 mm comes through a mouth of 4 mm, but not of 2.5 mm.
    'wide-mouth': {
      data: faceOf([
        [horseshoe(4), 100, 100],
        [dot, 100, 100],
      ]),
      kinds: [],
    },
    'narrow-mouth': {
      data: faceOf([
        [horseshoe(2.5), 100, 100],
        [dot, 100, 100],
      ]),
      kinds: ['reach'],
    },
    'empty-narrow-mouth': { data: faceOf([[horseshoe(2.5), 100, 100]]), kinds: ['reach'] },
  };
  const folder = folderOf(
    Object.fromEntries(Object.entries(files).map(([name, f]) => [`${name}.json`, f.data])),
  );
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('has something to judge', () => {
    expect(face.placements.length).toBeGreaterThan(8);
    expect(middle.outline.length).toBeGreaterThan(100);
  });

  it('is content with good faces and counts what it looked at', () => {
    const good = ['good', 'open', 'wide-mouth'].map((name) => `${folder}/${name}.json`);
    const { status, lines } = judge('nest_shapely.py', ...good);
    const n = face.placements.length;
    expect(lines).toEqual([
      `shapely: 3 files, 3 faces, ${n + 4} outlines, ${(n * (n - 1)) / 2 + 2} pairs, ${n} distances to knots; ` +
        'flaws: outline 0, overlap 0, gap 0, knot 0, margin 0, reach 0, count 0',
    ]);
    expect(status).toBe(0);
  });

  it('sees what is wrong with damaged ones, and nothing else', () => {
    const verdict = judge('nest_shapely.py', folder);
    expect(verdict.status).toBe(1);
    for (const [name, { kinds }] of Object.entries(files)) {
      expect(kindsTold(verdict, `/${name}.json`), name).toEqual(kinds);
    }
  });

  it('fails when it looked at nothing', () => {
    const empty = folderOf({ 'other.json': { files: [] } });
    expect(judge('nest_shapely.py', empty).status).toBe(1);
    rmSync(empty, { recursive: true });
  });
});
