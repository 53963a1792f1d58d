import { describe, expect, test } from 'vitest';
import { depthFor } from '../../src/ballast/depth-for.js';
import { withHoles } from '../../src/ballast/workpiece.js';
import { hole, patternOf, pieceOf } from './pieces.js';

const pattern = patternOf();
const planned = pieceOf(pattern, 358);
const two = [
  hole({ stationMm: 30, depthMm: 10 }),
  hole({ stationMm: 41, diameterMm: 6, depthMm: 12 }),
];
const goalG = withHoles(planned, two).massG;

test('the board that was planned needs no change', () => {
  const answer = depthFor(planned, two, goalG);
  if (answer.kind !== 'depths') throw new Error(answer.kind);
  expect(answer.changeMm).toBeCloseTo(0, 9);
  expect(answer.holes).toEqual(two);
});

describe.each([300, 340, 385, 420])('a board of %d kg/m³', (kgM3) => {
  const piece = pieceOf(pattern, kgM3);
  const answer = depthFor(piece, two, goalG);

  test('gets the lure to its weight, all holes changed alike', () => {
    if (answer.kind !== 'depths') throw new Error(answer.kind);
    const exact = two.map((h) => ({ ...h, depthMm: h.depthMm + answer.changeMm }));
    expect(withHoles(piece, exact).massG).toBeCloseTo(goalG, 8);
    // A twentieth of a mm in both holes is at most 0.05 g.
    expect(Math.abs(answer.massG - goalG)).toBeLessThan(0.05);
    expect(withHoles(piece, answer.holes).massG).toBe(answer.massG);
    answer.holes.forEach((h, i) => {
      expect(h.depthMm).toBeCloseTo(two[i].depthMm + answer.changeMm, 0);
      expect(h.stationMm).toBe(two[i].stationMm);
    });
  });

  test('deeper where it is lighter', () => {
    if (answer.kind !== 'depths') throw new Error(answer.kind);
    expect(Math.sign(answer.changeMm)).toBe(Math.sign(358 - kgM3));
  });
});

test('too light: through the back; too heavy: no metal left', () => {
  const why = (kgM3: number) => {
    const one = [hole({})];
    const answer = depthFor(pieceOf(pattern, kgM3), one, withHoles(planned, one).massG);
    return answer.kind === 'refused' ? answer.refusal.why : answer.kind;
  };
  expect(why(60)).toBe('through-back');
  expect(why(700)).toBe('sanded-into');
});

test('weights keep their depth, poured holes take it all', () => {
  const slug = hole({ stationMm: 28, diameterMm: 6, depthMm: 11, weight: 'lead-2g' });
  const mixed = [slug, hole({ stationMm: 40 })];
  const answer = depthFor(pieceOf(pattern, 385), mixed, withHoles(planned, mixed).massG);
  if (answer.kind !== 'depths') throw new Error(answer.kind);
  expect(answer.holes[0]).toEqual(slug);
  expect(answer.holes[1].depthMm).toBeLessThan(14);
  expect(depthFor(planned, [slug], 20)).toEqual({ kind: 'nothing-to-change' });
  expect(depthFor(planned, [hole({ fillMm: 5 })], 20)).toEqual({ kind: 'nothing-to-change' });
});

test('a tilted hole keeps its tilt, and takes the depth along its axis', () => {
  const leaning = [hole({ stationMm: 34, tiltDeg: 25 })];
  const answer = depthFor(pieceOf(pattern, 385), leaning, withHoles(planned, leaning).massG);
  if (answer.kind !== 'depths') throw new Error(answer.kind);
  expect(answer.holes).toEqual([{ ...leaning[0], depthMm: answer.holes[0].depthMm }]);
  const square = [hole({ stationMm: 34 })];
  const other = depthFor(pieceOf(pattern, 385), square, withHoles(planned, square).massG);
  if (other.kind !== 'depths') throw new Error(other.kind);
  // As much metal for as much missing weight; the holes differ by what their mouths hold.
  expect(answer.changeMm).toBeCloseTo(other.changeMm, 1);
});
