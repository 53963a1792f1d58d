/** Paper that is too small, with numbers by hand; rooms of A4 as in tiling.test.ts. */
import { describe, expect, test } from 'vitest';
import { tell } from '../../src/messages.js';
import { paperProblems, type Whole } from '../../src/paper/problems.js';
import { type Paper, paperOf } from '../../src/pattern/paper.js';
import { A4, LEAFLET } from './sample.js';

const station = (high: number): Whole => ({
  leaflet: LEAFLET,
  part: 'The deepest station of skerry',
  sizeMm: [30, high],
  isJoined: true,
});
const gauge = (wide: number, high: number): Whole => ({
  leaflet: LEAFLET,
  part: 'Section gauge 1 of skerry',
  sizeMm: [wide, high],
  isJoined: false,
});
const codes = (paper: Paper, ...wholes: Whole[]) => paperProblems(paper, wholes).map((p) => p.code);
const sized = (sizeMm: [number, number], marginMm = 8, overlapMm = 10) =>
  paperOf({ sizeMm, marginMm, overlapMm }).paper;

describe('too small', () => {
  test('a station higher than what a joined page shows, upright or turned', () => {
    expect(codes(A4, station(248))).toEqual([]);
    expect(codes(A4, station(249))).toEqual(['paper-too-small']);
    expect(codes(paperOf(undefined, { size: 'A3' }).paper, station(249))).toEqual([]);
  });

  test('a gauge that fits neither way round', () => {
    expect(codes(A4, gauge(190, 250))).toEqual([]);
    expect(codes(A4, gauge(280, 170))).toEqual([]);
    expect(codes(A4, gauge(280, 180))).toEqual(['paper-too-small']);
  });

  test('a sheet, or a margin, that leaves no room for the bars', () => {
    // 4 in and its name take 121 mm, the line along beside them 10 more.
    expect(codes(sized([147, 200]))).toEqual(['paper-too-small']);
    expect(codes(sized([148, 200]))).toEqual([]);
    // What is said on the page that measures the printer takes 160 mm.
    expect(codes(sized([300, 176]))).toEqual(['paper-too-small']);
    expect(codes(sized([300, 177]))).toEqual([]);
    expect(codes(paperOf({ marginMm: 40, overlapMm: 10 }).paper)).toEqual(['paper-too-small']);
  });

  test('tells what needs room, how much there is, and what to do', () => {
    const [{ code, facts }, ...others] = paperProblems(A4, [station(260), gauge(300, 300)]);
    expect(others).toEqual([]);
    expect(tell(code, { ...facts, enough: 'A3' })).toEqual({
      severity: 'error',
      what: 'Section gauge 1 of skerry is 300 × 300 mm with the room it needs.',
      limit:
        'The drawing’s part of a page is 193 × 258 mm upright, 280 × 171 mm turned, on 210 × 297 mm with 8 mm left white.',
      from: 'paper.size and paper.marginMm, less the bars and words that stand on every page',
      fix: 'Take a larger size (A3), or a smaller margin if the printer can.',
    });
  });
});

describe('an overlap', () => {
  test('may be half of what the narrower side shows, and no more', () => {
    // 183.6 mm upright: at most 91.
    const wide = (overlapMm: number) => paperOf({ marginMm: 8, overlapMm }).paper;
    expect(codes(wide(91), station(30))).toEqual([]);
    const [{ code, facts }] = paperProblems(wide(92), [station(30)]);
    expect(code).toBe('paper-overlap-too-wide');
    expect(facts).toMatchObject({ overlapMm: 92, limitMm: 91 });
  });
});
