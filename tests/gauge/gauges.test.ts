import { describe, expect, test } from 'vitest';
import type { Nominal } from '../../src/blank/nominal.js';
import { halves } from '../../src/body/properties.js';
import { type GaugeWish, makeGauges } from '../../src/gauge/gauges.js';
import type { PlateSizes } from '../../src/gauge/plate.js';
import { flatten, pathArea } from '../../src/geometry/arcpath.js';
import { asRegion, offset, subtract } from '../../src/geometry/clip.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import { type Ring, ringArea } from '../../src/geometry/ring.js';
import { distanceToEdge, type Point2, type Point3 } from '../../src/geometry/vec.js';
import { movedBy } from '../../src/solid/csg.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { sectionsAt } from '../../src/solid/measure.js';
import { placement } from '../../src/solid/placement.js';
import { designOf, patternOf } from '../mass/lures.js';

const kernel = await loadKernel();
const SIZES: PlateSizes = { rimMm: 8, spineMm: 26, profileRimMm: 20, endMm: 14 };
const BY_RULE: GaugeWish = { ...SIZES, stations: 5, stationsMm: [], stationRatios: [] };
const ringOf = ({ path }: Nominal): Ring => flatten(path, 0.002);

const made = (name: string, wish = BY_RULE) => {
  const design = designOf(patternOf(name));
  const { gauges, outside } = makeGauges(design.body.shape, design.blank, wish);
  if (!gauges) throw new Error(JSON.stringify(outside));
  return { ...design, gauges };
};

/** The mesh cut across at a station by the kernel: y to the right, z up. */
function cutAt(mesh: Mesh, stationMm: number): Ring {
  const [x, y, z]: Point3[] = [
    [0, 0, 1],
    [1, 0, 0],
    [0, 1, 0],
  ];
  const turned = movedBy(placement(x, y, z, [0, 0, 0]), { kind: 'mesh', mesh });
  const [[region]] = sectionsAt(kernel, turned, [stationMm]);
  return region.outer;
}

describe.each(['diver', 'slim', 'plain'])('%s', (name) => {
  const { pattern, body, blank, gauges } = made(name);

  test('the edge of a section gauge is the body cut by the kernel, to 0.02 mm both ways', () => {
    expect(gauges.sections).toHaveLength(5);
    for (const { outline, stationMm, halfBreadthMm, backMm, bellyMm } of gauges.sections) {
      const cut = cutAt(body.mesh, stationMm);
      const edge = ringOf(outline);
      const onCurve = edge.filter(
        ([y, z]) => y <= halfBreadthMm + 1e-6 && z <= backMm + 1e-6 && z >= -bellyMm - 1e-6,
      );
      expect(onCurve.length).toBeGreaterThan(10);
      for (const p of onCurve) expect(distanceToEdge(p, cut)).toBeLessThan(0.02);
      for (const [y, z] of cut.filter((p) => p[0] > 0))
        expect(distanceToEdge([y, z], edge)).toBeLessThan(0.02);
    }
  });

  test('the profile gauges are what is left beside the sawn outline shrunk by the sanding allowance', () => {
    const [finished] = offset([asRegion(blank.profileRing)], -pattern.sandingAllowanceMm, 0.002);
    for (const { outline, side, interruptedMm } of gauges.profiles) {
      const plate = ringOf(outline);
      const curve = finished.outer.filter(([x, z]) => {
        const [from, to] = interruptedMm ?? [0, 0];
        return (side === 'back' ? z > 0.1 : z < -0.1) && (x < from || x > to);
      });
      expect(curve.length).toBeGreaterThan(20);
      for (const p of curve) expect(distanceToEdge(p, plate)).toBeLessThan(0.03); // chords of the blank, 0.015
      const [only, ...more] = subtract([asRegion(plate)], [asRegion(finished.outer)]);
      expect(more.filter((r) => ringArea(r.outer) > 0.05)).toEqual([]);
      expect(ringArea(only.outer)).toBeGreaterThan(ringArea(plate) - 0.03 * 2 * pattern.lengthMm);
    }
  });

  test('the edge stays off the wood at the lip slot', () => {
    const [, belly] = gauges.profiles;
    expect(belly.interruptedMm === null).toBe(blank.slot === null);
    if (!belly.interruptedMm || !blank.slot) return;
    const [from, to] = belly.interruptedMm;
    const plate = ringOf(belly.outline);
    for (const share of [0.3, 0.5, 0.7]) {
      const x = from + share * (to - from);
      const [, { h }] = halves(body.shape, x);
      expect(distanceToEdge([x, -h], plate)).toBeGreaterThan(0.8);
    }
  });

  test('plates wind once, counter-clockwise', () => {
    for (const { outline } of [...gauges.sections, ...gauges.profiles])
      expect(pathArea(outline.path)).toBeGreaterThan(100);
  });
});

describe('listed stations', () => {
  test('at stations of the table of offsets the edge goes through every offset of the table', () => {
    const table = patternOf('diver');
    const stationsMm = table.halfBreadth.map((o) => o.stationMm);
    const { gauges } = made('diver', { ...BY_RULE, stations: 0, stationsMm });
    expect(gauges.sections.map((s) => s.stationMm)).toEqual(stationsMm);
    gauges.sections.forEach(({ outline }, i) => {
      const offsets: Point2[] = [
        [table.halfBreadth[i].offsetMm, 0],
        [0, table.back[i].offsetMm],
        [0, -table.belly[i].offsetMm],
      ];
      for (const p of offsets) {
        const near = outline.path.vertices.map(({ x, y }) => Math.hypot(x - p[0], y - p[1]));
        expect(Math.min(...near)).toBeLessThan(1e-9);
      }
    });
  });

  test('ratios are of the length; the rule fills up', () => {
    const { gauges } = made('diver', { ...BY_RULE, stations: 4, stationRatios: [0.6] });
    const listed = gauges.sections.filter((s) => s.reason === 'listed');
    expect(listed.map((s) => s.stationMm)).toEqual([60]);
    expect(gauges.sections).toHaveLength(4);
  });

  test('a station beyond the body is told with what would do', () => {
    const { body, blank } = designOf(patternOf('diver'));
    const wish = { ...BY_RULE, stationsMm: [1, 50, 99] };
    const { gauges, outside } = makeGauges(body.shape, blank, wish);
    expect(gauges).toBeNull();
    expect(outside).toEqual([
      { stationMm: 1, leastMm: 2, mostMm: 98 },
      { stationMm: 99, leastMm: 2, mostMm: 98 },
    ]);
  });
});

describe('stations by the rule', () => {
  test('the widest of the table first, both shoulders, all at whole mm and apart', () => {
    const { gauges } = made('diver');
    const stations = gauges.sections.map((s) => s.stationMm);
    expect(stations).toEqual([...stations].sort((a, b) => a - b));
    expect(stations.every(Number.isInteger)).toBe(true);
    expect(Math.min(...stations.slice(1).map((x, i) => x - stations[i]))).toBeGreaterThanOrEqual(6);
    const reasons = gauges.sections.map((s) => s.reason);
    expect(reasons).toEqual(expect.arrayContaining(['widest', 'nose shoulder', 'tail shoulder']));
  });

  test('clear of ballast holes, hangers and lip slot', () => {
    const { gauges, blank } = made('diver');
    for (const { stationMm: x } of gauges.sections) {
      for (const h of blank.holes)
        expect(Math.abs(x - h.stationMm)).toBeGreaterThan(h.diameterMm / 2 + 2);
      for (const h of blank.hangers) expect(Math.abs(x - h.stationMm)).toBeGreaterThan(2);
    }
  });

  test('fewer than the landmarks: the widest alone; more: between', () => {
    expect(made('diver', { ...BY_RULE, stations: 1 }).gauges.sections.map((s) => s.reason)).toEqual(
      ['widest'],
    );
    const many = made('diver', { ...BY_RULE, stations: 7 }).gauges.sections;
    expect(many).toHaveLength(7);
    expect(many.filter((s) => s.reason === 'between').length).toBeGreaterThan(2);
  });
});
