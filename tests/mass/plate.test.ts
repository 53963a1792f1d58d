import { describe, expect, test } from 'vitest';
import { lipHole, lipOutline } from '../../src/blank/lip-outline.js';
import { flatten, pathArea } from '../../src/geometry/arcpath.js';
import { asRegion, subtract } from '../../src/geometry/clip.js';
import { meshFlaws } from '../../src/geometry/mesh.js';
import { circleRing, regionArea } from '../../src/geometry/ring.js';
import { checkLure, makeLure } from '../../src/mass/budget.js';
import { lipParts } from '../../src/mass/lip.js';
import {
  faceSums,
  halfWidthAt,
  isPlain,
  meanHalfMm,
  plateBands,
  stopsOf,
} from '../../src/mass/plate.js';
import { halfBreadthAt, inSlot } from '../../src/mass/strip.js';
import type { Lip } from '../../src/pattern/pattern.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import { designOf, MATERIALS, patternOf, rel, seeded, TIMBER } from './lures.js';

const diver = patternOf('diver');
if (!diver.lip) throw new Error('diver has a lip');
// 22 × 34 mm, 11 mm of it in the slot.
const plain: Lip = diver.lip;
const full: Lip = {
  ...plain,
  cornerRadiusMm: 6,
  tab: { widthMm: 8, insideRadiusMm: 1 },
  eyeHole: { diameterMm: 3, forwardMm: 7 },
};
/** By hand: corners (4 − π)r²/2, shoulders 2·7·11, inside corners (4 − π)r²/2 of plate left in them, hole πr². */
const FULL_MM2 = 22 * 34 - ((4 - Math.PI) * 36) / 2 - 14 * 11 + (4 - Math.PI) / 2 - Math.PI * 2.25;

describe('the face', () => {
  test('has the area of the closed form, by its outline and by its bands', () => {
    expect(pathArea(lipOutline(full)) - Math.PI * 2.25).toBeCloseTo(FULL_MM2, 9);
    expect(faceSums(plateBands(full)).area).toBeCloseTo(FULL_MM2, 9);
    const rounded = { ...plain, cornerRadiusMm: 6 };
    expect(pathArea(lipOutline(rounded))).toBeCloseTo(22 * 34 - ((4 - Math.PI) * 36) / 2, 9);
  });

  test('is plain without the keys: the rectangle, corner by corner', () => {
    expect(isPlain(plateBands(plain))).toBe(true);
    expect(flatten(lipOutline(plain), 0.01)).toEqual([
      [0, 0],
      [22, 0],
      [22, 34],
      [0, 34],
    ]);
  });

  test('as round and as tabbed as it may be, no edge is left over', () => {
    const most = { ...plain, cornerRadiusMm: 11, tab: { widthMm: 12, insideRadiusMm: 5 } };
    const { vertices } = lipOutline(most);
    expect(vertices).toHaveLength(9); // tab 4, shoulders' ends 2, round from side to side 3
    expect(pathArea(lipOutline(most))).toBeCloseTo(faceSums(plateBands(most)).area, 9);
    const whole = { ...most, lengthMm: 22 }; // the round begins at the shoulder
    expect(pathArea(lipOutline(whole))).toBeCloseTo(faceSums(plateBands(whole)).area, 9);
  });

  test('moments against a polygon’s, by Clipper and the shoelace', () => {
    const hole = lipHole(full);
    if (!hole) throw new Error('no hole');
    const round = circleRing(hole.center, hole.radius, { segments: 720 });
    const [region] = subtract([asRegion(flatten(lipOutline(full), 1e-5))], [asRegion(round)]);
    const got = faceSums(plateBands(full));
    const want = polygonSums([region.outer, ...region.holes]);
    // A polygon of 720 sides is 1.3e-5 of the hole short.
    expect(rel(regionArea(region), got.area)).toBeLessThan(1e-6);
    expect(rel(want.along, got.along)).toBeLessThan(1e-6);
    expect(rel(want.alongSquared, got.alongSquared)).toBeLessThan(1e-6);
    expect(rel(want.acrossSquared, got.acrossSquared)).toBeLessThan(1e-6);
  });

  test('the mean width between stops is the width summed', () => {
    const bands = plateBands(full);
    const stops = stopsOf(bands);
    expect(stops.length).toBeGreaterThan(20);
    let area = 0;
    for (let i = 1; i < stops.length; i++) {
      const [a, b] = [stops[i - 1], stops[i]];
      if (b - a < 1e-9) continue;
      const mean = meanHalfMm(bands.bands, a, b) - meanHalfMm(bands.hole, a, b);
      const n = 4000;
      let sum = 0;
      for (let k = 0; k < n; k++) {
        const s = a + ((b - a) * (k + 0.5)) / n;
        sum += halfWidthAt(bands.bands, s) - halfWidthAt(bands.hole, s);
      }
      expect(mean).toBeCloseTo(sum / n, 4); // a root's end costs the midpoint rule about n^−1.5
      area += 2 * mean * (b - a);
    }
    expect(area).toBeCloseTo(FULL_MM2, 9);
  });
});

/** Σ over rings, outer ones counter-clockwise, the rest holes: the shoelace and its second moments (standard). */
function polygonSums(rings: readonly (readonly (readonly [number, number])[])[]) {
  const sum = { along: 0, alongSquared: 0, acrossSquared: 0 };
  rings.forEach((points, k) => {
    const sign = k === 0 ? 1 : -1;
    points.forEach(([px, py], i) => {
      const [qx, qy] = points[(i + 1) % points.length];
      const [ax, bx] = [px - 11, qx - 11]; // across from the middle
      const w = sign * (ax * qy - bx * py);
      sum.along += (w * (py + qy)) / 6;
      sum.alongSquared += (w * (py * py + py * qy + qy * qy)) / 12;
      sum.acrossSquared += (w * (ax * ax + ax * bx + bx * bx)) / 12;
    });
  });
  return sum;
}

describe('the lip in its lure', () => {
  const { body, blank } = designOf(diver);
  const { slot } = blank;
  if (!slot) throw new Error('diver has a slot');
  const parts = lipParts(body.shape, slot, full);

  test('the whole plate weighs its area times its thickness', () => {
    expect(parts.plate.amount).toBeCloseTo(FULL_MM2 * full.thicknessMm, 9);
  });

  test('inside and outside make the plate; boxes are closed', () => {
    const inside = parts.slot.amount - parts.room.amount;
    expect(rel(parts.outsideMm3 + inside, FULL_MM2 * full.thicknessMm)).toBeLessThan(1e-9);
    const mesh = parts.outside;
    if (!mesh) throw new Error('nothing outside');
    const flaws = meshFlaws(mesh.positions, mesh.triangles);
    expect(flaws).toMatchObject({ openEdges: 0, degenerate: 0, notFinite: 0 });
    expect(rel(flaws.volume, parts.outsideMm3)).toBeLessThan(1e-9);
  });

  test('the part outside against a sample of points, seed 9', () => {
    const random = seeded(9);
    const [n, t] = [300_000, full.thicknessMm];
    let count = 0;
    for (let k = 0; k < n; k++) {
      const [s, a, y] = [34 * random(), t * (random() - 0.5), 22 * (random() - 0.5)];
      if (!inFace(Math.abs(y), s)) continue;
      if (Math.abs(y) >= halfBreadthAt(body.shape, inSlot(slot, s, a))) count++;
    }
    const each = (22 * 34 * t) / n;
    expect(Math.abs(parts.outsideMm3 - count * each)).toBeLessThan(3 * Math.sqrt(count) * each); // three standard errors
  });

  test('a lure with such a lip holds what a lure must, and floats the lighter plate', () => {
    const keys = {
      cornerRadiusMm: 6,
      tab: { widthMm: 8, insideRadiusMm: 1 },
      eyeHole: { diameterMm: 3, forwardMm: 7 },
    };
    const lip = (change: object) => ({ ...diverLip(), ...change }) as PatternFile['lip'];
    const [square, cut] = [{}, keys].map((k) => designOf(patternOf('diver', { lip: lip(k) })));
    const [a, b] = [square, cut].map((d) => makeLure(d, MATERIALS, TIMBER));
    expect(checkLure(b, cut.body)).toEqual([]);
    const lipOf = (l: typeof a) => l.items.find((i) => i.name === 'lip');
    expect((lipOf(a)?.massG ?? 0) - (lipOf(b)?.massG ?? 0)).toBeCloseTo(
      (22 * 34 - FULL_MM2) * plain.thicknessMm * 1.2e-3,
      9,
    );
    expect(b.displacing.find((d) => d.name === 'lip')).toBeDefined();
  });
});

/** The lip's section as the file has it. */
const diverLip = () => ({
  widthMm: plain.widthMm,
  lengthMm: plain.lengthMm,
  thicknessMm: plain.thicknessMm,
  material: plain.material,
  angleDeg: plain.angleDeg,
  slot: {
    stationMm: plain.slotStationMm,
    depthMm: plain.slotDepthMm,
    fitMm: plain.slotWidthMm - plain.thicknessMm,
  },
  cornerRadiusMm: 0,
});

/** By the numbers of `full`, written out: tab 4 mm and shoulders at 11, round of 6 about (5, 28), hole at 18. */
function inFace(y: number, s: number): boolean {
  if (Math.hypot(y, s - 18) < 1.5) return false;
  if (s < 11) return y < 4 || (s > 10 && y < 5 && Math.hypot(y - 5, s - 10) > 1);
  return y < 11 && (s < 28 || y < 5 || Math.hypot(y - 5, s - 28) < 6);
}
