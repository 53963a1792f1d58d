/** Paper of patterns drawn by chance, on sheets and for printers drawn by chance: every page passes the check. */
import { expect, test } from 'vitest';
import { drawnPattern } from '../../src/bench/drawn-pattern.js';
import { workDoor } from '../../src/bench/jig-door.js';
import { makeTemplate, type Sheet } from '../../src/drawing/template-part.js';
import { gauged } from '../../src/gauged.js';
import { seededDraws } from '../../src/geometry/random.js';
import { bentFor } from '../../src/mass/wire-bent.js';
import { checkPapers } from '../../src/paper/check.js';
import { papersOf, paperWrong } from '../../src/papers.js';
import { paperOf } from '../../src/pattern/paper.js';
import { PAPER_NAMES } from '../../src/pattern/paper-schema.js';

const SHEET: Sheet = {
  material: 'ply',
  lengthMm: 1000,
  widthMm: 600,
  thicknessMm: 3,
  hangHoleMm: 5,
  pencilHoleMm: 2.5,
  leastWallMm: 0,
  marginMm: 5,
};
const WISH = {
  stations: 5,
  stationsMm: [],
  stationRatios: [],
  rimMm: 8,
  spineMm: 18,
  profileRimMm: 14,
  endMm: 15,
};
const SEED = 6;

test('the paper of 12 patterns', () => {
  const { workOf } = workDoor();
  const draw = seededDraws(SEED);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)];
  const seen = { patterns: 0, pages: 0, wires: 0, lips: 0, tiled: 0 };
  for (let i = 0; seen.patterns < 12 && i < 200; i++) {
    const work = workOf(drawnPattern(SEED, i));
    const size = pick(PAPER_NAMES);
    const { check } = paperOf(undefined, { size }).paper;
    const printed = {
      acrossMm: check.acrossMm * (0.98 + 0.04 * draw()),
      alongMm: check.alongMm * (0.98 + 0.04 * draw()),
    };
    const { paper } = paperOf(undefined, { size, printed });
    if (!work) continue;
    const { pattern, body, blank, materials } = work;
    const cutter = {
      guidance: pick(['steered', 'follows'] as const),
      kerfMm: pick([0.2, 1.2]),
      wanderMm: 0,
      bladeWidthMm: null,
      cutsLipSlot: pick([true, false]),
    };
    const { template } = makeTemplate(blank, { sheet: SHEET, cutter });
    if (!template) continue;
    const { gauged: plates } = gauged(
      { pattern, shape: body.shape, blank },
      { wish: WISH, asked: true },
      null,
    );
    const wire = bentFor(pattern, body.shape, materials)?.wire ?? null;
    expect(paperWrong(paper, 'drawn', [{ blank, gauged: plates }], [])).toEqual([]);
    const product = { pattern, count: 1 + i, blank, body, template, gauged: plates, wire };
    const papers = papersOf('drawn', [product], [], paper);
    expect(checkPapers(papers), `pattern ${i}`).toEqual([]);
    const sheets = papers.files.flatMap((f) => f.sheets);
    seen.patterns++;
    seen.pages += papers.files.flatMap((f) => f.pages).length;
    seen.wires += wire ? 1 : 0;
    seen.lips += pattern.lip ? 1 : 0;
    seen.tiled += sheets.filter((s) => s.rows * s.columns > 1).length;
  }
  expect(seen.patterns).toBe(12);
  expect(Math.min(seen.wires, seen.lips, seen.tiled)).toBeGreaterThan(0);
  expect(seen.pages).toBeGreaterThan(60);
}, 120_000);
