import { describe, expect, test } from 'vitest';
import { type Mesh, meshVolume } from '../../../src/geometry/mesh.js';
import { seededDraws } from '../../../src/geometry/random.js';
import { BORE_CHORD } from '../../../src/jig/split/across.js';
import { checkSplit } from '../../../src/jig/split/check.js';
import { splitForBed } from '../../../src/jig/split/make.js';
import {
  type DowelSetup,
  dowelCount,
  type Split,
  type SplitOrder,
} from '../../../src/jig/split/split.js';
import { type Csg, movedBy, segmentsAround } from '../../../src/solid/csg.js';
import { evaluate } from '../../../src/solid/evaluate.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { pointBy, translation } from '../../../src/solid/placement.js';
import { aroundArea, box, through } from '../../solid/shapes.js';

const kernel = await loadKernel();
const DOWEL: DowelSetup = {
  diameterMm: 4,
  lengthMm: 20,
  clearanceMm: 0.2,
  endClearanceMm: 0.5,
  wallMm: 1.5,
};
const BED = { xMm: 120, yMm: 100, zMm: 150 };

const orderFor = (solid: Csg, change: Partial<SplitOrder> = {}): SplitOrder => ({
  mesh: evaluate(kernel, solid),
  bed: BED,
  dowel: DOWEL,
  keepWholeMm: [],
  ...change,
});

/** The split of a solid that must have one, judged. */
function splitOf(order: SplitOrder): Split {
  const { split, problem } = splitForBed(kernel, order);
  expect(problem).toBeNull();
  if (!split) throw new Error('no split');
  expect(checkSplit(kernel, order, split)).toEqual([]);
  return split;
}
const cutsOf = (split: Split): number[] => split.joints.map((j) => j.xMm);

/** Half of a bore, by its closed form: n r² tan(π/n) by its depth of 10.5 mm. */
const HALF_BORE = aroundArea(2.1, segmentsAround(2.1, BORE_CHORD)) * 10.5;

describe('bars, against closed forms', () => {
  const bar = box(300, 30, 20);

  test('300 mm in three of 100, two dowels to a joint, at opposite corners of the section', () => {
    const split = splitOf(orderFor(bar));
    expect(cutsOf(split)).toEqual([100, 200]);
    expect(dowelCount(split)).toBe(4);
    // 32-bit floats hold 60 000 mm³ of such pieces to 1e-6 of it.
    const whole = 100 * 30 * 20;
    for (const [i, halves] of [2, 4, 2].entries()) {
      expect(split.pieces[i].volumeMm3 / (whole - halves * HALF_BORE)).toBeCloseTo(1, 6);
      expect(split.pieces[i].sizeMm).toEqual([100, 30, 20]);
      expect(pointBy(split.pieces[i].toWhole, [0, 0, 0])).toEqual([100 * i, 0, 0]);
    }
    const inset = 2.1 + BORE_CHORD + 1.5;
    for (const { sectionMm2, dowels } of split.joints) {
      expect(sectionMm2).toBeCloseTo(600, 9);
      const [ys, zs] = [1, 2].map((k) => dowels.map((d) => d[k]).sort((a, b) => a - b));
      for (const [values, size] of [
        [ys, 30],
        [zs, 20],
      ] as const) {
        expect(values[0]).toBeCloseTo(inset, 5);
        expect(values[1]).toBeCloseTo(size - inset, 5);
      }
    }
  });

  test('the total is the whole less the bores', () => {
    const order = orderFor(bar);
    const { pieces, joints } = splitOf(order);
    const sum = pieces.reduce((s, p) => s + meshVolume(p.mesh), 0);
    expect(joints.length).toBe(2);
    expect((sum + 8 * HALF_BORE) / 180000).toBeCloseTo(1, 7);
  });

  test('one that fits is left whole; one that only fits turned, too', () => {
    for (const size of [
      [120, 30],
      [30, 100],
      [100, 120],
    ] as const) {
      const split = splitOf(orderFor(box(size[0], size[1], 10)));
      expect([split.pieces.length, split.joints.length]).toEqual([1, 0]);
    }
  });

  test('just twice the bed is two pieces, a hair more is three', () => {
    expect(splitOf(orderFor(box(240, 30, 20))).pieces.length).toBe(2);
    expect(splitOf(orderFor(box(240.01, 30, 20))).pieces.length).toBe(3);
  });

  test('a wide one is as short as the other side of the bed', () => {
    // 110 wide fits only along the bed's 120, so a piece may be 100 long.
    expect(splitOf(orderFor(box(210, 110, 20))).pieces.length).toBe(3);
    expect(splitOf(orderFor(box(210, 90, 20))).pieces.length).toBe(2);
  });

  test('no cut where the caller wants none', () => {
    const keepWholeMm = [
      [90, 110],
      [195, 230],
    ] as const;
    const cuts = cutsOf(splitOf(orderFor(bar, { keepWholeMm })));
    expect(cuts.length).toBe(2);
    for (const x of cuts) {
      for (const [from, to] of keepWholeMm) expect(x < from || x > to).toBe(true);
    }
  });

  test('a square bar of 9 mm has room for one dowel, in its middle', () => {
    const split = splitOf(orderFor(box(200, 9, 9)));
    expect(dowelCount(split)).toBe(1);
    const [[, y, z]] = split.joints[0].dowels;
    // The deepest place is found to 0.02 mm.
    expect(Math.abs(y - 4.5)).toBeLessThan(0.05);
    expect(Math.abs(z - 4.5)).toBeLessThan(0.05);
  });
});

describe('what has to be gone round', () => {
  test('a bore through the middle: the cut, the dowels and their walls keep out of it', () => {
    const bored: Csg = {
      kind: 'subtract',
      from: box(200, 30, 20),
      parts: [movedBy(translation(100, 15, 0), through(10, -1, 21))],
    };
    const [x] = cutsOf(splitOf(orderFor(bored)));
    // A bore of 10.5 and its wall of 1.5 reach to d − 12 from the hole's middle, where the hole leaves
    // 15 − √(10² − (d − 12)²) beside it; two walls and the bore's 4.24 fit there from d = 18.31 on.
    expect(Math.abs(x - 100)).toBe(19);
  });

  test('a pocket that the cut does not meet but a bore would', () => {
    const pocket = box(10, 12, 30, [104, 18, 10]);
    const order = orderFor({ kind: 'subtract', from: box(200, 30, 20), parts: [pocket] });
    const split = splitOf(order);
    expect(split.joints[0].dowels.length).toBe(2);
  });

  test('a fork is not cut through its prongs', () => {
    const fork: Csg = {
      kind: 'subtract',
      from: box(200, 40, 20),
      parts: [box(170, 16, 30, [40, 12, -5])],
    };
    const order = orderFor(fork, { bed: { xMm: 180, yMm: 100, zMm: 100 } });
    const [x] = cutsOf(splitOf(order));
    expect(x).toBeLessThan(40);
  });

  test('a table is cut so that both parts stand on a leg', () => {
    const table: Csg = {
      kind: 'union',
      parts: [box(200, 40, 15, [0, 0, 30]), box(20, 40, 31), box(20, 40, 31, [60, 0, 0])],
    };
    const [x] = cutsOf(splitOf(orderFor(table, { bed: { xMm: 150, yMm: 100, zMm: 100 } })));
    expect(x).toBeLessThan(80);
  });
});

describe('what cannot be split', () => {
  const problemOf = (order: SplitOrder) => splitForBed(kernel, order).problem;

  test('too high, too wide', () => {
    expect(problemOf(orderFor(box(100, 30, 151)))).toEqual({
      code: 'split-too-high',
      facts: { needZMm: 151, bedZMm: 150 },
    });
    expect(problemOf(orderFor(box(300, 121, 20)))).toEqual({
      code: 'split-too-wide',
      facts: { needYMm: 121, bedXMm: 120, bedYMm: 100 },
    });
  });

  test('too thin for the dowel: says which would do', () => {
    // 6 mm less two walls of 1.5 and the clearance of 0.2 leaves 2.8 mm less the bore's corners.
    expect(problemOf(orderFor(box(200, 40, 6)))).toEqual({
      code: 'split-no-plane',
      facts: {
        lengthMm: 200,
        mostPieceMm: 120,
        dowelDiameterMm: 4,
        dowelLengthMm: 20,
        wallMm: 1.5,
        planes: 201,
        barredPlanes: 0,
        thinPlanes: 201,
        worksDiameterMm: 2,
      },
    });
  });

  test('barred everywhere', () => {
    const problem = problemOf(orderFor(box(200, 40, 20), { keepWholeMm: [[1, 199]] }));
    expect(problem?.facts).toMatchObject({
      planes: 201,
      barredPlanes: 201,
      thinPlanes: 0,
      worksDiameterMm: 0,
    });
  });

  test('prongs that would fall apart wherever the bed lets them be cut', () => {
    const fork: Csg = {
      kind: 'subtract',
      from: box(230, 40, 20),
      parts: [box(220, 16, 30, [20, 12, -5])],
    };
    const problem = problemOf(orderFor(fork));
    expect(problem?.code).toBe('split-no-plane');
    expect(problem?.facts.worksDiameterMm).toBe(0);
  });
});

test('eight bars with holes and steps drawn by chance: sound wherever they can be split', () => {
  const draw = seededDraws(23);
  let joints = 0;
  for (let k = 0; k < 8; k++) {
    const length = 130 + 300 * draw();
    const width = 15 + 60 * draw();
    const height = 8 + 30 * draw();
    const holes = Array.from({ length: 4 }, (_, i) =>
      movedBy(
        translation(((i + 0.2 + 0.6 * draw()) * length) / 4, width * (0.3 + 0.4 * draw()), 0),
        through(1 + 0.2 * width * draw(), -1, height + 1),
      ),
    );
    const step = box(length * 0.3, width + 2, height, [
      length * draw(),
      -1,
      height * (0.4 + 0.4 * draw()),
    ]);
    const order = orderFor(
      { kind: 'subtract', from: box(length, width, height), parts: [...holes, step] },
      {
        bed: { xMm: 80 + 90 * draw(), yMm: 80, zMm: 60 },
        keepWholeMm: [[length * 0.45, length * 0.5]],
      },
    );
    const { split, problem } = splitForBed(kernel, order);
    if (split) expect(checkSplit(kernel, order, split)).toEqual([]);
    else expect(problem.facts.worksDiameterMm).toBeLessThan(4);
    joints += split?.joints.length ?? 0;
  }
  expect(joints).toBeGreaterThan(8);
});

test('the same solid, the same pieces', () => {
  const order = orderFor(box(300, 30, 20));
  expect(splitForBed(kernel, order)).toEqual(splitForBed(kernel, order));
});

describe('the judge complains', () => {
  const order = orderFor(box(200, 30, 20));
  const good = splitOf(order);
  const codes = (split: Split, asked = order) =>
    [...new Set(checkSplit(kernel, asked, split).map((f) => f.code))].sort();
  const withMesh = (solid: Csg | Mesh, change: Partial<Split['pieces'][number]> = {}): Split => {
    const mesh = 'kind' in solid ? evaluate(kernel, solid) : solid;
    return { ...good, pieces: [{ ...good.pieces[0], mesh, ...change }, good.pieces[1]] };
  };
  const first: Csg = { kind: 'mesh', mesh: good.pieces[0].mesh };

  test('of a piece without bores, of half a piece, of one in two parts, of one that floats', () => {
    expect(codes(good)).toEqual([]);
    expect(codes(withMesh(box(100, 30, 20)))).toEqual(['dowel-does-not-go-in', 'volume-differs']);
    const parted: Csg = { kind: 'subtract', from: first, parts: [box(20, 40, 30, [40, -5, -5])] };
    expect(codes(withMesh(parted))).toEqual(['not-one-piece', 'volume-differs']);
    expect(codes(withMesh(movedBy(translation(0, 0, 1), first)))).toContain('not-on-bed');
    const open = { ...good.pieces[0].mesh, triangles: good.pieces[0].mesh.triangles.slice(3) };
    expect(codes(withMesh(open as Mesh))).toEqual(['mesh-open']);
  });

  test('of a piece put back in the wrong place, of one too long, of a cut that was barred', () => {
    const moved = withMesh(first, { toWhole: translation(5, 0, 0) });
    expect(codes(moved)).toContain('pieces-overlap');
    expect(codes(withMesh(first, { toWhole: translation(0, 0, 2) }))).toContain('not-of-the-whole');
    expect(codes(good, { ...order, bed: { xMm: 90, yMm: 90, zMm: 90 } })).toEqual(['off-bed']);
    expect(codes(good, { ...order, bed: { ...BED, zMm: 19 } })).toEqual(['off-bed']);
    expect(codes(good, { ...order, keepWholeMm: [[99, 101]] })).toEqual(['cut-where-whole']);
  });

  test('of a dowel with too little wall, and of one that is not bored for', () => {
    const shifted = (dy: number): Split => ({
      ...good,
      joints: good.joints.map((j) => ({
        ...j,
        dowels: j.dowels.map(([x, y, z]) => [x, y + dy, z] as const),
      })),
    });
    expect(codes(shifted(0.5))).toEqual(['dowel-does-not-go-in', 'wall-thin']);
    expect(codes(good, { ...order, dowel: { ...DOWEL, wallMm: 2 } })).toEqual(['wall-thin']);
    expect(codes({ ...good, joints: [{ ...good.joints[0], dowels: [] }] })).toEqual([
      'volume-differs',
    ]);
  });
});
