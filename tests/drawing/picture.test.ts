import { describe, expect, test } from 'vitest';
import { checkPicture, type PictureFlaw } from '../../src/drawing/picture/check.js';
import { choicesPicture } from '../../src/drawing/picture/choices-picture.js';
import { floatPicture } from '../../src/drawing/picture/float-picture.js';
import { gathered } from '../../src/drawing/picture/mass-panel.js';
import {
  type Area,
  type Picture,
  type Shape,
  type Text,
  textWidthMm,
} from '../../src/drawing/picture/picture.js';
import { niceTop, rightingRange } from '../../src/drawing/picture/righting-panel.js';
import { SIZES, shortened, spelled, wrapped } from '../../src/drawing/picture/words.js';
import { signedArea } from '../../src/geometry/ring.js';
import { distance } from '../../src/geometry/vec.js';
import {
  ITEMS,
  random,
  STAGES,
  sampleAttitude,
  sampleChoice,
  sampleFloat,
  sampleLure,
  sampleRighting,
  sampleShape,
} from './picture-sample.js';

const texts = ({ shapes }: Picture): Text[] => shapes.filter((s) => s.kind === 'text');
const lines = (picture: Picture): string[] => texts(picture).map(({ text }) => text);
const kinds = (flaws: readonly PictureFlaw[]): string[] => [
  ...new Set(flaws.map(({ kind }) => kind)),
];
const areaOf = ({ shapes }: Picture, role: Area['role']): number =>
  shapes
    .filter((s) => s.kind === 'area')
    .filter((s) => s.role === role)
    .reduce((sum, { points }) => sum + Math.abs(signedArea(points)), 0);

describe('the check complains of', () => {
  const good = floatPicture(sampleFloat());
  const withShape = (shape: Shape): Picture => ({ ...good, shapes: [...good.shapes, shape] });
  const first = texts(good).find(({ text }) => text === 'Side view') as Text;

  test('nothing on a sound picture', () => expect(checkPicture(good)).toEqual([]));

  test.each<[string, Shape]>([
    ['texts-overlap', { ...first, at: [first.at[0] + 1, first.at[1] + 1] }],
    ['text-off-sheet', { ...first, at: [290, 205] }],
    ['small-text', { ...first, sizeMm: 2.9, at: [200, 199] }],
    ['empty-text', { ...first, text: ' ', at: [200, 199] }],
    ['text-on-line', { ...first, at: curveMiddle(good) }],
    ['off-sheet', { kind: 'disc', center: [296, 100], radiusMm: 2, role: 'ink', pen: null }],
    ['not-finite', { ...first, at: [Number.NaN, 100] }],
    [
      'text-on-area',
      {
        kind: 'area',
        points: [
          [first.at[0] - 5, first.at[1] - 5],
          [first.at[0] + 40, first.at[1] - 5],
          [first.at[0] + 40, first.at[1] + 8],
          [first.at[0] - 5, first.at[1] + 8],
        ],
        role: 'metal',
        clear: true,
      },
    ],
  ])('%s', (kind, shape) => {
    expect(kinds(checkPicture(withShape(shape)))).toContain(kind);
  });
});

/** A point on the righting curve. */
function curveMiddle({ shapes }: Picture) {
  const curve = shapes.find((s) => s.kind === 'line' && s.pen === 'bold') as Extract<
    Shape,
    { kind: 'line' }
  >;
  return curve.points[10];
}

describe('random lures, seed 7', () => {
  const next = random(7);
  const between = (low: number, high: number) => low + next() * (high - low);
  const whole = (most: number) => Math.floor(between(0, most + 1));
  const word = (most: number) =>
    Array.from({ length: 1 + whole(most) }, () => 'mwanio-g W'[whole(9)]).join('');
  const lure = () => {
    const shape = sampleShape(between(25, 320), between(3, 30), between(3, 20));
    const weightMm = next() < 0.3 ? between(2, 8) : null;
    return sampleLure(shape, { lip: next() < 0.7, holes: whole(2), weightMm });
  };
  const verdict = () => (['floats', 'floats', 'suspends', 'sinks'] as const)[whole(3)];
  const turn = () => ({
    trimDeg: [between(-30, 30), between(-90, 90), 90, -90, 0, 89.9999][whole(5)],
    heelDeg: [0, between(-30, 30), between(-180, 180), 180, 90, -90][whole(5)],
  });

  test('no label meets another, a line or the edge in 40 sheets', () => {
    const sheets = Array.from({ length: 40 }, () => {
      const l = lure();
      const kind = verdict();
      const pose = () =>
        sampleAttitude(l, { ...turn(), dryRatio: kind === 'floats' ? between(0.001, 0.6) : 0 });
      const at = { ...pose(), gmAcrossMm: between(-20, 60), gmAlongMm: between(-9, 900) };
      return sampleFloat(l, at, {
        verdict: kind,
        name: word(60),
        version: word(30),
        others: Array.from({ length: whole(4) }, pose),
        righting: next() < 0.1 ? [] : sampleRighting(between(-3, 40), between(-4, 4)),
        speed:
          next() < 0.5
            ? null
            : { kind: 'sinks', cmS: 133, lowCmS: 99, highCmS: 188, trimDeg: between(-90, 90) },
        items: Array.from({ length: whole(40) }, () => ({
          name: word(50),
          massG: between(0, 200),
        })),
        stages: Array.from({ length: whole(30) }, () => ({
          name: word(50),
          massG: between(0, 999),
          spreadG: between(0, 99),
        })),
      });
    });
    expect(sheets).toHaveLength(40);
    const flaws = sheets.flatMap((s, i) =>
      checkPicture(floatPicture(s)).map((flaw) => ({ sheet: i, ...flaw })),
    );
    expect(flaws).toEqual([]);
  });

  test('nor in 20 sheets of choices', () => {
    const sheets = Array.from({ length: 20 }, (_, i) => ({
      name: word(60),
      version: word(20),
      wish: word(120),
      unmet: i % 2 === 0 ? word(900) : null,
      choices: Array.from({ length: i % 7 }, () => {
        const choice = sampleChoice(lure(), turn().trimDeg, verdict());
        return { ...choice, sensitivity: choice.sensitivity.slice(whole(3)) };
      }),
    }));
    expect(sheets).toHaveLength(20);
    const flaws = sheets.flatMap((s, i) =>
      checkPicture(choicesPicture(s)).map((flaw) => ({ sheet: i, ...flaw })),
    );
    expect(flaws).toEqual([]);
  });
});

describe('the sheet of one lure', () => {
  test('says verdict, name, trim, freeboards, share above water, mass and speed', () => {
    const input = sampleFloat();
    const said = lines(floatPicture(input));
    for (const text of ['Floats', 'alder', 'nose down 12.4°', '14.0 %', '31.40 g', '2.40 mm'])
      expect(said).toContain(text);
    expect(said).toContain(`nose ${spelled(input.attitude.freeboardNoseMm, 1)} mm`);
    expect(said).toContain(`tail ${spelled(input.attitude.freeboardTailMm, 1)} mm`);
    expect(said).toContain('rises, 11 to 19');
    for (const letter of ['G', 'B']) expect(said.filter((t) => t === letter)).toHaveLength(2);
    for (const { name } of [...ITEMS, ...STAGES]) expect(said).toContain(name);
  });

  test('a stiff lure shows its metacenter', () => {
    const lure = sampleLure(sampleShape());
    const attitude = sampleAttitude(lure, { trimDeg: 0, heelDeg: 5, dryRatio: 0.3 });
    const said = lines(floatPicture(sampleFloat(lure, { ...attitude, gmAcrossMm: 9 })));
    expect(said).toContain('M');
  });

  test('one that sinks hangs in water all over, with no freeboard', () => {
    const lure = sampleLure(sampleShape());
    const attitude = sampleAttitude(lure, { trimDeg: 20, heelDeg: 0, dryRatio: 0 });
    const sunk = floatPicture(
      sampleFloat(lure, attitude, {
        verdict: 'sinks',
        speed: { kind: 'sinks', cmS: 12, lowCmS: 9, highCmS: 16, trimDeg: 37.8 },
      }),
    );
    expect(lines(sunk)).toContain('surface out of view');
    expect(lines(sunk)).toContain('sinks, 9 to 16, 38° nose up');
    expect(lines(sunk).filter((t) => /\brest\b/.test(t))).toEqual([]);
    expect(sunk.title).toBe('alder 1.2 hanging in the water');
    expect(lines(sunk)).toContain('hangs nose up 20.0°, sinks 12 cm/s, 38° nose up');
    expect(lines(sunk).filter((t) => /^(nose|tail) .* mm$/.test(t))).toEqual([]);
    expect(sunk.shapes.some((s) => s.kind !== 'image' && s.role === 'surface')).toBe(false);
  });

  test('small heights stand over the water, or under it, beyond their dimension', () => {
    const lure = sampleLure(sampleShape());
    const attitude = sampleAttitude(lure, { trimDeg: 0, heelDeg: 0, dryRatio: 0.3 });
    const surface = (p: Picture): number =>
      p.shapes.filter((s) => s.kind === 'line').find((s) => s.role === 'surface')?.points[0][1] ??
      Number.NaN;
    const high = (mm: number) => {
      // The water moved to where nose and tail are as high as told.
      const told = { planeOffsetMm: -mm, freeboardNoseMm: mm, freeboardTailMm: mm };
      const picture = floatPicture(sampleFloat(lure, { ...attitude, ...told }));
      return ['nose', 'tail'].map((end) => {
        const label = texts(picture).find(({ text }) => text === `${end} ${spelled(mm, 1)} mm`);
        return (label?.at[1] ?? Number.NaN) - surface(picture);
      });
    };
    for (const mm of [0.3, 1, 3]) {
      for (const above of high(mm)) expect(above).toBeGreaterThan(0);
      for (const above of high(-mm)) expect(above).toBeLessThan(-SIZES.note * 0.7);
    }
  });

  test('a name of 40 letters stands in full', () => {
    const name = 'a-lure-with-a-name-of-forty-letters-full';
    expect(name).toHaveLength(40);
    for (const verdict of ['floats', 'suspends'] as const)
      expect(lines(floatPicture(sampleFloat(undefined, undefined, { name, verdict })))).toContain(
        name,
      );
  });

  test('of many coats the middle ones are gathered', () => {
    const coats = Array.from({ length: 12 }, (_, i) => ({
      name: `epoxy ${i + 1}`,
      massG: 25,
      spreadG: 1,
    }));
    const stages = [...STAGES.slice(0, 6), ...coats, ...STAGES.slice(-1)];
    const said = lines(floatPicture(sampleFloat(undefined, undefined, { stages })));
    const kept = stages.filter(({ name }) => said.includes(name));
    for (const { name } of [...stages.slice(0, 7), ...stages.slice(-2)])
      expect(said).toContain(name);
    expect(said).toContain(`${stages.length - kept.length} between`);
  });

  test('a ready-made weight is as wide as it is, its hole as wide as that', () => {
    const width = (weightMm: number | null) => {
      const lure = sampleLure(sampleShape(), { weightMm });
      const attitude = sampleAttitude(lure, { trimDeg: 0, heelDeg: 0, dryRatio: 0.2 });
      const metal = floatPicture(sampleFloat(lure, attitude)).shapes.find(
        (s) => s.kind === 'area' && s.role === 'metal',
      ) as Area;
      const xs = metal.points.map(([x]) => x);
      return Math.max(...xs) - Math.min(...xs);
    };
    expect(width(4) / width(null)).toBeCloseTo(4 / 8, 6);
  });

  test('centers that lie on each other get signs that do not', () => {
    const lure = sampleLure(sampleShape());
    const attitude = sampleAttitude(lure, { trimDeg: 3, heelDeg: 0, dryRatio: 0.3 });
    const picture = floatPicture(sampleFloat(lure, { ...attitude, gmAcrossMm: 1.2 }));
    // Signs of centers: rings of 2.2 mm (B) and discs of 1.5 mm (G), in two views and the legend.
    const signs = picture.shapes
      .filter((s) => s.kind === 'disc')
      .filter(({ radiusMm }) => radiusMm === 2.2 || radiusMm === 1.5);
    expect(signs).toHaveLength(6);
    for (const [i, a] of signs.entries())
      for (const b of signs.slice(i + 1))
        expect(distance(a.center, b.center)).toBeGreaterThan(a.radiusMm + b.radiusMm);
  });

  test('is the same every time', () => {
    expect(floatPicture(sampleFloat())).toEqual(floatPicture(sampleFloat()));
  });

  test('the wet share of the wood grows as it sinks deeper', () => {
    const lure = sampleLure(sampleShape());
    const wet = [0.6, 0.4, 0.2, 0.05].map((dryRatio) => {
      const attitude = sampleAttitude(lure, { trimDeg: 5, heelDeg: 0, dryRatio });
      return areaOf(floatPicture(sampleFloat(lure, attitude)), 'wetWood');
    });
    expect(wet).toEqual([...wet].sort((a, b) => a - b));
    expect(wet[0]).toBeGreaterThan(0);
  });
});

describe('righting', () => {
  // sin φ (GM − 2k + 2k cos φ) is zero where cos φ = 1 − GM/(2k): here 1/2.
  test('range of a curve with a known zero', () => {
    const { starboardDeg, portDeg } = rightingRange(sampleRighting(2, 2));
    // Chords of 5° are off by at most h²/8·|f″/f′| < 0.1°; 60° is one of the points.
    expect(portDeg).toBeCloseTo(60, 1);
    expect(starboardDeg).toBeCloseTo(60, 1);
  });

  test('range between points: a straight line is met exactly', () => {
    const points = (
      [
        [-180, 0],
        [-40, -1],
        [0, 0],
        [30, 2],
        [40, -3],
        [180, 0],
      ] as const
    ).map(([heelDeg, leverMm]) => ({ heelDeg, leverMm }));
    // From 2 at 30° to −3 at 40°; from −1 at −40° to 0 at −180°.
    expect(rightingRange(points)).toEqual({ starboardDeg: 180, portDeg: 34 });
  });

  test('range of an unstable rest is nothing, of a pendulum all', () => {
    expect(rightingRange(sampleRighting(-2, 0))).toEqual({ starboardDeg: 0, portDeg: 0 });
    const { starboardDeg, portDeg } = rightingRange(sampleRighting(2, 0));
    expect([starboardDeg, portDeg]).toEqual([180, 180]);
  });

  test('round tops', () => {
    expect([0.1, 0.9, 1.01, 2, 4.2, 7, 34, 60].map(niceTop)).toEqual([
      0.2, 1, 2, 5, 5, 10, 50, 100,
    ]);
  });
});

describe('words', () => {
  test('numbers', () => {
    expect(spelled(-0.004, 2)).toBe('0.00');
    expect(spelled(-1.25, 1)).toMatch(/^−1\.[23]$/);
    expect(spelled(Number.NaN, 1)).toBe('–');
  });

  test('long names are cut with an ellipsis, short ones are left', () => {
    expect(shortened('belly\ntreble ', 3.2, 100)).toBe('belly treble');
    expect(shortened('x'.repeat(99), 3.2, 20)).toMatch(/^x{5,9}…$/);
  });

  test('wrapped: no word is lost, no line too wide', () => {
    const text = `holes ${'x'.repeat(40)} give less`;
    const broken = wrapped(text, 5, 60);
    expect(broken.length).toBeGreaterThan(2);
    for (const line of broken) expect(textWidthMm(line, 5)).toBeLessThanOrEqual(60);
    expect(broken.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
    expect(wrapped(' ', 5, 60)).toEqual([]);
  });

  test('items by falling mass, the light ones together', () => {
    const rows = gathered(ITEMS, 4);
    expect(rows.map(({ name }) => name)).toEqual(['timber', 'plug 1', 'belly treble', '6 others']);
    const total = (list: readonly { massG: number }[]) => list.reduce((s, r) => s + r.massG, 0);
    expect(total(rows)).toBeCloseTo(total(ITEMS), 9);
  });
});
