/** Timber, tape, holes, metal, weights and hardware of a run, by hand arithmetic. */
import { describe, expect, test } from 'vitest';
import { drillStop } from '../../src/jig/drill-stop/kind.js';
import { weightsFor } from '../../src/shop/ballast.js';
import { drillingOf } from '../../src/shop/drilling.js';
import { tapeFor, timberToGet } from '../../src/shop/timber.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { drillStopSetup, printer } from '../jig/set-ups.js';
import { shippedWork } from '../jig/works.js';
import { MATERIALS } from '../mass/lures.js';
import { faceOf, lineFor, shippedLine, shopFor, workFor } from './sample.js';

const HOLE = {
  stationMm: 35,
  diameterMm: 8,
  depthMm: 14,
  metal: 'lead',
  tiltDeg: 0,
  pointAngleDeg: 118,
  pour: 'topped-up',
} as const;

describe('timber and tape', () => {
  const size = { timber: 'western-redcedar', lengthMm: 400, widthMm: 90, thicknessMm: 20 };
  const blocks = ['clear', 'knotty', 'spare'].map((name) => ({ name, ...size }));
  // Three stacks of two clear blocks; one of a clear and two knotty ones.
  const faces = [
    faceOf({ id: 1, copies: 3, stacks: [{ copies: 3, blocks: [{ block: 'clear', count: 2 }] }] }),
    faceOf({
      id: 2,
      layers: 3,
      stacks: [
        {
          copies: 1,
          blocks: [
            { block: 'clear', count: 1 },
            { block: 'knotty', count: 2 },
          ],
        },
      ],
    }),
  ];
  const work = { nest: { faces, made: {} }, blocks };

  test('a row a block and a height of stack, none for what stays on the pile', () => {
    expect(timberToGet(work)).toEqual([
      { block: 'clear', ...size, count: 1, layersPerStack: 3, faces: [2] },
      { block: 'clear', ...size, count: 6, layersPerStack: 2, faces: [1] },
      { block: 'knotty', ...size, count: 2, layersPerStack: 3, faces: [2] },
    ]);
  });

  test('3 stacks with one joint and one with two: 5 of 400 × 90 mm', () => {
    expect(tapeFor(work)).toEqual({ joints: 5, lengthMm: 2000, areaMm2: 180000 });
  });

  test('none for a single pattern, and no tape where nothing is stacked', () => {
    expect(timberToGet({ nest: null, blocks: [] })).toEqual([]);
    expect(tapeFor({ nest: null })).toBeNull();
    expect(tapeFor({ nest: { faces: [faceOf({ layers: 1 })], made: {} } })).toBeNull();
  });
});

describe('the metal of a hole', () => {
  const filled = (changed: object) =>
    shopFor([shippedLine('skerry', { ballast: [{ ...HOLE, ...changed }] }, 22)]);

  test('to the sawn belly: cylinder and point of the bit', () => {
    // π/4 · 64 mm² · 14 mm = 703.717 mm³; the cone of 118° is 4/tan 59° = 2.403442 mm high, 40.270 mm³:
    // 743.987 mm³ of lead at 11340 kg/m³ are 8.4368 g. The belly rises round the axis: 0.2 % less at most.
    const { ballast } = filled({}).patterns[0];
    expect(ballast).toHaveLength(1);
    expect(ballast[0]).toMatchObject({ metal: 'lead', pour: 'topped-up', weight: null });
    expect(ballast[0].filledG).toBeLessThan(8.4368);
    expect(ballast[0].filledG).toBeGreaterThan(8.4368 * 0.998);
  });

  test('to a height of 10 mm over the floor: no belly in it', () => {
    // π/4 · 64 · 10 = 502.655 mm³ and the cone's 40.270: 542.925 mm³, 6.15677 g.
    const { ballast } = filled({ fillMm: 10 }).patterns[0];
    expect(ballast[0].filledG).toBeCloseTo(6.15677, 4);
    expect(ballast[0].afterShapingG).toBeCloseTo(ballast[0].filledG, 6);
  });

  test('poured once it ends at the density of the liquid: 10660 to 11340', () => {
    const [once, topped] = [filled({ pour: 'single' }), filled({})].map(
      (s) => s.patterns[0].ballast[0].filledG,
    );
    expect(once / topped).toBeCloseTo(10660 / 11340, 9);
  });

  test('of all lures, and a tenth more for dross and ladle', () => {
    const shop = filled({ fillMm: 10 });
    expect(shop.melt).toHaveLength(1);
    expect(shop.melt[0]).toMatchObject({ metal: 'lead', holes: 22, allowanceRatio: 0.1 });
    expect(shop.melt[0].netG).toBeCloseTo(22 * 6.15677, 3);
    expect(shop.melt[0].totalG).toBeCloseTo(1.1 * 22 * 6.15677, 3);
  });

  test('a ready-made weight is bought and not melted', () => {
    const shop = filled({ weight: 'lead-5g' });
    expect(shop.melt).toEqual([]);
    expect(shop.weightsToBuy).toEqual([
      { name: 'lead-5g', metal: 'lead', massG: 5, diameterMm: 8, lengthMm: 8.8, count: 22 },
    ]);
    const [fill] = shop.patterns[0].ballast;
    expect(fill).toMatchObject({ weight: 'lead-5g', pour: null, meltsAtC: null });
    expect([fill.filledG, fill.afterShapingG].map((g) => g.toFixed(9))).toEqual(
      Array(2).fill('5.000000000'),
    );
    expect(shop.hardware).toContainEqual(
      expect.objectContaining({ what: 'weight', name: 'lead-5g', sizeMm: 8, count: 22 }),
    );
  });

  test('the same weight in two patterns is one row', () => {
    const ballast = shopFor([shippedLine('skerry')]).patterns[0].ballast;
    const named = ballast.map((b) => ({ ...b, weight: 'lead-5g' }));
    const twice = [4, 6].map((count) => ({ count, ballast: named }));
    expect(weightsFor(twice, MATERIALS).map((w) => w.count)).toEqual([10]);
  });

  test('steel is not poured: a piece of rod as heavy as the hole takes', () => {
    const shop = filled({ metal: 'steel' });
    expect([shop.melt, shop.weightsToBuy]).toEqual([[], []]);
    expect(shop.patterns[0].ballast[0].pour).toBeNull();
    const rod = shop.patterns[0].hardware.find((h) => h.what === 'rod');
    expect(rod).toMatchObject({ name: 'steel', sizeMm: 8, perLure: 1, total: 22 });
    expect(rod?.massEachG).toBeCloseTo(shop.patterns[0].ballast[0].filledG, 12);
  });
});

describe('weights to expect', () => {
  const line = shippedLine('skerry');
  const { weights } = shopFor([line]).patterns[0];

  test('are the stages, two standard deviations either way', () => {
    expect(weights.map((w) => w.stage)).toEqual(line.floating.stages.map((s) => s.name));
    for (const { massG, spreadG, lowG, highG } of weights) {
      expect(massG - lowG).toBeCloseTo(2 * spreadG, 12);
      expect(highG - massG).toBeCloseTo(2 * spreadG, 12);
    }
  });

  test('the change by pouring is the metal, within half a millimeter of it and the scale', () => {
    const poured = weights[2];
    // π/4 · 64 mm² · 0.5 mm · 11.34 mg/mm³ = 0.28500 g by depth; 100 of 11340 kg/m³ on 7.49 g, 0.06603 g;
    // two readings of 0.05 g, 0.07071 g: together 0.30097 g, twice that either way. The belly's curve: 1 %.
    expect(poured.changeG).toBeCloseTo(8.43, 1);
    const half = ((poured.changeHighG ?? 0) - (poured.changeLowG ?? 0)) / 2;
    expect(Math.abs(half / 0.60194 - 1)).toBeLessThan(0.01);
  });

  test('say what a lighter or heavier one had', () => {
    expect(weights.map((w) => [w.light, w.heavy])).toEqual([
      ['lighter-timber', 'heavier-timber'],
      ['hole-deep', 'hole-shallow'],
      ['plug-short', 'plug-long'],
      ['rounded-much', 'rounded-little'],
      ['sanded-much', 'sanded-little'],
      ...Array(4).fill(['coat-thin', 'coat-thick']),
      ['fittings-light', 'fittings-heavy'],
    ]);
    const bare = shopFor([shippedLine('skerry', { ballast: [], coats: [] })]).patterns[0].weights;
    expect(bare.map((w) => w.light)).toEqual([
      ...Array(3).fill('lighter-timber'),
      'rounded-much',
      'sanded-much',
      'fittings-light',
    ]);
  });
});

describe('hardware', () => {
  // Three screw eyes, two rings, two trebles, a lip; a wire instead of the eyes.
  const shop = shopFor([shippedLine('skerry', {}, 22), shippedLine('ghyll', {}, 16)]);

  test('of one lure', () => {
    expect(shop.patterns[0].hardware.map((h) => [h.what, h.name, h.perLure, h.total])).toEqual([
      ['screw-eye', 'screw-eye', 3, 66],
      ['ring', 'ring-6', 2, 44],
      ['treble', 'treble-4', 1, 22],
      ['treble', 'treble-6', 1, 22],
      ['lip', 'skerry', 1, 22],
    ]);
    // The whole plate, 22 × 34 × 1.5 mm of 1200 kg/m³: 1.3464 g.
    expect(shop.patterns[0].hardware[4].massEachG).toBeCloseTo(1.3464, 9);
  });

  test('of the run, and the wire in one length', () => {
    expect(shop.hardware.map((h) => [h.what, h.name, h.count])).toEqual([
      ['screw-eye', 'screw-eye', 66],
      ['ring', 'ring-6', 76],
      ['treble', 'treble-4', 22],
      ['treble', 'treble-6', 54],
      ['lip', 'skerry', 22],
      ['lip', 'ghyll', 16],
      ['wire', 'through-wire', 16],
    ]);
    const wire = shop.patterns[1].wire?.lengthToCutMm ?? 0;
    expect(shop.hardware[6].lengthMm).toBeCloseTo(16 * wire, 9);
  });
});

describe('drilling', () => {
  test('ballast, then eyes; a wire is bored right through', () => {
    const [skerry, ghyll] = ['skerry', 'ghyll'].map((n) => shopFor([shippedLine(n)]).patterns[0]);
    expect(skerry.drilling.map((d) => [d.what, d.bitMm, d.from, d.through])).toEqual([
      ['ballast', 8, 'belly', false],
      ['hanger', 0.9, 'belly', false],
      ['tow eye', 0.9, 'nose', false],
      ['tail eye', 0.9, 'tail', false],
    ]);
    expect(ghyll.drilling.map((d) => [d.what, d.number, d.bitMm, d.through])).toEqual([
      ['ballast', 1, 7, false],
      ['ballast', 2, 7, false],
      ['hanger', 1, 2, false],
      ['tow eye', 1, 2, true],
      ['tail eye', 1, 2, true],
    ]);
    // Without a jig nobody says how deep it is begun.
    expect(ghyll.drilling[3]).toMatchObject({ depthMm: null, collarMm: null });
    // 12 mm of shank in the finished body, 1.5 mm of sanding over it at the tail.
    expect(skerry.drilling[3].depthMm).toBeCloseTo(13.5, 6);
  });

  test('the collar is set as the jig’s letters say', async () => {
    const work = shippedWork('skerry');
    const set = { setup: drillStopSetup as never, printer };
    const { jigs } = drillStop.make(await loadKernel(), work, set);
    const line = { ...lineFor(work), jigs: jigs.map((jig) => ({ jig })) };
    const drilling = drillingOf(line, workFor([line]));
    const letters = jigs.flatMap((j) => j.letters.map((l) => l.text)).join(' ');
    expect(drilling).toHaveLength(4);
    for (const { bitMm, collarMm, collarFromTipMm, tipDepthMm, depthMm } of drilling) {
      expect(letters.replace(/\s+/g, ' ')).toContain(`D${bitMm} L${collarMm?.toFixed(1)}`);
      // The point is as long on the bit as in the hole.
      const point = (tipDepthMm ?? 0) - (depthMm ?? 0);
      expect((collarFromTipMm ?? 0) - (collarMm ?? 0)).toBeCloseTo(point, 9);
    }
  });
});

test('hands-on time is counted by what is there to do', () => {
  const shop = shopFor([shippedLine('skerry', {}, 22), shippedLine('holm', {}, 10)], {
    nest: {
      faces: [faceOf({ copies: 2, placements: Array(8).fill(null) as never })],
      made: { skerry: 22, holm: 12 },
    },
  });
  const minutes = (step: string) =>
    shop.timeline.reduce((sum, s) => sum + (s.step === step ? s.handsOnMin : 0), 0);
  const { steps } = MATERIALS;
  expect(minutes('trace')).toBeCloseTo(steps.trace.minutes, 9);
  expect(minutes('tape')).toBeCloseTo(2 * steps.tape.minutes, 9);
  expect(minutes('saw')).toBeCloseTo(16 * steps.saw.minutes, 9);
  expect(minutes('slot')).toBeCloseTo(22 * steps.slot.minutes, 9); // holm has no lip
  expect(minutes('drill')).toBeCloseTo(32 * 4 * steps.drill.minutes, 6); // a hole and three eyes each
  expect(minutes('pour')).toBeCloseTo(32 * steps.pour.minutes, 9);
  expect(minutes('weights')).toBe(0);
  expect(minutes('sand')).toBeCloseTo(32 * steps.sand.minutes, 6);
  expect(minutes('wire')).toBe(0);
  expect(minutes('glue')).toBeCloseTo(22 * steps.glue.minutes, 9);
  expect(shop.patterns.map((p) => p.sawnCount)).toEqual([22, 12]);
});
