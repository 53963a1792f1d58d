/** The demo run from its files to its files, held against facts of the trade and outside readers. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { beforeAll, describe, expect, test } from 'vitest';
import { readFaces, sha256 } from '../src/io.js';
import type { Build } from '../src/pipeline.js';
import { produce } from '../src/produce.js';
import { recordText } from '../src/record/build-json.js';
import { fileSet, type MadeFile } from '../src/record/file-set.js';
import { manifestText } from '../src/record/manifest.js';
import { readBackStl } from '../src/solid/readback.js';

const ROOT = join(import.meta.dirname, '..');
const text = (f: MadeFile) => new TextDecoder().decode(f.bytes);

async function built(path: string): Promise<{ build: Build; files: MadeFile[] }> {
  const { made, problems } = await produce(path);
  if (!made) throw new Error(JSON.stringify(problems));
  const files = await fileSet(made.build, made.kernel, 'blankwright test', readFaces());
  return { build: made.build, files };
}

type Record = {
  patterns: {
    name: string;
    volumeMm3: number;
    areaMm2: number;
    outline: [number, number][];
    lipAngleDeg: number | null;
    holes: { stationMm: number; diameterMm: number; depthMm: number }[];
    gauges: { number: number; halfBreadthMm: number; backMm: number; bellyMm: number }[];
    roundOverMap: {
      [side in 'back' | 'belly']: { places: unknown[]; least: { radiusMm: number } };
    };
  }[];
  nest: {
    faces: {
      lengthMm: number;
      widthMm: number;
      marginMm: number;
      gapMm: number;
      layers: number;
      copies: number;
      knots: unknown[];
      placements: {
        pattern: string;
        xMm: number;
        yMm: number;
        turnDeg: number;
        outline: [number, number][];
      }[];
    }[];
    made: { [name: string]: number };
    ordered: { [name: string]: number };
  };
  sheets: {
    kind: string;
    id: number;
    copies: number;
    lengthMm: number;
    widthMm: number;
    marginMm: number;
    gapMm: number;
    outlines: { [pattern: string]: [number, number][] };
    placements: { pattern: string; xMm: number; yMm: number; turnDeg: number }[];
  }[];
  shop: {
    timber: { block: string; count: number; faces: number[] }[];
    tape: { joints: number };
    patterns: { name: string; count: number; drilling: { collarMm: number | null }[] }[];
    melt: { metal: string; holes: number; netG: number }[];
    finishes: { name: string; coat: number; totalG: number; pots: { totalG: number }[] }[];
    timeline: { kind: string; handsOnMin: number }[];
  };
  jigs: {
    pattern: string;
    kind: string;
    file: string;
    axis: { originMm: number[]; direction: number[] };
    jigToBlank: number[];
  }[];
};

describe('the demo run', () => {
  let demo: Awaited<ReturnType<typeof built>>;
  let record: Record;
  const sheetsOf = (kind: string) => record.sheets.filter((s) => s.kind === kind);
  beforeAll(async () => {
    demo = await built(join(ROOT, 'templates/first-ice.yaml'));
    const json = demo.files.find((f) => f.path === 'build.json');
    if (!json) throw new Error('no build.json');
    record = JSON.parse(text(json));
  });

  test('three patterns of our own, one in two sizes', () => {
    expect(record.patterns.map((p) => p.name)).toEqual(['skerry', 'skerry-130', 'ghyll', 'holm']);
    const [small, large] = record.patterns;
    expect(large.volumeMm3 / small.volumeMm3).toBeCloseTo(1.3 ** 3, 6);
    expect(large.areaMm2 / small.areaMm2).toBeCloseTo(1.3 ** 2, 6);
  });

  // Common practice, no source: about 14 mm deep in the sawn blank of a mid-size lure, 35 mm aft of the nose.
  test('the ballast hole of a mid-size lure', () => {
    expect(record.patterns[0].holes).toEqual([
      expect.objectContaining({ stationMm: 35, tiltDeg: 0, depthMm: 14 }),
    ]);
    // A twist bit's point of 118° is 8 mm / 2 / tan 59° long: 2.403442 mm.
    expect(record.patterns[0].holes).toEqual([expect.objectContaining({ tipDepthMm: 16.403442 })]);
  });

  test('every template lies on a sheet, once', () => {
    const names = sheetsOf('template-sheet').flatMap((s) => s.placements.map((p) => p.pattern));
    expect(names.sort()).toEqual(record.patterns.map((p) => p.name).sort());
  });

  test('a lip for every blank ordered lies on sheets, and none for patterns without one', () => {
    const counted: { [name: string]: number } = {};
    for (const s of sheetsOf('lip-sheet')) {
      for (const p of s.placements) counted[p.pattern] = (counted[p.pattern] ?? 0) + s.copies;
    }
    const withLip = record.patterns.filter((p) => p.lipAngleDeg !== null).map((p) => p.name);
    expect(withLip.length).toBeGreaterThan(1);
    expect(counted).toEqual(Object.fromEntries(withLip.map((n) => [n, record.nest.ordered[n]])));
  });

  test('every blank that was ordered is made', () => {
    expect(record.nest.ordered).toEqual({ skerry: 22, 'skerry-130': 8, ghyll: 16, holm: 10 });
    const counted: { [name: string]: number } = {};
    for (const f of record.nest.faces) {
      for (const p of f.placements)
        counted[p.pattern] = (counted[p.pattern] ?? 0) + f.layers * f.copies;
    }
    expect(counted).toEqual(record.nest.made);
    for (const [name, n] of Object.entries(record.nest.ordered))
      expect(record.nest.made[name]).toBeGreaterThanOrEqual(n);
  });

  test('jigs stand on the axis of their pattern', () => {
    // Five section gauges and two profile gauges a pattern beside its jigs.
    expect(record.jigs).toHaveLength(7 + 4 * 7 + 3 * 4 + 1);
    const drill = record.jigs.find((j) => j.pattern === 'skerry' && j.kind === 'drill-stop');
    expect(drill?.axis.originMm[0]).toBeCloseTo(35, 6);
    expect(drill?.axis.direction).toEqual([0, 0, 1]);
    const guide = record.jigs.find((j) => j.pattern === 'ghyll' && j.kind === 'lip-slot-guide');
    const a = (20 * Math.PI) / 180;
    expect(guide?.axis.direction[0]).toBeCloseTo(Math.cos(a), 6);
    expect(guide?.axis.direction[2]).toBeCloseTo(Math.sin(a), 6);
    for (const j of record.jigs) {
      expect(j.jigToBlank).toHaveLength(16);
      expect(demo.files.some((f) => f.path === j.file)).toBe(true);
    }
  });

  test('each DXF, read by another parser: millimeters, closed outlines, one for each blank, a bar of 100 mm', () => {
    const drawings = demo.files.filter((f) => f.format === 'dxf');
    // A template, gauges and strips for each pattern.
    expect(drawings).toHaveLength(record.nest.faces.length + record.sheets.length + 3 * 4);
    for (const file of drawings) {
      const parser = new (DxfParser as unknown as typeof DxfParser.default)();
      const dxf = parser.parseSync(text(file));
      if (!dxf) throw new Error(file.path);
      expect(dxf.header.$INSUNITS).toBe(4);
      type Line = {
        layer: string;
        shape?: boolean;
        vertices?: { x: number; y: number; bulge?: number }[];
      };
      const cuts = (dxf.entities as unknown as Line[]).filter((e) => e.layer === 'CUT_OUTSIDE');
      const at = Number(file.path.match(/(\d+)\.dxf$/)?.[1]) - 1;
      const parts = {
        face: record.nest.faces,
        'template-sheet': sheetsOf('template-sheet'),
        'lip-sheet': sheetsOf('lip-sheet'),
      }[file.kind as string];
      const alone = { gauge: 7, 'round-over-map': 2 }[file.kind as string] ?? 1;
      expect(cuts, file.path).toHaveLength(parts ? parts[at].placements.length : alone);
      for (const c of cuts) {
        expect(c.shape).toBe(true);
        // A lip is a plain rectangle when its saw is led by hand, and so is a strip of paper.
        const isPlain = file.kind === 'lip-sheet' || file.kind === 'round-over-map';
        expect(c.vertices?.some((v) => v.bulge)).toBe(!isPlain);
      }
      const bars = (dxf.entities as unknown as Line[]).filter((e) => {
        const [p, q] = e.vertices ?? [];
        return (
          e.layer === 'RULE' &&
          e.vertices?.length === 2 &&
          p.y === q.y &&
          Math.abs(q.x - p.x) === 100
        );
      });
      expect(bars, file.path).toHaveLength(1);
    }
  });

  test('what the bench needs is told: blocks, holes with their collar, metal, pots, time', () => {
    const { timber, tape, patterns, melt, finishes, timeline } = record.shop;
    expect(timber.map((t) => [t.block, t.count])).toEqual([
      ['boathouse-cedar', 2],
      ['boathouse-cedar-knotty', 2],
      ['roof-cedar', 2],
      ['basswood', 2],
    ]);
    expect(timber.flatMap((t) => t.faces)).toEqual([1, 2, 3, 4]);
    expect(tape.joints).toBe(4);
    expect(patterns.map((p) => [p.name, p.count])).toEqual(Object.entries(record.nest.ordered));
    expect(patterns.flatMap((p) => p.drilling).every((d) => (d.collarMm ?? 0) > 0)).toBe(true);
    // Skerry has one hole, in two sizes; ghyll two; holm is filled with tin.
    expect(melt.map((m) => [m.metal, m.holes])).toEqual([
      ['lead', 22 + 8 + 2 * 16],
      ['tin', 10],
    ]);
    expect(finishes.map((f) => `${f.name} ${f.coat}`)).toEqual([
      'sealer 1',
      'epoxy 1',
      'epoxy 2',
      'epoxy 3',
    ]);
    for (const { totalG, pots } of finishes.slice(1)) {
      expect(pots.length).toBeGreaterThan(1);
      // Six decimals a pot.
      expect(pots.reduce((sum, p) => sum + p.totalG, 0)).toBeCloseTo(totalG, 5);
    }
    expect(timeline.reduce((sum, s) => sum + s.handsOnMin, 0)).toBeGreaterThan(1000);
  });

  test('gauges and round-over maps are told', () => {
    for (const { gauges, roundOverMap } of record.patterns) {
      expect(gauges.map((g) => g.number)).toEqual([1, 2, 3, 4, 5]);
      expect(gauges.every((g) => g.halfBreadthMm > 0 && g.backMm + g.bellyMm > 0)).toBe(true);
      expect(roundOverMap.back.places.length).toBeGreaterThan(5);
      expect(roundOverMap.belly.least.radiusMm).toBeGreaterThan(0);
    }
  });

  test('each STL, read by another reader: as many facets as written, the volume it should have', () => {
    const solids = demo.files.filter((f) => f.format === 'stl');
    expect(solids).toHaveLength(4 + 4 + 7 + 4 * 7 + 3 * 4 + 1);
    for (const f of solids) {
      const { triangles, volumeMm3 } = readBackStl(f.bytes);
      expect(f.bytes.length).toBe(84 + 50 * triangles);
      const pattern = record.patterns.find((p) => p.name === f.pattern);
      if (f.kind === 'body') expect(volumeMm3 / (pattern?.volumeMm3 ?? 0)).toBeGreaterThan(0.999);
      expect(volumeMm3, f.path).toBeGreaterThan(0);
    }
  });

  test('the manifest lists what there is', () => {
    const manifest = JSON.parse(
      manifestText(
        { name: 'blankwright', version: '0' },
        [{ path: 'a.yaml', sha256: 'x' }],
        demo.files,
        sha256,
      ),
    );
    expect(manifest.files).toHaveLength(demo.files.length);
    expect(new Set(manifest.files.map((f: { kind: string }) => f.kind))).toEqual(
      new Set([
        'sheet',
        'face',
        'template',
        'template-sheet',
        'lip-sheet',
        'gauge',
        'round-over-map',
        'wire',
        'lip',
        'printer-check',
        'picture',
        'view',
        'jig',
        'body',
        'blank',
        'build',
      ]),
    );
    expect(manifest.inputs).toEqual([{ path: 'a.yaml', sha256: 'x' }]);
  });

  test('all PDF together are less than 2 MB', () => {
    const papers = demo.files.filter((f) => f.format === 'pdf');
    expect(papers.length).toBeGreaterThan(15);
    expect(papers.reduce((sum, f) => sum + f.bytes.length, 0)).toBeLessThan(2e6);
  });

  test('the picture in the README is the second face (else: copy it to docs/face.svg)', () => {
    const face = demo.files.find((f) => f.path === 'faces/face-2.svg');
    expect(face && text(face)).toBe(readFileSync(join(ROOT, 'docs/face.svg'), 'utf8'));
  });

  test('another is the first of skerry’s views (else: copy it to docs/views.svg)', () => {
    const lines = demo.files.find((f) => f.path === 'views/skerry-1.svg');
    const shown = readFileSync(join(ROOT, 'docs/views.svg'), 'utf8');
    expect(lines && text(lines)).toBe(shown.replace(/blankwright [\d.]+/, 'blankwright test'));
  });

  test('and the third one is skerry at rest (else: copy it to docs/float.svg)', () => {
    const rest = demo.files.find((f) => f.path === 'float/skerry.svg');
    expect(rest && text(rest)).toBe(readFileSync(join(ROOT, 'docs/float.svg'), 'utf8'));
  });
});

// Common practice, no source: two outlines on a face and two taped blocks give four blanks in one sawing.
test('two outlines on a face, two taped blocks: four blanks in one sawing', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-four-'));
  const run = readFileSync(join(ROOT, 'templates/broken/timber-short.yaml'), 'utf8')
    .replace('../skerry.yaml, count: 60', `${join(ROOT, 'templates/skerry.yaml')}, count: 4`)
    .replace('lengthMm: 300, widthMm: 80', 'lengthMm: 112, widthMm: 62');
  const path = join(dir, 'four.yaml');
  writeFileSync(path, run);
  const { build } = await built(path);
  const [face, ...others] = build.nest?.faces ?? [];
  expect(others).toEqual([]);
  expect(face).toMatchObject({ layers: 2, copies: 1 });
  expect(face.placements).toHaveLength(2);
  expect(build.nest).toMatchObject({ made: { skerry: 4 }, stacks: 1 });
});

test('records: six decimals, no negative zero, points on one line', () => {
  expect(recordText({ a: -0, b: 1 / 3, c: [[1, 2.5]], d: [], e: null, f: -1e-9 })).toBe(
    '{\n  "a": 0,\n  "b": 0.333333,\n  "c": [\n    [1, 2.5]\n  ],\n  "d": [],\n  "e": null,\n  "f": 0\n}\n',
  );
});
