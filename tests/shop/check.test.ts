/** The check finds nothing in what is made, of any lure, and complains of each damage. */
import { describe, expect, test } from 'vitest';
import { checkShop } from '../../src/shop/check.js';
import type { Finish, Shop } from '../../src/shop/shop.js';
import { drawnWorks } from '../jig/works.js';
import { faceOf, lineFor, shippedLine, shopFor, workFor } from './sample.js';

const lines = [shippedLine('skerry', {}, 22), shippedLine('ghyll', {}, 16)];
const size = { timber: 'western-redcedar', lengthMm: 400, widthMm: 90, thicknessMm: 20 };
const given = {
  nest: {
    faces: [faceOf({ copies: 2, stacks: [{ copies: 2, blocks: [{ block: 'pile', count: 2 }] }] })],
    made: { skerry: 22, ghyll: 16 },
  },
  blocks: [{ name: 'pile', ...size }],
};
const work = workFor(lines, given);
const shop = shopFor(lines, given);

test('finds nothing in what was made', () => {
  expect(checkShop(shop, work)).toEqual([]);
  for (const name of ['skerry', 'ghyll', 'holm']) {
    const alone = [shippedLine(name)];
    expect(checkShop(shopFor(alone), workFor(alone))).toEqual([]);
  }
});

test('nor of lures drawn by chance (seed 3)', () => {
  const drawn = drawnWorks(3, 6).map((w, i) => lineFor(w, 1 + 7 * i));
  expect(drawn).toHaveLength(6);
  for (const line of drawn) expect(checkShop(shopFor([line]), workFor([line]))).toEqual([]);
});

describe('complains', () => {
  const [sealer, first, ...rest] = shop.finishes;
  const coated = (changed: Partial<Finish>): Shop => ({
    ...shop,
    finishes: [sealer, { ...first, ...changed }, ...rest],
  });
  const inPattern = (changed: object): Shop => ({
    ...shop,
    patterns: [{ ...shop.patterns[0], ...changed }, ...shop.patterns.slice(1)],
  });
  const [potA, potB] = first.pots;
  const spans = (change: (s: Shop['timeline'][number], i: number) => object): Shop => ({
    ...shop,
    timeline: shop.timeline.map((s, i) => ({ ...s, ...change(s, i) })),
  });
  const [{ tub, weights, ballast }] = shop.patterns;
  const lastWork = shop.timeline.length - 1;

  test.each<[string, Shop, string]>([
    ['of a pot left out', coated({ pots: [potA] }), 'are not each in one pot'],
    [
      'of a lure in two pots',
      coated({ pots: [potA, potB, ...first.pots.slice(2), potA] }),
      'not in the order of the run',
    ],
    ['of a pot over its size', coated({ largestPotG: 10 }), 'is too large'],
    ['of a pot over its life', coated({ potLifeMin: 10 }), 'sets first'],
    ['of another ratio', coated({ partAG: 1.01 * (first.partAG ?? 0) }), 'do not add up'],
    ['of another density', coated({ partAMl: 1.01 * (first.partAMl ?? 0) }), 'ratio by volume'],
    ['of another film', coated({ solidsRatio: 0.9 }), 'does not leave its film'],
    ['of a coat left out', { ...shop, finishes: [sealer, first] }, 'coats of'],
    [
      'of a mass outside its band',
      inPattern({ weights: weights.map((w) => ({ ...w, lowG: w.massG + 0.1 })) }),
      'mass outside its band',
    ],
    ['of a stage left out', inPattern({ weights: weights.slice(0, -1) }), 'weights of'],
    [
      'of metal that is not on the scale',
      inPattern({ ballast: ballast.map((b) => ({ ...b, filledG: b.filledG + 0.01 })) }),
      'of metal filled in',
    ],
    ['of metal not melted', { ...shop, melt: [] }, 'melt'],
    ['of hooks not counted', { ...shop, hardware: shop.hardware.slice(1) }, 'hardware'],
    ['of a block not got out', { ...shop, timber: [] }, 'timber'],
    ['of a joint without tape', { ...shop, tape: null }, 'tape'],
    [
      'of a trial weight that the waterplane does not carry',
      inPattern({
        tub: { ...tub, trial: tub.trial.map((t) => ({ ...t, massG: 1.01 * (t.massG ?? 0) })) },
      }),
      'the waterplane carries',
    ],
    [
      'of work at night',
      spans((_, i) =>
        i === lastWork ? { startH: 24 * 50 + 7, endH: 24 * 50 + 8, day: 51, handsOnMin: 60 } : {},
      ),
      'outside the bench hours',
    ],
    [
      'of two things at once',
      spans((s, i) => (i === 1 ? { startH: s.startH - 0.5, handsOnMin: s.handsOnMin + 30 } : {})),
      'begins too early',
    ],
    [
      'of a wait that is work',
      spans((s) => (s.kind === 'wait' ? { handsOnMin: 5 } : {})),
      'a wait that is work',
    ],
    [
      'of a wet coat',
      { ...shop, finishes: shop.finishes.map((f) => ({ ...f, dryHours: 500 })) },
      'not dry',
    ],
    [
      'of a pot over night',
      { ...shop, benchHoursPerDay: 24, timeline: cutInTwo(shop) },
      'a pot over night',
    ],
  ])('%s', (_, damaged, told) => {
    expect(checkShop(damaged, work).join('\n')).toContain(told);
  });
});

/** The first epoxy coat stopped after a minute and gone on with an hour later. */
function cutInTwo({ timeline }: Shop): Shop['timeline'] {
  const at = timeline.findIndex((s) => s.kind === 'work' && s.finish === 1);
  const span = timeline[at];
  const minute = { ...span, endH: span.startH + 1 / 60, handsOnMin: 1 };
  const other = {
    ...span,
    startH: span.startH + 1,
    endH: span.endH + 1 - 1 / 60,
    handsOnMin: span.handsOnMin - 1,
  };
  return [...timeline.slice(0, at), minute, other, ...timeline.slice(at + 1)];
}
