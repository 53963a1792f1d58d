import { describe, expect, test } from 'vitest';
import type { BallastHole, Blank } from '../../src/blank/blank.js';
import { holeMarks, woodOf } from '../../src/drawing/marks.js';
import { templateOpenings } from '../../src/drawing/openings.js';
import { seenLure } from '../../src/drawing/picture/seen-lure.js';
import { sideView } from '../../src/drawing/picture/view.js';
import { templateInk } from '../../src/drawing/template.js';
import { distance, type Point2, turned } from '../../src/geometry/vec.js';
import { ellipsoid } from '../mass/lures.js';
import { holeCut, outlineCut, stadiumBlank } from './sample.js';

const [S, C] = [Math.sin(Math.PI / 6), Math.cos(Math.PI / 6)];

/** The stadium’s hole, leaning 30° aft: 8 mm wide and 12 deep from (30, −10). */
const leaning: BallastHole = { ...stadiumBlank().holes[0], tiltDeg: 30 };
const blank: Blank = { ...stadiumBlank(), holes: [leaning] };
const along = (deepMm: number, acrossMm = 0): Point2 => [
  30 + deepMm * S + acrossMm * C,
  -10 + deepMm * C - acrossMm * S,
];
const same = (p: Point2, q: Point2): void => expect(distance(p, q)).toBeLessThan(1e-9);

describe('a hole that leans', () => {
  test('on a face: axis, walls from the belly edge, floor square to them', () => {
    const { wood } = woodOf(blank, true);
    const [left, axis, right, floor] = holeMarks(leaning, wood);
    // A wall so far from the axis meets the flat belly 4 tan 30° deeper or less deep.
    const rise = (4 * S) / C;
    same(left[0], along(-rise, -4));
    same(left[1], along(12, -4));
    same(axis[0], along(0));
    same(axis[1], along(12));
    same(right[0], along(rise, 4));
    same(right[1], along(12, 4));
    same(floor[0], along(12, -4));
    same(floor[1], along(12, 4));
  });

  test('on a template: the pencil hole on the axis at half the depth, and the axis up to it', () => {
    const sizes = { pencilDiameterMm: 2, hangDiameterMm: 0, webMm: 2 };
    const [pencil] = templateOpenings(blank, sizes).pencils;
    if (!pencil) throw new Error('no pencil hole');
    same(pencil.center, along(6));
    const cuts = [outlineCut(blank.outline.path), holeCut(pencil)];
    const { marks } = templateInk({ blank, cuts, slotIsCut: true, label: 'STADIUM' });
    const axis = marks.find(([from]) => distance(from, [30, -10]) < 1e-9);
    if (!axis) throw new Error('no axis');
    // It stops at the opening, a polygon of 64 sides about the circle.
    const [x, y] = axis[1];
    expect(Math.abs((x - 30) * C - (y + 10) * S)).toBeLessThan(1e-9);
    expect(distance(axis[1], along(6))).toBeCloseTo(1, 2);
  });

  test('in the picture of the lure: its floor and its tip where the bit leaves them', () => {
    const [placeMm, mouth] = turned([40, -12 * Math.sqrt(1 - 0.2 ** 2)], 30);
    const hole = {
      tiltDeg: 30,
      placeMm,
      diameterMm: 8,
      floorMm: mouth + 10,
      bellyMm: mouth + 4,
      metalDiameterMm: null,
      pointAngleDeg: 90,
    };
    const lure = {
      shape: ellipsoid(50, 10, 12),
      cgMm: [50, 0, 0],
      lip: null,
      eyes: [],
      holes: [hole],
    } as const;
    const { holes } = seenLure(lure, sideView([0, 0, 1]));
    const has = (outline: readonly Point2[], p: Point2) =>
      Math.min(...outline.map((q) => distance(p, q)));
    const deep = (mm: number, acrossMm: number) => turned([placeMm + acrossMm, mouth + mm], -30);
    for (const [[outline], low] of [
      [holes[0].bore, 0],
      [holes[0].metal, 4],
    ] as const) {
      for (const corner of [deep(10, -4), deep(10, 4), deep(14, 0)])
        expect(has(outline, corner)).toBeLessThan(1e-6);
      // Nothing of it is outside the bit, and the axis leaves it where metal or belly begins.
      for (const p of outline) {
        const [across, along] = turned(p, 30);
        expect(Math.abs(across - placeMm)).toBeLessThan(4 + 1e-6);
        expect(along - mouth).toBeGreaterThan(low - 4);
      }
    }
  });
});
