import { describe, expect, it } from 'vitest';
import type { Blank } from '../../src/blank/blank.js';
import { checkDrawing } from '../../src/drawing/check.js';
import { type LayerName, strokesBox } from '../../src/drawing/drawing.js';
import { type OpeningSizes, templateOpenings } from '../../src/drawing/openings.js';
import { templateDrawing } from '../../src/drawing/template.js';
import { dxf } from '../../src/formats/dxf.js';
import { svg } from '../../src/formats/svg.js';
import type { Circle } from '../../src/geometry/arcpath.js';
import { insideRing, rectRing } from '../../src/geometry/ring.js';
import { holeCut, lureBlank, outlineCut, STADIUM, stadiumBlank } from './sample.js';

const SIZES: OpeningSizes = { pencilDiameterMm: 2.5, hangDiameterMm: 5, webMm: 2 };

const present = (circles: readonly (Circle | null)[]): Circle[] =>
  circles.flatMap((c) => (c ? [c] : []));

function draw(blank: Blank, label = 'STADIUM 100 V1') {
  const { pencils, hangUp } = templateOpenings(blank, SIZES);
  const cuts = [outlineCut(blank.outline.path), ...present([...pencils, hangUp]).map(holeCut)];
  return templateDrawing({
    blank,
    cuts,
    slotIsCut: true,
    label,
    kerfMm: 0.15,
    notes: ['SHEET 3 MM'],
  });
}

describe('openings of a template', () => {
  it('stand on the axis at half the depth of the hole, and at the tail', () => {
    const { pencils, hangUp } = templateOpenings(stadiumBlank(), SIZES);
    expect(pencils).toEqual([{ center: [30, -4], radius: 1.25 }]);
    // 2 mm of sheet around a hole of 5 mm: at most 10 − 4.5 mm from the center of the round end at 90
    expect(hangUp?.radius).toBe(2.5);
    // stepped by 0.5 mm
    expect(hangUp?.center[0]).toBeGreaterThanOrEqual(95);
    expect(hangUp?.center[0]).toBeLessThanOrEqual(95.5);
    expect(hangUp?.center[1]).toBeCloseTo(0, 9);
  });

  it('keep 2 mm of sheet around them on a lure', () => {
    const blank = lureBlank();
    const { pencils, hangUp } = templateOpenings(blank, SIZES);
    const circles = present([...pencils, hangUp]);
    expect(circles).toHaveLength(blank.holes.length + 1);
    for (const { center, radius } of circles) {
      expect(insideRing(center, blank.outlineRing)).toBe(true);
      for (const [x, y] of blank.outlineRing) {
        expect(Math.hypot(x - center[0], y - center[1])).toBeGreaterThanOrEqual(radius + 2);
      }
    }
    pencils.forEach((p, i) => {
      expect(p?.center[0]).toBe(blank.holes[i].stationMm);
    });
  });

  it('are null where there is no room', () => {
    const sliver = { ...stadiumBlank(), outlineRing: rectRing(0, -3, 100, 3) };
    expect(templateOpenings(sliver, SIZES)).toEqual({ pencils: [null], hangUp: null });
    const slim = { ...stadiumBlank(), outlineRing: rectRing(0, -3.6, 100, 3.6) };
    expect(templateOpenings(slim, SIZES).hangUp).toBeNull();
    expect(templateOpenings(slim, { ...SIZES, hangDiameterMm: 3 }).hangUp?.radius).toBe(1.5);
  });

  it('are null where they are not wanted', () => {
    const none = { pencilDiameterMm: 0, hangDiameterMm: 0, webMm: 2 };
    expect(templateOpenings(stadiumBlank(), none)).toEqual({ pencils: [null], hangUp: null });
  });
});

describe('a template', () => {
  const { drawing, unlabeled } = draw(stadiumBlank());
  const on = (layer: LayerName) => drawing.strokes.filter((s) => s.layer === layer);

  it('is one outline with its arcs, and two round holes', () => {
    expect(on('CUT_OUTSIDE')).toEqual([{ kind: 'path', layer: 'CUT_OUTSIDE', path: STADIUM }]);
    expect(on('CUT_INSIDE').map((s) => s.kind)).toEqual(['circle', 'circle']);
    expect(unlabeled).toEqual([]);
  });

  it('has the datum line, broken at the hole to hang it up by, with ticks at tens', () => {
    const lines = on('MARK').flatMap((s) => (s.kind === 'path' ? [s.path.vertices] : []));
    const datum = lines.filter(([a, b]) => a.y === 0 && b.y === 0);
    expect(datum).toHaveLength(2);
    // the opening is a polygon that stands off the circle of radius 2.5 by at most 0.12 %
    const ends = datum.flat().map((v) => v.x);
    expect(ends.map((x) => Math.round(x * 100) / 100)).toEqual([0, 92.5, 97.5, 100]);
    const ticks = lines.filter(([a, b]) => a.x === b.x && a.y === -b.y).map(([a]) => a.x);
    expect(ticks).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90]);
    // hanger at 50, 4 mm up from the belly; axis of the hole up to its pencil hole
    const upright = lines
      .filter(([a, b]) => a.x === b.x && a.y === -10)
      .map(([a, b]) => [a.x, b.y]);
    expect(upright).toEqual([
      [50, -6],
      [30, expect.closeTo(-5.25, 1)],
    ]);
  });

  it('says what it is and that kerf is in it', () => {
    expect(drawing.title).toBe('Template STADIUM 100 V1');
    expect(drawing.description).toContain('KERF 0.15 MM INCLUDED');
    expect(drawing.description).toContain('SHEET 3 MM');
    expect(on('LABEL').length).toBeGreaterThan(14);
  });

  it('can be written, and has nothing to complain about, for lures of any size', () => {
    const blanks = [
      stadiumBlank(),
      lureBlank(),
      lureBlank('holm', 60, 16),
      lureBlank('ghyll', 180),
    ];
    for (const blank of blanks) {
      const drawn = draw(blank, `${blank.name.toUpperCase()} ${blank.lengthMm} V1.3`);
      expect(drawn.unlabeled).toEqual([]);
      expect(checkDrawing(drawn.drawing)).toEqual([]);
      expect(dxf(drawn.drawing)).toContain('POLYLINE');
      expect(svg(drawn.drawing)).toContain('<path');
    }
  });

  it('tells when there is no room for the label', () => {
    const drawn = draw(
      stadiumBlank(),
      'A NAME THAT IS MUCH TOO LONG FOR ANY LURE OF THAT LENGTH V1',
    );
    expect(drawn.unlabeled).toEqual(['stadium']);
    expect(drawn.drawing.strokes.filter((s) => s.layer === 'LABEL')).toEqual([]);
    expect(checkDrawing(drawn.drawing)).toEqual([]);
  });

  it('marks a lip slot that is not cut, and keeps the label off it', () => {
    const blank = lureBlank();
    const { drawing: marked } = templateDrawing({
      blank,
      cuts: [outlineCut(blank.profile.path)],
      slotIsCut: false,
      label: 'SKERRY 110 V1.3',
      kerfMm: null,
    });
    expect(checkDrawing(marked)).toEqual([]);
    const leaning = marked.strokes.filter(
      ({ layer, ...s }) =>
        layer === 'MARK' &&
        s.kind === 'path' &&
        s.path.vertices[0].x !== s.path.vertices[1].x &&
        s.path.vertices[0].y !== s.path.vertices[1].y,
    );
    expect(leaning).toHaveLength(3);
  });

  it('has its scale bar and notes under the work', () => {
    const [, , , top] = strokesBox(on('RULE'));
    expect(top).toBeLessThan(-10 - 3);
  });
});
