import { expect, test } from 'vitest';
import { checkChoice } from '../../src/ballast/check.js';
import { searchBallast } from '../../src/ballast/search.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import type { WishFile } from '../../src/pattern/wish-schema.js';
import { seeded } from '../mass/lures.js';
import { patternOf, pieceOf, wish } from './pieces.js';

const SEED = 20261;
const LURES = 20;

const random = seeded(SEED);
const between = (low: number, high: number) => low + (high - low) * random();
const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];

/** A lure of any proportions, with and without lip, hanger and coats. */
function anyFile(): Partial<PatternFile> {
  const lengthMm = between(50, 120);
  const [back, belly, breadth] = [between(7, 14), between(7, 16), between(5, 9.5)];
  const fullest = between(0.3, 0.5);
  const offsets = [0.07, 0.2, fullest, 0.65, 0.82, 0.94].map((stationRatio) => {
    const way = stationRatio < fullest ? fullest : 1 - fullest;
    const share = Math.sqrt(1 - (0.97 * Math.abs(stationRatio - fullest)) / way) ** 1.2;
    return {
      stationRatio,
      backMm: back * share,
      bellyMm: belly * share,
      halfBreadthMm: breadth * share,
    };
  });
  const exponent = between(1.8, 3.2);
  return {
    body: {
      lengthMm,
      noseRadiusMm: 1.5,
      tailRadiusMm: 0.8,
      offsets,
      fullness: [{ stationRatio: 0, upperExponent: exponent, lowerExponent: between(1.8, 3.2) }],
    },
    hangers: random() < 0.5 ? [] : [{ stationRatio: between(0.45, 0.7), kind: 'screw' }],
    coats: random() < 0.5 ? [] : [{ name: 'epoxy', thicknessMm: 0.15, count: 2 }],
    lip:
      random() < 0.5
        ? undefined
        : {
            widthMm: 16,
            lengthMm: 22,
            thicknessMm: 1,
            material: 'polycarbonate',
            angleDeg: between(20, 60),
            cornerRadiusMm: 0,
            slot: { stationRatio: 0.08, depthMm: 4, fitMm: 0.1 },
          },
  };
}

function anyWish(): WishFile {
  const trim = random() < 0.5 ? {} : { noseDownDeg: between(-12, 25) };
  const drawer = {
    bitsMm: [oneOf([4, 5, 6]), oneOf([8, 10, 12])],
    metals: [oneOf(['lead', 'tin', 'bismuth'])],
    weights: random() < 0.3,
    leastGmMm: between(0, 2),
  };
  const goal = oneOf<Partial<WishFile>>([
    { buoyancy: 'floats', dryRatio: between(0, 0.5) },
    { buoyancy: 'floats', freeboardMm: between(0, 15) },
    { buoyancy: 'suspends' },
    { buoyancy: 'rises', speedCmS: between(2, 30) },
    { buoyancy: 'sinks', speedCmS: between(2, 60) },
  ]);
  return wish({ ...goal, ...trim, ...drawer });
}

test(`${LURES} lures and wishes of seed ${SEED}: an answer, and a sound one`, () => {
  const ends = { met: 0, unmet: 0 };
  for (let i = 0; i < LURES; i++) {
    const file = anyFile();
    const piece = pieceOf(patternOf(file), between(150, 600));
    const wished = anyWish();
    const { choices, refused, unmet } = searchBallast(piece, wished);
    expect(choices.length > 0).toBe(unmet === null);
    if (unmet) ends.unmet++;
    else ends.met++;
    expect(refused.every((r) => r.tried > 0)).toBe(true);
    for (const choice of choices) {
      const { attitude, points } = choice;
      expect(checkChoice(piece, choice)).toEqual([]);
      expect(attitude.gmAcrossMm).toBeGreaterThanOrEqual(wished.leastGmMm);
      expect(Math.abs(attitude.heelDeg)).toBeLessThan(1);
      expect(Number.isFinite(points)).toBe(true);
      if (wished.noseDownDeg !== undefined)
        expect(Math.abs(attitude.trimDeg + wished.noseDownDeg)).toBeLessThan(1.5);
    }
  }
  expect(ends.met).toBeGreaterThan(4);
  expect(ends.unmet).toBeGreaterThan(2);
}, 60_000);
