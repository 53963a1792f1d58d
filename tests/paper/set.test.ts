/** All paper of a run whose tools follow its lines, read back from its files: no kerf in any of it. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { distanceToEdge, type Point2 } from '../../src/geometry/vec.js';
import { readFaces } from '../../src/io.js';
import { produce } from '../../src/produce.js';
import { fileSet, type MadeFile } from '../../src/record/file-set.js';
import { type ReadPath, type ReadPdf, readPdf } from '../formats/pdf-reader.js';

const ROOT = join(import.meta.dirname, '../..');

const RUN = `schema: 1
kind: run
name: laser
orders:
  - { pattern: ${ROOT}/templates/ghyll.yaml, count: 6 }
blocks:
  - { name: pile, timber: western-redcedar, lengthMm: 300, widthMm: 90, thicknessMm: 20, count: 4 }
stack: { layers: 1, tapeThicknessMm: 0.2, largestHeightMm: 60 }
saw: { guidance: follows, kerfMm: 0.4 }
templateSheet:
  material: birch plywood
  lengthMm: 300
  widthMm: 200
  thicknessMm: 3
  cutter: { guidance: follows, kerfMm: 0.4 }
jigs: [${ROOT}/jigs/gauges.yaml]
`;

type Record = {
  patterns: {
    name: string;
    version: string;
    outline: Point2[];
    wire: { diameterMm: number; lengthToCutMm: number; centerLine: number[][] };
    resolved: { lip: { widthMm: number; lengthMm: number } };
  }[];
  nest: { faces: { placements: { outline: Point2[] }[] }[] };
  paper: {
    files: {
      file: string;
      kind: string;
      pattern: string | null;
      kerf: string | null;
      sheets: { boxMm: number[] }[];
      pages: { drawingMm: number[]; atMm: Point2; widthMm: number; heightMm: number }[];
    }[];
  };
};

let files: readonly MadeFile[];
let record: Record;
let made: ReadonlyMap<string, ReadPdf>;

beforeAll(async () => {
  const path = join(mkdtempSync(join(tmpdir(), 'blankwright-paper-')), 'laser.yaml');
  writeFileSync(path, RUN);
  const { made: done, problems } = await produce(path);
  if (!done) throw new Error(JSON.stringify(problems));
  files = await fileSet(done.build, done.kernel, 'blankwright test', readFaces());
  const json = files.find((f) => f.path === 'build.json')?.bytes;
  record = JSON.parse(new TextDecoder().decode(json));
  const papers = record.paper.files.map(({ file }) => files.find((f) => f.path === file));
  made = new Map(
    await Promise.all(
      papers.map(
        async (f) => [f?.path ?? '', await readPdf(f?.bytes ?? new Uint8Array())] as const,
      ),
    ),
  );
});

/** Outlines of a file's pages, 0.35 mm broad and closed, in the frame of the drawing. */
function outlines(path: string): Point2[][] {
  const { pages } = record.paper.files.find((f) => f.file === path) ?? { pages: [] };
  return pages.flatMap(({ drawingMm, atMm }, i) =>
    drawn(path, i)
      .filter((p) => p.closed && Math.abs((p.penMm ?? 0) - 0.35) < 1e-4)
      .map(({ points }) =>
        points.map(([x, y]): Point2 => [x - atMm[0] + drawingMm[0], y - atMm[1] + drawingMm[1]]),
      ),
  );
}
const drawn = (path: string, page: number): readonly ReadPath[] =>
  made.get(path)?.pages[page].paths.filter((p) => p.window !== null) ?? [];
const words = (path: string): string =>
  made
    .get(path)
    ?.pages.flatMap((p) => p.texts.map((t) => t.text))
    .join(' ') ?? '';
const sides = (points: readonly Point2[]) =>
  [0, 1].map((k) => Math.max(...points.map((p) => p[k])) - Math.min(...points.map((p) => p[k])));

test('there is a file for each thing that goes on paper, with its kind', () => {
  const faces = record.nest.faces.map((_, i) => [`faces/face-${i + 1}.pdf`, 'face', undefined]);
  const pdfs = files.filter((f) => f.format === 'pdf').map((f) => [f.path, f.kind, f.pattern]);
  expect(pdfs.filter(([path]) => record.paper.files.some((f) => f.file === path))).toEqual([
    ['paper/printer-check.pdf', 'printer-check', undefined],
    ...faces,
    ['templates/ghyll.pdf', 'template', 'ghyll'],
    ['gauges/ghyll-gauges.pdf', 'gauge', 'ghyll'],
    ['gauges/ghyll-round-over.pdf', 'round-over-map', 'ghyll'],
    ['wire/ghyll-wire.pdf', 'wire', 'ghyll'],
    ['lips/ghyll-lip.pdf', 'lip', 'ghyll'],
  ]);
});

test('every page says what it is, how to print it and whether kerf is in it', () => {
  for (const { file, kerf, pattern, pages } of record.paper.files) {
    const read = made.get(file);
    expect(read?.pages).toHaveLength(pages.length);
    expect(read?.printScaling).toBe('None');
    read?.pages.forEach((page, i) => {
      const said = page.texts.map((t) => t.text).join(' ');
      expect(said).toContain('Print at 100 %');
      expect(said).toContain(file);
      expect(said).toContain(`Page ${i + 1} of ${pages.length}`);
      expect(said).toContain('100 mm');
      expect(said).toContain('4 in');
      expect(said.includes('Kerf is not in the lines')).toBe(kerf === 'not in it');
      if (pattern) expect(said).toContain(`${pattern}, version ${record.patterns[0].version}`);
      expect(Math.abs(page.widthMm - pages[i].widthMm)).toBeLessThan(1e-4);
      expect(Math.abs(page.heightMm - pages[i].heightMm)).toBeLessThan(1e-4);
    });
  }
});

/** Chords of the record's outlines lie within 0.02 mm of it; half the kerf is 0.2 mm. */
const CHORD_MM = 0.021;
const furthest = (points: readonly Point2[], outline: readonly Point2[]) =>
  Math.max(...points.map((p) => distanceToEdge(p, outline)));

describe('nominal size', () => {
  test('the template’s outline is the blank’s, not the path that the laser takes', () => {
    const [{ outline }] = record.patterns;
    const [line] = outlines('templates/ghyll.pdf').sort((a, b) => b.length - a.length);
    expect(furthest(line, outline)).toBeLessThan(CHORD_MM);
    expect(furthest(outline, line)).toBeLessThan(CHORD_MM);
  });

  test('so are those of faces, each where its blank lies', () => {
    record.nest.faces.forEach(({ placements }, i) => {
      const lines = outlines(`faces/face-${i + 1}.pdf`);
      expect(lines.length).toBeGreaterThanOrEqual(placements.length);
      const all = placements.map((p) => p.outline);
      for (const line of lines)
        expect(Math.min(...all.map((outline) => furthest(line, outline)))).toBeLessThan(CHORD_MM);
      for (const outline of all) {
        const off = lines.map((line) => furthest(outline, line));
        expect(Math.min(...off)).toBeLessThan(CHORD_MM);
      }
    });
  });

  test('gauges lie whole on a page, two profiles and five sections', () => {
    expect(outlines('gauges/ghyll-gauges.pdf')).toHaveLength(7);
    for (const { paths } of made.get('gauges/ghyll-gauges.pdf')?.pages ?? [])
      for (const { points, window } of paths.filter((p) => p.window !== null))
        for (const [x, y] of points) {
          expect(x > (window?.[0] ?? 0) && x < (window?.[2] ?? 0)).toBe(true);
          expect(y > (window?.[1] ?? 0) && y < (window?.[3] ?? 0)).toBe(true);
        }
  });

  test('the lip is as wide and as long as its pattern says', () => {
    const { widthMm, lengthMm } = record.patterns[0].resolved.lip;
    const lip = outlines('lips/ghyll-lip.pdf').sort((a, b) => sides(b)[1] - sides(a)[1])[0];
    expect(sides(lip)[0]).toBeCloseTo(widthMm, 3);
    expect(sides(lip)[1]).toBeCloseTo(lengthMm, 3);
    expect(words('lips/ghyll-lip.pdf')).toContain('6 to cut from');
  });

  test('the wire is as broad as it is, white between its edges, its middle drawn', () => {
    const [{ wire }] = record.patterns;
    const lines = drawn('wire/ghyll-wire.pdf', 0);
    const broad = lines.find((p) => Math.abs((p.penMm ?? 0) - wire.diameterMm) < 1e-4);
    const middle = lines.filter((p) => p.dashMm.length > 0 && p.points.length > 30);
    expect(broad?.points).toHaveLength(middle[0].points.length);
    expect(lines.some((p) => p.stroke === '#ffffff' && (p.penMm ?? 0) < wire.diameterMm)).toBe(
      true,
    );
    // A center line from eye to eye, corner for corner.
    const { drawingMm, atMm } = record.paper.files.find((f) => f.kind === 'wire')?.pages[0] ?? {
      drawingMm: [],
      atMm: [0, 0],
    };
    for (const [x, y] of wire.centerLine) {
      const at: Point2 = [x - drawingMm[0] + atMm[0], y - drawingMm[1] + atMm[1]];
      const near = middle[0].points.map((p) => Math.hypot(p[0] - at[0], p[1] - at[1]));
      expect(Math.min(...near)).toBeLessThan(2e-4);
    }
    expect(words('wire/ghyll-wire.pdf')).toContain(
      `Cut ${Math.ceil(wire.lengthToCutMm)} mm of ${wire.diameterMm} mm wire`,
    );
  });
});

test('cautions stand where something is sawn, bent, sanded or routed', () => {
  const said = {
    'templates/ghyll.pdf': 'never fingers near the blade',
    'faces/face-1.pdf': 'never fingers near the blade',
    'gauges/ghyll-gauges.pdf': 'dust mask',
    'gauges/ghyll-round-over.pdf': 'never fingers near the bit',
    'wire/ghyll-wire.pdf': 'eye protection',
    'lips/ghyll-lip.pdf': 'eye protection',
  };
  for (const [path, caution] of Object.entries(said)) {
    expect(words(path), path).toContain(caution);
    expect(words(path), path).toMatch(/come first/i);
  }
});
