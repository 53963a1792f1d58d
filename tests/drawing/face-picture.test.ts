import { describe, expect, test } from 'vitest';
import { checkPicture } from '../../src/drawing/picture/check.js';
import { type FaceInput, facePicture } from '../../src/drawing/picture/face-picture.js';
import { LEAST_TEXT_MM } from '../../src/drawing/picture/picture.js';
import { insideRing, type Ring, ring } from '../../src/geometry/ring.js';
import { distanceToEdge, type Point2 } from '../../src/geometry/vec.js';

const oval = (x: number, y: number, length: number, height: number): Ring =>
  ring(
    Array.from({ length: 60 }, (_, i): Point2 => {
      const a = (2 * Math.PI * i) / 60;
      return [x + (length / 2) * Math.cos(a), y + (height / 2) * Math.sin(a)];
    }),
  );

const FACE: FaceInput = {
  id: 2,
  lengthMm: 420,
  widthMm: 92,
  knots: [{ xMm: 5, yMm: 3, radiusMm: 9 }],
  splits: [{ fromMm: [400, 40], toMm: [430, 60], widthMm: 4 }],
  poorZones: [{ xMm: 210, yMm: 46, radiusMm: 60 }],
  outlines: [
    { name: 'skerry', points: oval(60, 25, 100, 26) },
    { name: 'ghyll', points: oval(180, 60, 125, 22) },
    { name: 'holm', points: oval(300, 30, 85, 33) },
  ],
  cutOrder: [2, 0, 1],
  ways: [
    [
      [60, 0],
      [60, 12],
    ],
  ],
  partingCuts: [
    [
      [240, 0],
      [250, 92],
    ],
  ],
};
const scale = 184 / 420; // 1 mm of white on either side of 186

describe('a face as the sawyer looks at it', () => {
  const picture = facePicture(FACE);
  const texts = picture.shapes.filter((s) => s.kind === 'text');

  test('fits a page of A4 between its margins, and nothing is wrong with it', () => {
    expect(picture.widthMm).toBe(186);
    // 92 mm of block at the scale, 1 mm of white at either side, 7 mm for the letters of cuts
    expect(picture.heightMm).toBeCloseTo(92 * scale + 9, 9);
    expect(checkPicture(picture)).toEqual([]);
  });

  test('each outline has its place in the order of sawing, and its name', () => {
    FACE.cutOrder.forEach((index, place) => {
      const outline = FACE.outlines[index].points.map(
        ([x, y]): Point2 => [1 + scale * x, 1 + scale * y],
      );
      const inside = texts.filter((t) => insideRing(t.at, outline)).map((t) => t.text);
      expect(inside.sort()).toEqual([String(place + 1), FACE.outlines[index].name]);
    });
  });

  test('a number stands in a ring that stays inside its outline', () => {
    const rings = picture.shapes.filter((s) => s.kind === 'disc');
    expect(rings).toHaveLength(3);
    for (const { center, radiusMm } of rings) {
      const own = FACE.outlines
        .map((o) => o.points.map(([x, y]): Point2 => [1 + scale * x, 1 + scale * y]))
        .find((o) => insideRing(center, o));
      expect(own && distanceToEdge(center, own)).toBeGreaterThan(radiusMm);
    }
  });

  test('parting cuts have their letters over the block', () => {
    const [letter] = texts.filter((t) => t.text === 'A');
    expect(letter.at[0]).toBeCloseTo(1 + scale * 250, 6);
    expect(letter.at[1]).toBeGreaterThan(1 + scale * 92);
  });
});

test('outlines too small for a number of readable size have none', () => {
  const small = { name: 'fry', points: oval(200, 40, 60, 6) };
  const picture = facePicture({
    ...FACE,
    lengthMm: 1200,
    outlines: [small],
    cutOrder: [0],
    ways: [],
  });
  expect(picture.shapes.filter((s) => s.kind === 'text').map((t) => t.text)).toEqual(['A']);
  expect(checkPicture(picture)).toEqual([]);
});

test('numbers are never smaller than what is read at arm’s length', () => {
  for (const height of [8, 12, 16, 24, 40]) {
    const outlines = [{ name: 'skerry', points: oval(200, 45, 2.5 * height, height) }];
    const picture = facePicture({ ...FACE, outlines, cutOrder: [0], ways: [], partingCuts: [] });
    for (const s of picture.shapes)
      if (s.kind === 'text') expect(s.sizeMm).toBeGreaterThanOrEqual(LEAST_TEXT_MM);
    expect(checkPicture(picture)).toEqual([]);
  }
});
