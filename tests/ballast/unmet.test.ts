import { describe, expect, test } from 'vitest';
import { searchBallast } from '../../src/ballast/search.js';
import type { Unmet } from '../../src/ballast/unmet.js';
import { withHoles } from '../../src/ballast/workpiece.js';
import type { WishFile } from '../../src/pattern/wish-schema.js';
import { FRESH, patternOf, pieceOf, wish } from './pieces.js';

const pattern = patternOf();
const piece = pieceOf(pattern);
const wholeG = piece.afloat.solid.volumeMm3 * FRESH * 1e-6;

const unmet = (given: Partial<WishFile>, of = piece): Unmet | null => {
  const { choices, unmet: why } = searchBallast(of, wish(given));
  expect(choices).toEqual([]);
  return why;
};

const level = { noseDownDeg: 0, bitsMm: [6, 8, 10], metals: ['lead'] };

test('a wish that can be met has nothing in the way', () => {
  const { choices, unmet: why } = searchBallast(
    piece,
    wish({ buoyancy: 'floats', dryRatio: 0.1, ...level }),
  );
  expect(why).toBeNull();
  expect(choices.length).toBeGreaterThan(0);
});

test('more freeboard than the lure is high', () => {
  const why = unmet({ buoyancy: 'floats', freeboardMm: 60, ...level });
  expect(why).toMatchObject({ limit: 'freeboard-too-high' });
  // From the lowest of what hangs on it to the highest of the back.
  if (why?.limit === 'freeboard-too-high') expect(why.mostMm).toBeLessThan(60);
});

describe('too heavy without any ballast', () => {
  test('for a wish to float high: a lighter timber, or a lower wish', () => {
    const why = unmet({ buoyancy: 'floats', dryRatio: 0.5, ...level });
    if (why?.limit !== 'too-heavy') throw new Error(why?.limit);
    expect(why.byG).toBeCloseTo(piece.bare.massG - wholeG / 2, 9);
    expect(why.height?.dryRatio).toBeCloseTo(1 - piece.bare.massG / wholeG, 9);
    // That timber weighs just so much less.
    const lighter = pieceOf(pattern, why.timberKgM3 ?? 0);
    expect(lighter.bare.massG).toBeCloseTo(wholeG / 2, 9);
    // And what it then says of freeboard can be wished, barely.
    const freeboardMm = (why.height?.freeboardMm ?? 0) - 1;
    const { choices } = searchBallast(piece, wish({ buoyancy: 'floats', freeboardMm }));
    expect(choices.length).toBeGreaterThan(0);
  });

  test('for a wish to suspend: it sinks', () => {
    const why = unmet({ buoyancy: 'suspends', ...level }, pieceOf(pattern, 1000));
    expect(why).toMatchObject({ limit: 'too-heavy', height: null });
    if (why?.limit === 'too-heavy') expect(why.timberKgM3).toBeLessThan(1000);
  });

  test('for a wish to rise faster than any lure', () => {
    const why = unmet({ buoyancy: 'rises', speedCmS: 190, ...level });
    expect(why).toMatchObject({ limit: 'too-heavy', timberKgM3: null });
  });

  test('no timber is light enough', () => {
    const why = unmet({ buoyancy: 'floats', dryRatio: 0.9, ...level });
    expect(why).toMatchObject({ limit: 'too-heavy', timberKgM3: null });
  });
});

describe('no room for the metal', () => {
  test('the most that fits, and what a denser metal would have to be', () => {
    const given = { buoyancy: 'sinks', speedCmS: 60, bitsMm: [6], metals: ['tin'] } as const;
    const why = unmet({ ...given, bitsMm: [6], metals: ['tin'] });
    if (why?.limit !== 'no-room') throw new Error(why?.limit);
    expect(why.mostG).toBeLessThan(why.missingG);
    expect(why.holes).toHaveLength(2);
    const mass = withHoles(piece, why.holes);
    expect(mass.massG - piece.bare.massG).toBeCloseTo(why.mostG, 9);
    // A metal of that density in the same holes adds just what is missing.
    const kgM3 = why.metalKgM3 ?? 0;
    const { metals } = piece.materials;
    const dense = { ...metals, tin: { ...metals.tin, densityKgM3: kgM3 } };
    const denser = { ...piece, materials: { ...piece.materials, metals: dense } };
    expect(withHoles(denser, why.holes).massG - piece.bare.massG).toBeCloseTo(why.missingG, 9);
  });

  test('no hole at all fits', () => {
    expect(unmet({ buoyancy: 'suspends', bitsMm: [25] })).toMatchObject({
      limit: 'no-room',
      mostG: 0,
      holes: [],
      metalKgM3: null,
    });
  });

  test('of ready-made weights', () => {
    const why = unmet({
      buoyancy: 'sinks',
      speedCmS: 60,
      weights: true,
      metals: ['tin'],
      bitsMm: [6, 8],
      mostHoles: 1,
    });
    if (why?.limit !== 'no-room') throw new Error(why?.limit);
    expect(why.holes).toHaveLength(1);
    expect(why.holes[0].weight).toBe('tin-5g');
  });
});

test('so little metal is missing that sanding takes it', () => {
  const dryRatio = 1 - (piece.bare.massG + 0.4) / wholeG;
  const why = unmet({ buoyancy: 'floats', dryRatio, bitsMm: [10], metals: ['tin'], mostHoles: 1 });
  expect(why).toMatchObject({ limit: 'too-little' });
  if (why?.limit === 'too-little') expect(why.missingG).toBeCloseTo(0.4, 1);
});

test('nothing at hand', () => {
  expect(unmet({ buoyancy: 'floats', dryRatio: 0.1, metals: ['steel'] })).toEqual({
    limit: 'nothing-at-hand',
    why: 'not-poured',
    facts: { metal: 'steel' },
  });
});

test('a trim out of reach: the nearest that can be had', () => {
  const given = { buoyancy: 'floats', dryRatio: 0.1, bitsMm: [10], metals: ['lead'] } as const;
  const bits = { ...given, bitsMm: [10], metals: ['lead'], mostHoles: 1 };
  const why = unmet({ ...bits, noseDownDeg: 70 });
  if (why?.limit !== 'trim') throw new Error(why?.limit);
  expect(why.aboveDeg).toBeNull();
  const noseDownDeg = why.belowDeg ?? 90;
  expect(noseDownDeg).toBeGreaterThan(0);
  expect(noseDownDeg).toBeLessThan(70);
  const { choices } = searchBallast(piece, wish({ ...bits, noseDownDeg }));
  expect(choices.length).toBeGreaterThan(0);
});

test('a moment that no place in the wood balances', () => {
  const dryRatio = 1 - (piece.bare.massG + 2) / wholeG;
  const why = unmet({
    buoyancy: 'floats',
    dryRatio,
    noseDownDeg: 4,
    leastGmMm: 3,
    bitsMm: [8],
    metals: ['tin'],
    mostHoles: 1,
  });
  expect(why).toMatchObject({ limit: 'wood', why: 'station-outside', facts: { end: 'nose' } });
});

test('a stiffness out of reach: the best there is', () => {
  const why = unmet({ buoyancy: 'floats', dryRatio: 0.1, leastGmMm: 9, ...level });
  if (why?.limit !== 'gm') throw new Error(why?.limit);
  expect(why.leastMm).toBe(9);
  expect(why.bestMm).toBeGreaterThan(1);
  expect(why.bestMm).toBeLessThan(9);
  const { choices } = searchBallast(
    piece,
    wish({ buoyancy: 'floats', dryRatio: 0.1, leastGmMm: why.bestMm - 0.01, ...level }),
  );
  expect(choices.length).toBeGreaterThan(0);
});

test('weights too coarse for the wish', () => {
  const why = unmet({
    buoyancy: 'suspends',
    weights: true,
    metals: ['lead'],
    bitsMm: [12],
    mostHoles: 1,
  });
  expect(why).toMatchObject({ limit: 'misses-wish', facts: { what: 'netG' } });
});
