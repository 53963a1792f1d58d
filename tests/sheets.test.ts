/** A run with sheets for templates and lips, from its file to its files, read back by others. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { beforeAll, describe, expect, test } from 'vitest';
import { readFaces, sha256 } from '../src/io.js';
import { produce } from '../src/produce.js';
import { fileSet, type MadeFile } from '../src/record/file-set.js';
import { manifestText } from '../src/record/manifest.js';

const ROOT = join(import.meta.dirname, '..');
const text = (f: MadeFile) => new TextDecoder().decode(f.bytes);

type Placement = { pattern: string; xMm: number; yMm: number; turnDeg: number };
type Sheet = {
  kind: string;
  id: number;
  material: string;
  lengthMm: number;
  widthMm: number;
  thicknessMm: number;
  marginMm: number;
  gapMm: number;
  copies: number;
  outlines: { [pattern: string]: [number, number][] };
  placements: (Placement & { outline: [number, number][] })[];
};
type Entity = {
  type: string;
  layer: string;
  shape?: boolean;
  radius?: number;
  vertices?: { x: number; y: number; bulge?: number }[];
};

const LIP_SHEETS = `
lipSheets:
  - { material: clear polycarbonate, lengthMm: 250, widthMm: 120, thicknessMm: 1.5, cutter: { guidance: follows, kerfMm: 1.5 } }
  - { material: clear polycarbonate, lengthMm: 200, widthMm: 160, thicknessMm: 2, marginMm: 8, webMm: 3, cutter: { guidance: steered, kerfMm: 0.6, wanderMm: 0.5 } }
`;

describe('a run with lip sheets', () => {
  let files: MadeFile[];
  let sheets: Sheet[];
  beforeAll(async () => {
    const dir = mkdtempSync(join(tmpdir(), 'blankwright-sheets-'));
    const run = readFileSync(join(ROOT, 'templates/first-ice.yaml'), 'utf8').replace(
      /pattern: /g,
      `pattern: ${ROOT}/templates/`,
    );
    // A sheet the largest template fits only when it is turned by a quarter.
    const narrow = run.replace('lengthMm: 300\n  widthMm: 200', 'lengthMm: 80\n  widthMm: 180');
    expect(narrow).not.toBe(run);
    const path = join(dir, 'sheets.yaml');
    const other = narrow.replace(/^lipSheets:[\s\S]*/m, '');
    expect(other).not.toBe(narrow);
    writeFileSync(path, other + LIP_SHEETS);
    const { made, problems } = await produce(path);
    if (!made) throw new Error(JSON.stringify(problems));
    expect(problems).toEqual([]);
    files = await fileSet(made.build, made.kernel, 'blankwright test', readFaces());
    const json = files.find((f) => f.path === 'build.json');
    sheets = JSON.parse(json ? text(json) : '').sheets;
  });

  const entities = ({ kind, id }: Sheet): Entity[] => {
    const file = files.find((f) => f.path === `sheets/${kind}-${id}.dxf`);
    const parser = new (DxfParser as unknown as typeof DxfParser.default)();
    return (parser.parseSync(file ? text(file) : '')?.entities ?? []) as unknown as Entity[];
  };
  const counted = (kind: string): { [pattern: string]: number } => {
    const counts: { [pattern: string]: number } = {};
    for (const s of sheets.filter((s) => s.kind === kind)) {
      for (const { pattern } of s.placements) counts[pattern] = (counts[pattern] ?? 0) + s.copies;
    }
    return counts;
  };

  test('has a template for each line of the order, and a lip for each blank ordered', () => {
    expect(counted('template-sheet')).toEqual({ skerry: 1, 'skerry-130': 1, ghyll: 1, holm: 1 });
    // holm has no lip
    expect(counted('lip-sheet')).toEqual({ skerry: 22, 'skerry-130': 8, ghyll: 16 });
  });

  test('takes each lip from the sheet of its thickness, with that sheet’s own margin and gap', () => {
    for (const s of sheets.filter((s) => s.kind === 'lip-sheet')) {
      const own = s.placements.some((p) => p.pattern === 'ghyll');
      // Two cuts and the web between them; a steered cut may wander.
      expect(s).toMatchObject(
        own
          ? { thicknessMm: 2, marginMm: 8, gapMm: 2 * (0.6 + 0.5) + 3 }
          : { thicknessMm: 1.5, marginMm: 5, gapMm: 2 * 1.5 + 2 },
      );
    }
    const { outlines } = sheets.find((s) => s.outlines.ghyll && s.kind === 'lip-sheet') as Sheet;
    expect(outlines.ghyll).toEqual([
      [0, 0],
      [26, 0],
      [26, 48],
      [0, 48],
    ]);
  });

  test('turns templates by a quarter on a sheet that stands on end', () => {
    const turns = sheets
      .filter((s) => s.kind === 'template-sheet')
      .flatMap((s) => s.placements.map((p) => p.turnDeg % 180));
    expect(new Set(turns)).toEqual(new Set([90]));
  });

  test('writes each sheet to a DXF with all its cuts, compensated once, openings first', () => {
    expect(sheets.length).toBeGreaterThan(3);
    for (const sheet of sheets) {
      const found = entities(sheet);
      const outside = found.filter((e) => e.layer === 'CUT_OUTSIDE');
      expect(outside).toHaveLength(sheet.placements.length);
      expect(outside.every((e) => e.shape)).toBe(true);
      const layers = found.map((e) => e.layer);
      expect(layers.lastIndexOf('CUT_INSIDE')).toBeLessThan(layers.indexOf('CUT_OUTSIDE'));
      const kerf = sheet.kind === 'template-sheet' ? 0.2 : sheet.thicknessMm === 2 ? 0 : 1.5;
      outside.forEach((cut, i) => {
        const xs = (cut.vertices ?? []).map((v) => v.x);
        const wanted = sheet.placements[i].outline.map(([x]) => x);
        // An arc may bulge beyond its ends, by less than this between neighbors on a smooth outline.
        expect(Math.min(...xs)).toBeCloseTo(Math.min(...wanted) - kerf / 2, 1);
        expect(Math.max(...xs)).toBeCloseTo(Math.max(...wanted) + kerf / 2, 1);
      });
    }
  });

  test('keeps pencil holes and hang holes of the single templates', () => {
    const holes = (list: readonly Entity[]) =>
      list
        .filter((e) => e.layer === 'CUT_INSIDE')
        .map((e) => e.radius ?? 0)
        .sort();
    const single = files
      .filter((f) => f.kind === 'template' && f.format === 'dxf')
      .flatMap((f) => {
        const parser = new (DxfParser as unknown as typeof DxfParser.default)();
        return (parser.parseSync(text(f))?.entities ?? []) as unknown as Entity[];
      });
    const together = sheets.filter((s) => s.kind === 'template-sheet').flatMap(entities);
    expect(holes(together)).toEqual(holes(single));
    expect(holes(together).length).toBeGreaterThan(6);
    const marks = (list: readonly Entity[]) => list.filter((e) => e.layer === 'MARK').length;
    expect(marks(together)).toBe(marks(single));
  });

  test('warns where clear plastic is cut', () => {
    const words = (path: string) => text(files.find((f) => f.path === path) as MadeFile);
    expect(words('sheets/lip-sheet-1.svg')).toContain(
      'POLYCARBONATE GIVES HARMFUL FUME UNDER A LASER',
    );
    expect(words('sheets/lip-sheet-1.svg')).toContain('NEVER LASER PVC');
    expect(
      words(`sheets/lip-sheet-${sheets.filter((s) => s.kind === 'lip-sheet').length}.svg`),
    ).toContain('EYE PROTECTION');
  });

  test('lists the sheets in the manifest by their kinds', () => {
    const manifest = JSON.parse(manifestText({ name: 'b', version: '0' }, [], files, sha256));
    const kinds = manifest.files
      .filter((f: { path: string }) => f.path.startsWith('sheets/'))
      .map((f: { kind: string }) => f.kind);
    expect(kinds).toHaveLength(2 * sheets.length);
    expect(new Set(kinds)).toEqual(new Set(['template-sheet', 'lip-sheet']));
  });
});
