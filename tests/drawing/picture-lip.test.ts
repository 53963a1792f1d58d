import { describe, expect, test } from 'vitest';
import type { DrawnLip } from '../../src/drawing/picture/input.js';
import { seenLip } from '../../src/drawing/picture/seen-lip.js';
import { frontView, sideView } from '../../src/drawing/picture/view.js';
import { signedArea } from '../../src/geometry/ring.js';
import type { Point2, Point3 } from '../../src/geometry/vec.js';

/** A T of plate 1.5 mm thick: a tab 8 wide and 10 long, then 20 wide to 30; leaning ahead by an angle. */
const tee: readonly Point2[] = [
  [-4, 0],
  [4, 0],
  [4, 10],
  [10, 10],
  [10, 30],
  [-10, 30],
  [-10, 10],
  [-4, 10],
];
const hole: readonly Point2[] = [
  [-1, 15],
  [1, 15],
  [1, 17],
  [-1, 17],
];
function leaning(angleDeg: number): DrawnLip {
  const a = (angleDeg * Math.PI) / 180;
  const at = (along: number, across: number): Point2 => [
    20 - along * Math.cos(a) + across * Math.sin(a),
    -along * Math.sin(a) - across * Math.cos(a),
  ];
  const corners = [at(0, -0.75), at(30, -0.75), at(30, 0.75), at(0, 0.75)];
  return { corners, widthMm: 20, face: { outline: tee, hole } };
}
const UP: Point3 = [0, 0, 1];
const area = (points: readonly Point2[]) => Math.abs(signedArea(points));

describe('a plate with a tab', () => {
  test.each([90, 40, 15])(
    'from ahead, at %d°: its face foreshortened, and the thickness under it',
    (angleDeg) => {
      const { outline, hole: seen } = seenLip(leaning(angleDeg), frontView(UP));
      const [s, c] = [Math.sin, Math.cos].map((f) => f((angleDeg * Math.PI) / 180));
      // The face times the sine, and 1.5 mm times the cosine along all edges that look up: 20 mm in all.
      expect(area(outline)).toBeCloseTo((8 * 10 + 20 * 20) * s + 1.5 * c * 20, 4);
      expect(area(seen)).toBeCloseTo(4 * s, 9);
    },
  );

  test('from the side: the rectangle of its edge, no hole', () => {
    const { outline, hole: seen } = seenLip(leaning(40), sideView(UP));
    expect(area(outline)).toBeCloseTo(30 * 1.5, 9);
    expect(seen).toEqual([]);
  });

  test('without a face, the hull of its corners from anywhere', () => {
    const { outline } = seenLip({ ...leaning(90), face: null }, frontView(UP));
    expect(area(outline)).toBeCloseTo(20 * 30, 9);
  });
});
