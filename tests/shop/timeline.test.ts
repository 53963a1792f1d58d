/** A batch over bench days and nights, by hand. */
import { describe, expect, test } from 'vitest';
import type { Task } from '../../src/shop/tasks.js';
import { timelineOf } from '../../src/shop/timeline.js';

const task = (changed: Partial<Task>): Task => ({
  step: 'sand',
  finish: null,
  minutes: 0,
  pots: null,
  waitHours: 0,
  cureHours: 0,
  ...changed,
});
const coat = (finish: number, pots: readonly number[], changed: Partial<Task> = {}): Task =>
  task({ step: 'coat', finish, pots, minutes: pots.reduce((s, p) => s + p, 0), ...changed });

const told = (tasks: readonly Task[], hours = 6) =>
  timelineOf(tasks, hours).map((s) => [
    s.step,
    s.kind,
    s.day,
    Math.round(s.startH * 60),
    Math.round(s.endH * 60),
  ]);

test('work stops at the end of the bench day and goes on the next', () => {
  expect(told([task({ minutes: 800 })])).toEqual([
    ['sand', 'work', 1, 0, 360],
    ['sand', 'work', 2, 1440, 1800],
    ['sand', 'work', 3, 2880, 2960],
  ]);
});

test('the next step goes on at once in what is left of the day, and never for no time', () => {
  expect(told([task({ minutes: 360 }), task({ step: 'rig', minutes: 5 })])).toEqual([
    ['sand', 'work', 1, 0, 360],
    ['rig', 'work', 2, 1440, 1445],
  ]);
});

test('what cools is waited for by the bench; over night it costs nothing', () => {
  expect(told([task({ step: 'pour', minutes: 30, waitHours: 1 }), task({ minutes: 10 })])).toEqual([
    ['pour', 'work', 1, 0, 30],
    ['pour', 'wait', 1, 30, 90],
    ['sand', 'work', 1, 90, 100],
  ]);
  expect(
    told([task({ step: 'glue', minutes: 300, waitHours: 12 }), task({ minutes: 10 })]),
  ).toEqual([
    ['glue', 'work', 1, 0, 300],
    ['glue', 'wait', 1, 300, 1020],
    ['sand', 'work', 2, 1440, 1450],
  ]);
});

describe('coats', () => {
  test('one that no longer fits the day is begun in the morning', () => {
    // 300 min of sanding leave 60; the coat takes 80.
    expect(told([task({ minutes: 300 }), coat(0, [40, 40], { waitHours: 8 })])).toEqual([
      ['sand', 'work', 1, 0, 300],
      ['coat', 'work', 2, 1440, 1520],
      ['coat', 'wait', 2, 1520, 2000],
    ]);
  });

  test('one longer than a day is begun at once; no pot is left over night', () => {
    // 60 min left: one pot of 50. Then 7 of 50 in a day of 360, and the last two.
    expect(told([task({ minutes: 300 }), coat(0, Array(10).fill(50))])).toEqual([
      ['sand', 'work', 1, 0, 300],
      ['coat', 'work', 1, 300, 350],
      ['coat', 'work', 2, 1440, 1790],
      ['coat', 'work', 3, 2880, 2980],
    ]);
  });

  test('the next coat waits until this one is dry, rigging until every coat is cured', () => {
    const line = [
      coat(0, [60], { waitHours: 2, cureHours: 50 }),
      coat(1, [60], { waitHours: 2, cureHours: 24 }),
      task({ step: 'rig', minutes: 10 }),
    ];
    // The first is done at 60 and cured at 3060; the second at 240, dry at 360, cured at 1680.
    expect(told(line)).toEqual([
      ['coat', 'work', 1, 0, 60],
      ['coat', 'wait', 1, 60, 180],
      ['coat', 'work', 1, 180, 240],
      ['coat', 'wait', 1, 240, 3060],
      ['rig', 'work', 3, 3060, 3070],
    ]);
  });

  test('out of a tin it may stop anywhere, once it is longer than a day', () => {
    const tin = task({ step: 'coat', finish: 0, minutes: 400 });
    expect(told([task({ minutes: 300 }), tin])).toEqual([
      ['sand', 'work', 1, 0, 300],
      ['coat', 'work', 1, 300, 360],
      ['coat', 'work', 2, 1440, 1780],
    ]);
  });
});

test('a bench that never closes has no nights', () => {
  expect(told([task({ minutes: 1500 })], 24)).toEqual([
    ['sand', 'work', 1, 0, 1440],
    ['sand', 'work', 2, 1440, 1500],
  ]);
});
