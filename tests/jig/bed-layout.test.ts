import { describe, expect, test } from 'vitest';
import type { Mesh } from '../../src/geometry/mesh.js';
import { meshBox } from '../../src/geometry/mesh.js';
import { seededDraws } from '../../src/geometry/random.js';
import {
  type BedLayout,
  type Footprint,
  layOnBeds,
  motionOnBed,
} from '../../src/jig/bed-layout.js';
import { checkBedLayout } from '../../src/jig/check-bed-layout.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { box } from '../solid/shapes.js';

const kernel = await loadKernel();
const solid = ({ xMm, yMm }: Footprint): Mesh => evaluate(kernel, box(xMm, yMm, 5));
/** As 32-bit floats, which meshes hold. */
const sizes = (...pairs: readonly (readonly [number, number])[]): Footprint[] =>
  pairs.map(([x, y]) => ({ xMm: Math.fround(x), yMm: Math.fround(y) }));

function flawsOf(
  footprints: readonly Footprint[],
  layout: BedLayout,
  bed: Footprint,
  gapMm: number,
) {
  return checkBedLayout({
    meshes: footprints.map(solid),
    beds: layout.beds.map((places) =>
      places.map((place) => ({ part: place.part, at: motionOnBed(place, footprints[place.part]) })),
    ),
    tooLarge: layout.tooLarge,
    bed,
    gapMm,
  });
}

const BED = { xMm: 220, yMm: 200 };
const lay = (footprints: readonly Footprint[], gapMm = 5, bed = BED): BedLayout => {
  const layout = layOnBeds(footprints, bed, gapMm);
  expect(flawsOf(footprints, layout, bed, gapMm)).toEqual([]);
  return layout;
};

describe('layouts with a known best', () => {
  test('one part lies in the middle', () => {
    const { beds, tooLarge } = lay(sizes([100, 40]));
    expect(beds).toEqual([[{ part: 0, xMm: 60, yMm: 80, turned: false }]]);
    expect(tooLarge).toEqual([]);
  });

  test('nothing to lay is no bed', () => {
    expect(lay([])).toEqual({ beds: [], tooLarge: [] });
  });

  test('a part as large as the bed, and one that only fits turned', () => {
    expect(lay(sizes([220, 200])).beds.length).toBe(1);
    const { beds } = lay(sizes([190, 215]));
    expect(beds[0][0].turned).toBe(true);
  });

  test('four quarters of the bed fill it, five take a second', () => {
    // 2 × 107.5 + 5 = 220 and 2 × 97.5 + 5 = 200, to the last millimeter.
    const quarter = [107.5, 97.5] as const;
    expect(lay(sizes(quarter, quarter, quarter, quarter)).beds.map((b) => b.length)).toEqual([4]);
    const five = lay(sizes(quarter, quarter, quarter, quarter, quarter));
    expect(five.beds.map((b) => b.length)).toEqual([4, 1]);
    // A hair more of a gap, and only one fits beside another.
    expect(lay(sizes(quarter, quarter, quarter, quarter), 5.01).beds.length).toBeGreaterThan(1);
  });

  test('a turn makes room: four strips lie one above the other, the fifth only stands beside them', () => {
    const bed = { xMm: 245, yMm: 205 };
    const { beds } = lay(sizes([200, 40], [200, 40], [200, 40], [200, 40], [200, 40]), 5, bed);
    expect(beds.map((b) => b.filter((p) => p.turned).length)).toEqual([1]);
  });

  test('what fits no bed is told and does not hold up the rest', () => {
    const { beds, tooLarge } = lay(sizes([50, 50], [221, 10], [10, 260], [30, 30]));
    expect(tooLarge).toEqual([1, 2]);
    expect(beds.map((b) => b.map((p) => p.part))).toEqual([[0, 3]]);
  });
});

test('three hundred sets drawn by chance: sound, no more beds than parts, no fewer than area asks for', () => {
  const draw = seededDraws(17);
  let several = 0;
  for (let k = 0; k < 300; k++) {
    const bed = { xMm: 120 + 200 * draw(), yMm: 120 + 200 * draw() };
    const count = 1 + Math.floor(9 * draw());
    const footprints = sizes(
      ...Array.from({ length: count }, () => [10 + 150 * draw(), 10 + 110 * draw()] as const),
    );
    const gapMm = 8 * draw();
    const layout = lay(footprints, gapMm, bed);
    const laid = footprints.filter((_, i) => !layout.tooLarge.includes(i));
    const area = laid.reduce((sum, f) => sum + f.xMm * f.yMm, 0);
    expect(layout.beds.length).toBeLessThanOrEqual(laid.length);
    expect(layout.beds.length).toBeGreaterThanOrEqual(Math.ceil(area / (bed.xMm * bed.yMm)));
    several += layout.beds.length > 1 ? 1 : 0;
  }
  expect(several).toBeGreaterThan(50);
});

test('the same parts, the same layout', () => {
  const footprints = sizes([70, 48], [51, 32], [64, 40], [90, 90], [20, 150]);
  expect(layOnBeds(footprints, BED, 5)).toEqual(layOnBeds(footprints, BED, 5));
});

describe('the judge complains', () => {
  const footprints = sizes([100, 40], [60, 60]);
  const good = layOnBeds(footprints, BED, 5);
  const codes = (layout: BedLayout) => flawsOf(footprints, layout, BED, 5).map((f) => f.code);
  const moved = (dx: number, dy: number): BedLayout => ({
    ...good,
    beds: [good.beds[0].map((p, i) => (i === 0 ? { ...p, xMm: p.xMm + dx, yMm: p.yMm + dy } : p))],
  });

  test('of a part off the bed, too near another, left out, laid twice, said too large', () => {
    expect(codes(good)).toEqual([]);
    expect(codes(moved(-200, 0))).toContain('off-bed');
    expect(codes(moved(0, 200))).toContain('off-bed');
    const [a, b] = good.beds[0];
    expect(codes(moved(b.xMm - a.xMm, b.yMm - a.yMm))).toContain('too-close');
    expect(codes({ ...good, beds: [[a]] })).toEqual(['not-laid-once']);
    expect(codes({ ...good, beds: [[a, b], [b]] })).toEqual(['not-laid-once']);
    expect(codes({ ...good, tooLarge: [0] })).toEqual(['not-laid-once']);
  });

  test('of a part turned without being moved, and one above the bed', () => {
    const [a, b] = good.beds[0];
    const [, high] = meshBox(solid(footprints[0]));
    const at = (part: number, matrix: readonly number[]) => ({ part, at: matrix });
    const place = (p: typeof a) => motionOnBed(p, footprints[p.part]);
    const judged = (matrix: readonly number[]) =>
      checkBedLayout({
        meshes: footprints.map(solid),
        beds: [[at(0, matrix), at(1, place(b))]],
        tooLarge: [],
        bed: BED,
        gapMm: 5,
      }).map((f) => f.code);
    expect(judged(place(a))).toEqual([]);
    expect(
      judged(motionOnBed({ ...a, turned: !a.turned, xMm: -high[0], yMm: a.yMm }, footprints[0])),
    ).toContain('off-bed');
    expect(judged([...place(a).slice(0, 14), 0.1, 1])).toEqual(['off-bed']);
  });
});
