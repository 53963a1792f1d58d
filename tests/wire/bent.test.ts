import { describe, expect, test } from 'vitest';
import { directions, pathPoints, pointOn, type Segment } from '../../src/geometry/arcpath.js';
import { seededDraws } from '../../src/geometry/random.js';
import { cross, distance, dot, type Point2 } from '../../src/geometry/vec.js';
import { alongArc } from '../../src/mass/moments.js';
import { type BentWire, bentWire } from '../../src/wire/bent.js';
import { checkBentWire } from '../../src/wire/check.js';
import type { WireSpec } from '../../src/wire/spec.js';
import { turnMm } from '../../src/wire/twist.js';

/** A 1.2 mm wire through a lure of 125 mm, level. */
const spec: WireSpec = {
  diameterMm: 1.2,
  bendInsideMm: 1.2,
  loopMm: 3,
  twistTurns: 0,
  holdMm: 25,
  nose: { at: [0, 0], eye: true },
  tail: { at: [125, 0], eye: true },
  hangers: [],
};
const bent = (change: Partial<WireSpec> = {}): BentWire => {
  const { wire, flaws } = bentWire({ ...spec, ...change });
  if (!wire) throw new Error(JSON.stringify(flaws));
  return wire;
};

// Center lines: bends 1.2 + 0.6, loops 1.5 + 0.6 mm.
const [R_BEND, R_LOOP] = [1.8, 2.1];

describe('lengths in closed form', () => {
  // A neck touches the loop: over its leg as cosine 1.8/(1.8 + 2.1); it starts that circle's height inside.
  const neck = Math.acos(R_BEND / 3.9);
  const inset = Math.sqrt(3.9 ** 2 - R_BEND ** 2) - (1.5 + 1.2);
  const eye = R_BEND * neck + 2 * Math.PI * R_LOOP;

  test('an eye at either end, straight between', () => {
    expect(bent().lengthMm).toBeCloseTo(125 - 2 * inset + 2 * eye, 9);
    expect(bent().lengthToCutMm).toBeCloseTo(bent().lengthMm + 50, 9);
  });

  test('without eyes, the lure’s own length, and nothing to hold', () => {
    const [nose, tail] = [spec.nose, spec.tail].map(({ at }) => ({ at, eye: false }));
    const wire = bent({ nose, tail });
    expect(wire.lengthMm).toBe(125);
    expect(wire.lengthToCutMm).toBe(125);
  });

  test('a hanger: two quarter bends, two legs, and five sixths of a turn or so round its eye', () => {
    const wire = bent({ hangers: [[58, -11]] });
    const angle = Math.acos((0.6 + R_BEND) / 3.9);
    const begins = -11 - 2.7 + Math.sqrt(3.9 ** 2 - 2.4 ** 2); // height where the necks begin
    const leg = 0 - R_BEND - begins;
    const more =
      2 * (R_BEND * (Math.PI / 2)) +
      2 * leg +
      2 * R_BEND * angle +
      R_LOOP * (Math.PI + 2 * angle) -
      (2 * R_BEND + 1.2);
    expect(wire.lengthMm).toBeCloseTo(bent().lengthMm + more, 9);
  });

  test('a turn of the winding, by summing chords of its helix', () => {
    const d = 1.2;
    const n = 20_000;
    const at = (t: number) => [d * Math.cos(2 * Math.PI * t), d * Math.sin(2 * Math.PI * t), d * t];
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const [a, b] = [at(i / n), at((i + 1) / n)];
      sum += Math.hypot(...a.map((v, k) => v - b[k]));
    }
    expect(turnMm(d)).toBeCloseTo(sum, 6); // chords of a helix are short by (2π/n)²/24
  });

  test('turns add up, and lie on the wire between neck and run', () => {
    const wire = bent({ twistTurns: 5 });
    expect(wire.lengthMm - bent().lengthMm).toBeCloseTo(2 * (5 * turnMm(1.2) + R_BEND * neck), 9);
    const [tow, tail] = wire.twists;
    expect(tow.from[0]).toBeCloseTo(inset, 9);
    expect(distance(tow.from, tow.to)).toBeCloseTo(5 * 1.2, 9);
    expect(tail.from[0]).toBeCloseTo(125 - inset, 9);
    expect(tail.to[0]).toBeLessThan(tail.from[0]);
  });
});

test('every piece goes on where and how the one before ends; loops stand on the body', () => {
  const nose = { at: [0.4, 3] as Point2, eye: true };
  const wire = bent({
    nose,
    hangers: [
      [40, -11],
      [90, -8],
    ],
    twistTurns: 3,
  });
  expect(wire.pieces.length).toBeGreaterThan(20);
  wire.pieces.slice(1).forEach((piece, i) => {
    const before = wire.pieces[i];
    expect(distance(before.to, piece.from)).toBeLessThan(1e-9);
    const [u, w] = [directions(before)[1], directions(piece)[0]];
    expect(Math.abs(cross(u, w))).toBeLessThan(1e-9);
    expect(dot(u, w)).toBeGreaterThan(0);
  });
  const lowest = (x: number) =>
    Math.min(
      ...pathPoints(wire.path, 1e-4)
        .filter((p) => Math.abs(p[0] - x) < 5)
        .map((p) => p[1]),
    );
  expect(lowest(40)).toBeCloseTo(-11 - 1.2 - 3 - 0.6, 3); // wire, loop, half a wire below the belly
  expect(lowest(90)).toBeCloseTo(-8 - 4.8, 3);
  expect(Math.min(...wire.path.vertices.map((v) => v.x))).toBeGreaterThan(0.4 - 4.8);
});

test('250 wires drawn by chance, seed 11: bent soundly, or a flaw whose number works', () => {
  const draw = seededDraws(11);
  let [made, refused] = [0, 0];
  for (let k = 0; k < 250; k++) {
    const between = (a: number, b: number) => a + (b - a) * draw();
    const [length, diameterMm] = [between(20, 200), between(0.5, 2)];
    const bendInsideMm = diameterMm * between(1, 3);
    const count = Math.floor(between(0, 4));
    const one: WireSpec = {
      diameterMm,
      bendInsideMm,
      loopMm: Math.max(3, 2 * bendInsideMm),
      twistTurns: Math.floor(between(0, 6)),
      holdMm: 25,
      nose: { at: [between(0, 3), between(-4, 8)], eye: draw() < 0.8 },
      tail: { at: [length - between(0, 3), between(-4, 8)], eye: draw() < 0.8 },
      hangers: Array.from(
        { length: count },
        (): Point2 => [between(3, length - 3), -between(2, 20)],
      ).sort((a, b) => a[0] - b[0]),
    };
    const { wire, flaws } = bentWire(one);
    expect(wire === null).toBe(flaws.length > 0);
    if (wire) {
      made++;
      expect(checkBentWire(wire)).toEqual([]);
      continue;
    }
    refused++;
    for (const flaw of flaws) {
      expect(flaw.kind === 'leg-too-short' ? flaw.depthMm : flaw.betweenMm).toBeLessThan(
        flaw.needMm,
      );
      const moved = flaw.kind === 'ends-too-close' ? [] : [...one.hangers];
      if (flaw.kind === 'too-close')
        moved[flaw.hanger] = [flaw.nearestMm, one.hangers[flaw.hanger][1]];
      if (flaw.kind === 'leg-too-short') {
        const [x, z] = one.hangers[flaw.hanger];
        moved[flaw.hanger] = [x, z - (flaw.needMm - flaw.depthMm) - 1e-9];
      }
      if (flaw.kind === 'ends-too-close') continue;
      const still = bentWire({ ...one, hangers: moved }).flaws.filter(
        (f) =>
          f.kind === flaw.kind &&
          f.hanger === flaw.hanger &&
          (f.kind !== 'too-close' || flaw.kind !== 'too-close' || f.other === flaw.other) &&
          (f.kind === 'leg-too-short' ? f.needMm - f.depthMm : f.needMm - f.betweenMm) > 1e-6,
      );
      expect(still).toEqual([]);
    }
  }
  expect(made).toBeGreaterThan(50);
  expect(refused).toBeGreaterThan(50);
});

test('ends that are too close come apart at the length told', () => {
  const short = { twistTurns: 6, nose: { at: [0, 1] as Point2, eye: true } };
  const at = (x: number) => bentWire({ ...spec, ...short, tail: { at: [x, 0], eye: true } });
  const [flaw] = at(15).flaws;
  if (flaw?.kind !== 'ends-too-close') throw new Error(JSON.stringify(flaw));
  expect(at(flaw.needMm + 1e-6).flaws).toEqual([]);
  expect(at(flaw.needMm - 3.7).flaws.map((f) => f.kind)).toEqual(['ends-too-close']); // without its bends
});

describe('a damaged wire is complained of', () => {
  const wire = bent({ hangers: [[58, -11]] });
  const complaints = (change: Partial<BentWire>) =>
    checkBentWire({ ...wire, ...change }).map((c) => c.split(' ')[1]);
  test.each([
    ['told too long', { lengthMm: wire.lengthMm + 1 }, ['']],
    ['asked for wider bends', { bendRadiusMm: 2 }, ['bent']],
    ['of thicker wire, legs too close', { spec: { ...spec, diameterMm: 1.4 } }, ['passes']],
  ] as const)('%s', (_, change, want) => {
    const got = complaints(change);
    expect(got.length).toBe(1);
    if (want[0] !== '') expect(got).toEqual(want);
  });
  test('with a corner', () => {
    const vertices = wire.path.vertices.map((v) => ({ ...v }));
    vertices[vertices.length - 5].y += 0.3;
    expect(complaints({ path: { closed: false, vertices } })).toContain('bent');
  });
});

test('moments of an arc are those of its points', () => {
  const arc: Segment = { from: [3, 1], to: [-2, 4], bulge: 0.7 };
  const n = 20_000;
  const got = alongArc(2, arc);
  const points = Array.from({ length: n }, (_, i) => pointOn(arc, (i + 0.5) / n));
  const mean = (f: (p: Point2) => number) => (2 * points.reduce((s, p) => s + f(p), 0)) / n;
  expect(got.amount).toBe(2);
  expect(got.x).toBeCloseTo(
    mean(([x]) => x),
    6,
  ); // the midpoint rule: h²/24
  expect(got.z).toBeCloseTo(
    mean(([, z]) => z),
    6,
  );
  expect(got.xx).toBeCloseTo(
    mean(([x]) => x * x),
    6,
  );
  expect(got.zz).toBeCloseTo(
    mean(([, z]) => z * z),
    6,
  );
  expect(got.xz).toBeCloseTo(
    mean(([x, z]) => x * z),
    6,
  );
});
