import { describe, expect, it } from 'vitest';
import type { Plate } from '../../src/blank/lip-outline.js';
import { checkDrawing } from '../../src/drawing/check.js';
import { type Drawing, LAYERS, type LayerName, strokeBox } from '../../src/drawing/drawing.js';
import { checkLipPlate, makeLipPlate } from '../../src/drawing/lip-plate.js';
import { type SheetWork, sheetDrawing } from '../../src/drawing/sheet.js';
import { templateInk } from '../../src/drawing/template.js';
import { dxf } from '../../src/formats/dxf.js';
import { svg } from '../../src/formats/svg.js';
import { writtenStrokes } from '../../src/formats/written.js';
import { pathArea } from '../../src/geometry/arcpath.js';
import type { Cutter } from '../../src/pattern/run.js';
import { holeCut, outlineCut, STADIUM, stadiumBlank } from './sample.js';

const LASER: Cutter = {
  guidance: 'follows',
  kerfMm: 0.2,
  wanderMm: 0,
  bladeWidthMm: null,
  cutsLipSlot: false,
};
const SAW: Cutter = { ...LASER, guidance: 'steered', kerfMm: 1 };
const LIP: Plate = {
  widthMm: 22,
  lengthMm: 34,
  slotDepthMm: 11,
  cornerRadiusMm: 0,
  tab: null,
  eyeHole: null,
};
const KEY = ['lipSheets', 0, 'cutter'];

function plateOf(name: string, cutter: Cutter, lip = LIP) {
  const { plate } = makeLipPlate({ name, orderLine: 7 }, lip, cutter, KEY);
  if (!plate) throw new Error('no plate');
  return plate;
}

const on = (drawing: Drawing, layer: LayerName) => drawing.strokes.filter((s) => s.layer === layer);

describe('a lip', () => {
  it('is the plate the mass budget weighs: a rectangle of its width and length', () => {
    const { ink, outline } = plateOf('skerry', SAW);
    expect(outline).toEqual([
      [0, 0],
      [22, 0],
      [22, 34],
      [0, 34],
    ]);
    const [{ shape }] = ink.cuts;
    expect(shape.kind === 'path' && pathArea(shape.path)).toBe(22 * 34);
  });

  // Steiner's formula for a convex figure: area + perimeter·r + π·r².
  it('is cut half a kerf outside, corners round', () => {
    const plate = plateOf('skerry', LASER);
    const [{ shape }] = plate.ink.cuts;
    const want = 22 * 34 + 2 * (22 + 34) * 0.1 + Math.PI * 0.1 ** 2;
    expect(shape.kind === 'path' && pathArea(shape.path)).toBeCloseTo(want, 6);
    expect(checkLipPlate(plate)).toEqual([]);
    expect(checkLipPlate({ ...plate, cutter: SAW })).toHaveLength(1);
  });

  it('bears its name where the slot hides it, else the number of its order line, else nothing', () => {
    const { label } = plateOf('skerry', SAW).ink;
    expect(label?.text).toBe('SKERRY');
    expect((label?.center[1] ?? 99) + (label?.heightMm ?? 0) / 2).toBeLessThan(11 - 1.1);
    expect(plateOf('skerry-of-the-outer-sound', SAW).ink.label?.text).toBe('7');
    expect(plateOf('skerry', SAW, { ...LIP, slotDepthMm: 3 }).ink.label).toBeNull();
  });
});

describe('a lip with a tab, round corners and a hole', () => {
  const lip: Plate = {
    ...LIP,
    cornerRadiusMm: 6,
    tab: { widthMm: 10, insideRadiusMm: 1 },
    eyeHole: { diameterMm: 3, forwardMm: 7 },
  };

  it('is cut half a kerf outside its outline, inside its hole, the hole first', () => {
    const plate = plateOf('fell', LASER, lip);
    expect(checkLipPlate(plate)).toEqual([]);
    const [hole, outline] = plate.ink.cuts;
    expect(hole).toEqual({
      layer: 'CUT_INSIDE',
      shape: { kind: 'circle', circle: { center: [11, 18], radius: 1.4 } },
    });
    // Grown by 0.1: square corners get rounds of 0.1, the rounds of 6 grow to 6.1, those of 1 inside
    // shrink to 0.9; by hand, about the tab 10.2 × 11 below the shoulders and 22.2 × 23.2 above.
    const corner = (4 - Math.PI) / 4;
    const below = 10.2 * (11 - 0.1 + 0.1) - 2 * corner * 0.1 ** 2 + 2 * corner * 0.9 ** 2;
    const above = 22.2 * (34 - 11 + 0.2) - 2 * corner * 0.1 ** 2 - 2 * corner * 6.1 ** 2;
    const { shape } = outline;
    expect(shape.kind === 'path' && pathArea(shape.path)).toBeCloseTo(below + above, 6);
    expect(checkLipPlate({ ...plate, cutter: { ...LASER, kerfMm: 0.3 } }).length).toBe(2);
  });

  it('has its label on the tab', () => {
    const { label } = plateOf('fell', SAW, lip).ink;
    expect(label?.center[0]).toBeCloseTo(11, 0);
    expect(label?.center[1] ?? 99).toBeLessThan(11);
  });

  it('names the inside corners where the cutter is too wide for them', () => {
    const wide = { ...LASER, kerfMm: 2 };
    const { plate, problems } = makeLipPlate({ name: 'fell', orderLine: 1 }, lip, wide, KEY);
    expect(plate).toBeNull();
    expect(problems.map((p) => p.code)).toEqual(['lip-tab-radius-under-kerf']);
    const insideRadiusMm = Number(problems[0].facts.limitMm);
    const eased = { ...lip, tab: { widthMm: 10, insideRadiusMm } };
    expect(checkLipPlate(plateOf('fell', wide, eased))).toEqual([]);
  });
});

describe('a sheet', () => {
  const template = templateInk({
    blank: stadiumBlank(),
    cuts: [outlineCut(STADIUM), holeCut({ center: [30, -4], radius: 1.25 })],
    slotIsCut: true,
    label: 'STADIUM 100 V1',
  });
  const lip = plateOf('holm', SAW).ink;
  const SHEET: SheetWork = {
    title: 'Template sheet 1',
    material: 'birch plywood',
    lengthMm: 230,
    widthMm: 130,
    thicknessMm: 3,
    marginMm: 5,
    gapMm: 3,
    copies: 2,
    placed: [
      { name: 'stadium', called: 'stadium', ink: template, motion: { turnDeg: 0, move: [5, 15] } },
      {
        name: 'stadium',
        called: 'stadium',
        ink: template,
        motion: { turnDeg: 270, move: [150, 120] },
      },
      { name: 'holm', called: 'holm’s lip', ink: lip, motion: { turnDeg: 180, move: [40, 80] } },
    ],
    kerfMm: 0.2,
    notes: ['A CAUTION'],
  };
  const { drawing, unlabeled } = sheetDrawing(SHEET);

  it('has every part where it lies, turned labels readable, and nothing to complain about', () => {
    expect(on(drawing, 'CUT_OUTSIDE').map(strokeBox)).toEqual([
      [5, 5, 105, 25],
      [140, 20, 160, 120],
      [18, 46, 40, 80],
    ]);
    expect(checkDrawing(drawing)).toEqual([]);
    expect(unlabeled).toEqual([]);
    expect(dxf(drawing)).toContain('POLYLINE');
    expect(svg(drawing)).toContain('stroke-dasharray');
  });

  it('is written inside before outside', () => {
    const layers = writtenStrokes(drawing).map((s) => s.layer);
    expect(layers.lastIndexOf('CUT_INSIDE')).toBeLessThan(layers.indexOf('CUT_OUTSIDE'));
    expect(LAYERS.indexOf('CUT_INSIDE')).toBeLessThan(LAYERS.indexOf('CUT_OUTSIDE'));
    expect(layers.filter((l) => l === 'CUT_INSIDE')).toHaveLength(2);
  });

  it('tells sheet, counts, kerf and cautions', () => {
    const { description } = drawing;
    expect(description).toContain('BIRCH PLYWOOD, 230 X 130 X 3 MM, MARGIN 5 MM, 3 MM BETWEEN');
    expect(description).toContain('CUT 2 SHEETS LIKE THIS');
    expect(description).toContain('2 STADIUM, 1 HOLM');
    expect(description).toContain('KERF 0.2 MM INCLUDED');
    expect(description).toContain('A CAUTION');
  });

  it('can be written when a part fits the sheet exactly', () => {
    const { ink } = plateOf('holm', SAW);
    const exact = sheetDrawing({
      ...SHEET,
      lengthMm: 32,
      widthMm: 44,
      placed: [{ name: 'holm', called: 'holm', ink, motion: { turnDeg: 180, move: [27, 39] } }],
    });
    expect(dxf(exact.drawing)).toContain('POLYLINE');
  });

  it('names what has no room for a label', () => {
    const bare = { ...SHEET.placed[2], ink: { ...lip, label: null } };
    expect(sheetDrawing({ ...SHEET, placed: [bare, bare] }).unlabeled).toEqual(['holm’s lip']);
  });
});
