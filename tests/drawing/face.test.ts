import { describe, expect, it } from 'vitest';
import { checkDrawing } from '../../src/drawing/check.js';
import type { Drawing, LayerName } from '../../src/drawing/drawing.js';
import { type BlankWork, type FaceWork, faceDrawing } from '../../src/drawing/face.js';
import type { FaceCuts } from '../../src/drawing/route.js';
import { dxf } from '../../src/formats/dxf.js';
import { svg } from '../../src/formats/svg.js';
import { pathBox } from '../../src/geometry/arcpath.js';
import { distance } from '../../src/geometry/vec.js';
import { lureBlank, outlineCut, STADIUM, stadiumBlank } from './sample.js';

const stadium: BlankWork = {
  blank: stadiumBlank(),
  cuts: [outlineCut(STADIUM)],
  slotIsCut: true,
  label: 'STADIUM 100 V1',
};
const FACE: FaceWork = {
  title: 'Face 1 of 1',
  lengthMm: 230,
  widthMm: 60,
  thicknessMm: 20,
  marginMm: 5,
  gapMm: 4,
  layers: 2,
  copies: 3,
  knots: [
    { center: [220, 50], radius: 4 },
    { center: [220, 50], radius: 4 },
  ],
  splits: [],
  poorZones: [],
  clearNoseRatio: 0.35,
  placed: [
    { work: stadium, motion: { turnDeg: 0, move: [6, 16] } },
    { work: stadium, motion: { turnDeg: 180, move: [106, 42] } },
    { work: stadium, motion: { turnDeg: 0, move: [112, 16] } },
  ],
  kerfMm: null,
};
const on = (drawing: Drawing, layer: LayerName) => drawing.strokes.filter((s) => s.layer === layer);
const lines = (drawing: Drawing, layer: LayerName) =>
  on(drawing, layer).flatMap((s) => (s.kind === 'path' ? [s.path.vertices] : []));

describe('a face', () => {
  const { drawing, unlabeled } = faceDrawing(FACE);

  it('has one closed outline a blank, arcs kept, where the blank lies', () => {
    const outlines = on(drawing, 'CUT_OUTSIDE');
    expect(outlines).toHaveLength(FACE.placed.length);
    const boxes = outlines.map((s) => (s.kind === 'path' ? pathBox(s.path) : []));
    expect(boxes).toEqual([
      [6, 6, 106, 26],
      [6, 32, 106, 52],
      [112, 6, 212, 26],
    ]);
    for (const s of outlines) {
      const bulges = s.kind === 'path' ? s.path.vertices.map((v) => v.bulge) : [];
      expect(bulges).toEqual([0, 1, 0, 1]);
    }
  });

  it('marks datum line, hanger, and the hole in side view: axis, two walls, end', () => {
    // 1 + 1 + 4 lines for each of three blanks
    expect(on(drawing, 'MARK')).toHaveLength(18);
    const first = lines(drawing, 'MARK').slice(0, 6);
    expect(first.map(([a, b]) => [a.x, a.y, b.x, b.y])).toEqual([
      [6, 16, 106, 16],
      [56, 6, 56, 10],
      [32, 6, 32, 18],
      [36, 6, 36, 18],
      [40, 6, 40, 18],
      [32, 18, 40, 18],
    ]);
  });

  it('draws the block, its margin dashed, and each knot once', () => {
    const [block, margin, ...knots] = on(drawing, 'STOCK');
    expect(block.kind === 'path' && pathBox(block.path)).toEqual([0, 0, 230, 60]);
    expect(block.dashed).toBeUndefined();
    expect(margin.kind === 'path' && pathBox(margin.path)).toEqual([5, 5, 225, 55]);
    expect(margin.dashed).toBe(true);
    expect(knots).toEqual([
      { kind: 'circle', layer: 'STOCK', circle: { center: [220, 50], radius: 4 } },
    ]);
    expect(on(faceDrawing({ ...FACE, marginMm: 0 }).drawing, 'STOCK')).toHaveLength(2);
  });

  it('draws splits and poor zones each in a way of its own, and says what they mean', () => {
    const flawed = faceDrawing({
      ...FACE,
      knots: [],
      splits: [{ fromMm: [10, 57], toMm: [60, 57], widthMm: 2 }],
      poorZones: [{ center: [215, 10], radius: 8 }],
    }).drawing;
    const [, , outline, middle, outer, inner] = on(flawed, 'STOCK');
    expect(outline.kind === 'path' && pathBox(outline.path)).toEqual([9, 56, 61, 58]);
    expect(middle.kind === 'path' && pathBox(middle.path)).toEqual([10, 57, 60, 57]);
    expect([outer, inner].map((s) => s.kind === 'circle' && s.circle.radius)).toEqual([8, 7]);
    expect([outer.dashed, inner.dashed]).toEqual([true, true]);
    expect(flawed.description).toContain('SPLITS: LONG OUTLINES');
    expect(flawed.description).toContain('THE FIRST 35 % FROM THE NOSE');
    expect(checkDrawing(flawed)).toEqual([]);
    expect(dxf(flawed)).toContain('POLYLINE');
    expect(drawing.description).not.toContain('SPLITS');
  });

  it('tells block, count and kerf', () => {
    expect(drawing.description).toContain('BLOCK 230 X 60 X 20 MM, MARGIN 5 MM, 4 MM BETWEEN');
    expect(drawing.description).toContain('3 OUTLINES X 2 LAYERS X 3 STACKS = 18 BLANKS');
    expect(drawing.description).toContain('KERF NOT INCLUDED');
    expect(faceDrawing({ ...FACE, kerfMm: 0.2 }).drawing.description).toContain(
      'KERF 0.2 MM INCLUDED',
    );
  });

  it('labels every blank, has nothing to complain about, and can be written', () => {
    expect(unlabeled).toEqual([]);
    const letters = on(drawing, 'LABEL').length;
    expect(letters % 3).toBe(0);
    expect(letters).toBeGreaterThan(3 * 14);
    expect(checkDrawing(drawing)).toEqual([]);
    expect(dxf(drawing)).toContain('CIRCLE');
    expect(svg(drawing)).toContain('stroke-dasharray');
  });

  it('marks a lip slot that is not cut: two walls and the inner end, width apart', () => {
    const blank = lureBlank();
    const cuts = [outlineCut(blank.profile.path)];
    const work = { blank, cuts, slotIsCut: false, label: 'SKERRY 110 V1.3' };
    const placed = [{ work, motion: { turnDeg: 0, move: [10, 25] } }] as const;
    const marked = faceDrawing({ ...FACE, placed, knots: [] }).drawing;
    expect(checkDrawing(marked)).toEqual([]);
    const [, , end] = lines(marked, 'MARK').slice(-3);
    expect(Math.hypot(end[1].x - end[0].x, end[1].y - end[0].y)).toBeCloseTo(1.6, 6);
    const cut = { ...work, cuts: [outlineCut(blank.outline.path)], slotIsCut: true };
    const notched = faceDrawing({ ...FACE, placed: [{ ...placed[0], work: cut }], knots: [] });
    expect(lines(marked, 'MARK').length - lines(notched.drawing, 'MARK').length).toBe(3);
    expect(checkDrawing(notched.drawing)).toEqual([]);
  });

  it('names each kind of blank without room for a label once', () => {
    const long = {
      ...stadium,
      label: 'A NAME THAT IS MUCH TOO LONG FOR ANY LURE OF THAT LENGTH V1',
    };
    const placed = FACE.placed.map(({ motion }) => ({ work: long, motion }));
    expect(faceDrawing({ ...FACE, placed }).unlabeled).toEqual(['stadium']);
  });
});

describe('a face with its plan of cuts', () => {
  const cuts: FaceCuts = {
    entryPaths: [
      [
        [0, 16],
        [5.4, 16],
        [6, 16],
      ],
      [
        [0, 42],
        [5.4, 42],
        [6, 42],
      ],
      [
        [150, 0],
        [150, 5.4],
        [150, 6],
      ],
    ],
    partingCuts: [
      [
        [109, 0],
        [109, 60],
      ],
    ],
    reliefCuts: [],
    sharedLines: [],
    cutOrder: [1, 0, 2],
    kerfMm: 1.2,
  };
  const { drawing } = faceDrawing({ ...FACE, cuts });
  const route = on(drawing, 'SAW_ROUTE');

  it('for a steered saw: ways broken, without their last piece, and the parting cut', () => {
    const broken = route.filter((s) => s.dashed);
    expect(broken.map((s) => s.kind === 'path' && pathBox(s.path))).toEqual([
      [0, 16, 5.4, 16],
      [0, 42, 5.4, 42],
      [150, 0, 150, 5.4],
      [109, 0, 109, 60],
    ]);
    expect(checkDrawing(drawing)).toEqual([]);
  });

  it('numbers every blank in its wood, in the order, and letters the parting cut beside it', () => {
    const rings = route.flatMap((s) => (s.kind === 'circle' ? [s.circle] : []));
    expect(rings).toHaveLength(4);
    const [first, second, third, letter] = rings.map((r) => r.center);
    expect(first[1]).toBeGreaterThan(32);
    expect(second[1]).toBeLessThan(26);
    expect(third[0]).toBeGreaterThan(112);
    expect(Math.abs(letter[0] - 109)).toBeLessThan(8);
    for (const { center, radius } of rings)
      for (const other of rings)
        if (other.center !== center)
          expect(distance(center, other.center)).toBeGreaterThan(radius + other.radius);
  });

  it('numbers keep clear of splits and poor zones, on tilted blanks too', () => {
    const tilted = FACE.placed.map(({ work, motion }) => ({
      work,
      motion: { ...motion, turnDeg: motion.turnDeg + 1 },
    }));
    const bare = faceDrawing({ ...FACE, placed: tilted, cuts }).drawing;
    const numbered = on(bare, 'SAW_ROUTE').flatMap((s) => (s.kind === 'circle' ? [s.circle] : []));
    // Flaws where the signs would stand: a zone over the first number, a split over the letter.
    const [first] = numbered;
    const letter = numbered[numbered.length - 1];
    const [x, y] = letter.center;
    const flawed = faceDrawing({
      ...FACE,
      placed: tilted,
      splits: [{ fromMm: [x, y], toMm: [x + 1, y], widthMm: 1 }],
      poorZones: [{ center: first.center, radius: first.radius }],
      cuts,
    }).drawing;
    expect(checkDrawing(flawed)).toEqual([]);
    const moved = on(flawed, 'SAW_ROUTE').flatMap((s) => (s.kind === 'circle' ? [s.circle] : []));
    expect(moved).toHaveLength(numbered.length);
    expect(distance(moved[0].center, first.center)).toBeGreaterThan(first.radius);
    const sign = moved[moved.length - 1];
    expect(distance(sign.center, letter.center)).toBeGreaterThan(sign.radius);
  });

  it('ways that run together are one line', () => {
    const shared = [
      [0, 29],
      [60, 29],
    ] as const;
    const entryPaths = [
      [...shared, [60, 26.6], [60, 26]],
      [...shared, [60, 31.4], [60, 32]],
      cuts.entryPaths[2],
    ] as FaceCuts['entryPaths'];
    const both = faceDrawing({ ...FACE, cuts: { ...cuts, entryPaths } }).drawing;
    const broken = on(both, 'SAW_ROUTE').filter((s) => s.dashed);
    expect(broken).toHaveLength(4);
    expect(() => dxf(both)).not.toThrow();
    expect(checkDrawing(both)).toEqual([]);
  });

  it('for a tool that follows: contours in the order of cutting, begun at the lead-in, no ways', () => {
    const { drawing: followed } = faceDrawing({ ...FACE, kerfMm: 0.2, cuts });
    expect(on(followed, 'SAW_ROUTE')).toEqual([]);
    const outlines = lines(followed, 'CUT_OUTSIDE');
    const lefts = outlines.map((vertices) => Math.min(...vertices.map((v) => v.x)));
    expect(lefts).toEqual([16, 16, 122]);
    expect(outlines[0][0].y).toBeGreaterThan(26);
    // The lead-in of the first placement ends at (5.4, 16): nearest is the lower or upper left vertex.
    expect(outlines[1][0].x).toBe(16);
  });

  it('a line that is cut already is left out of the later contour', () => {
    const touching = {
      ...FACE,
      placed: [FACE.placed[0], { ...FACE.placed[1], motion: { turnDeg: 180, move: [106, 36] } }],
      kerfMm: 0.2,
      cuts: {
        ...cuts,
        entryPaths: cuts.entryPaths.slice(0, 2),
        partingCuts: [],
        cutOrder: [0, 1],
        sharedLines: [
          {
            placement: 1,
            path: [
              [16, 26],
              [96, 26],
            ],
          },
        ],
      },
    } as FaceWork;
    const { drawing: once } = faceDrawing(touching);
    const [whole, open] = on(once, 'CUT_OUTSIDE');
    expect(whole.kind === 'path' && whole.path.closed).toBe(true);
    expect(open.kind === 'path' && [open.path.closed, open.joined]).toEqual([false, true]);
    expect(checkDrawing(once)).toEqual([]);
  });
});
