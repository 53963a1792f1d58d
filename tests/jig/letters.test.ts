import { describe, expect, test } from 'vitest';
import { meshBox } from '../../src/geometry/mesh.js';
import { ringArea, ringBox } from '../../src/geometry/ring.js';
import { type Face, grooves, placed } from '../../src/jig/letters.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { sectionsAt } from '../../src/solid/measure.js';
import { drillStopSetup } from './set-ups.js';

const { letters } = drillStopSetup;
const kernel = await loadKernel();
const top: Face = {
  name: 'top',
  origin: [0, 0, 10],
  right: [1, 0, 0],
  up: [0, 1, 0],
  out: [0, 0, 1],
};
const room = (right: number, topEdge: number) => ({ left: 0, right, bottom: 0, top: topEdge });
const place = (...rooms: ReturnType<typeof room>[]) => [{ face: top, rooms }];

describe('placing', () => {
  test('as large as the set-up says when there is room', () => {
    const { sunk, leftOut } = placed(
      [{ breaks: [['D8 L40.0']], places: place(room(100, 20)) }],
      letters,
    );
    expect(leftOut).toEqual([]);
    expect(sunk[0].heightMm).toBe(letters.heightMm);
    const { box } = sunk[0];
    expect((box.left + box.right) / 2).toBeCloseTo(50, 9);
    expect(box.top - box.bottom).toBeCloseTo(letters.heightMm + letters.strokeMm, 9);
  });

  test('smaller in a small room, left out in one too small', () => {
    const inRoom = (width: number) =>
      placed([{ breaks: [['D8 L40.0']], places: place(room(width, 20)) }], letters);
    const [shrunk] = inRoom(28).sunk;
    expect(shrunk.heightMm).toBeLessThan(letters.heightMm);
    expect(shrunk.heightMm).toBeGreaterThanOrEqual(letters.leastHeightMm);
    expect(shrunk.box.right - shrunk.box.left).toBeCloseTo(26, 9);
    expect(inRoom(15)).toEqual({ sunk: [], leftOut: ['D8 L40.0'] });
  });

  test('broken into lines where that makes it larger', () => {
    const breaks = [['LURE V1'], ['LURE', 'V1']];
    const [one] = placed([{ breaks, places: place(room(40, 8)) }], letters).sunk;
    const [two] = placed([{ breaks, places: place(room(22, 30)) }], letters).sunk;
    expect([one.lines.length, two.lines.length]).toEqual([1, 2]);
    expect(two.text).toBe('LURE V1');
  });

  test('never over another text; the next place is taken instead', () => {
    const under: Face = { ...top, name: 'under', origin: [0, 0, 0] };
    const wish = {
      breaks: [['ABC']],
      places: [...place(room(30, 9)), { face: under, rooms: [room(30, 9)] }],
    };
    const { sunk, leftOut } = placed([wish, wish, wish], letters);
    expect(sunk.map((s) => s.face.name)).toEqual(['top', 'under']);
    expect(leftOut).toEqual(['ABC']);
  });
});

describe('raised letters', () => {
  const wish = { breaks: [['L']], places: place(room(30, 12)), raised: true as const };
  const { sunk } = placed([wish], letters);
  const [panel, ...others] = grooves(sunk, letters);

  test('stand in a panel as deep as the others are sunk, level with the face', () => {
    expect(others).toEqual([]);
    const [min, max] = meshBox(evaluate(kernel, panel));
    expect(min[2]).toBeCloseTo(10 - letters.depthMm, 5);
    const { box } = sunk[0];
    expect([min[0], min[1], max[0], max[1]]).toEqual(
      [box.left, box.bottom, box.right, box.top].map((v) => expect.closeTo(v, 5)),
    );
    // Of the panel everything is cut but the letter, from the panel's floor up to the face and on.
    const [floor, face] = sectionsAt(kernel, panel, [10 - letters.depthMm / 2, 10.5]);
    for (const [region, ...more] of [floor, face]) {
      expect(more).toEqual([]);
      expect(region.holes.length).toBe(1);
    }
  });

  test('the letter that stays is as wide as its stroke and as high as is told', () => {
    const [[{ holes }]] = sectionsAt(kernel, panel, [10]);
    const [, low, , high] = ringBox(holes[0]);
    expect(high - low).toBeCloseTo(sunk[0].heightMm + letters.strokeMm, 1);
    // An L: a stem and a foot, each a stroke wide.
    const [left, , right] = ringBox(holes[0]);
    const ink = (high - low + right - left - letters.strokeMm) * letters.strokeMm;
    expect(ringArea(holes[0]) / ink).toBeGreaterThan(0.93);
    expect(ringArea(holes[0]) / ink).toBeLessThanOrEqual(1);
  });
});

test('full height in a later place goes before small letters in an earlier one', () => {
  const side: Face = { ...top, name: 'side' };
  const places = [...place(room(20, 9)), { face: side, rooms: [room(60, 9)] }];
  const [set] = placed([{ breaks: [['D8 L40.0']], places }], {
    ...letters,
    leastHeightMm: 2,
  }).sunk;
  expect(set.face.name).toBe('side');
  expect(set.heightMm).toBe(letters.heightMm);
});

test('the cutter goes as deep as the set-up says and reads the right way round from outside', () => {
  const { sunk } = placed([{ breaks: [['L']], places: place(room(30, 9)) }], letters);
  const [cutter, ...others] = grooves(sunk, letters);
  expect(others).toEqual([]);
  const [min, max] = meshBox(evaluate(kernel, cutter));
  expect(min[2]).toBeCloseTo(10 - letters.depthMm, 5);
  expect(max[2]).toBeGreaterThan(10);
  // An L has its foot low, and its stem left of the middle: of its points more lie low and left.
  const [[letter]] = sectionsAt(kernel, cutter, [10]);
  const [cx, cy] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  expect(letter.outer.every(([x, y]) => x < cx || y < cy)).toBe(true);
});
