/** Every gauge and every strip of lures drawn by chance can be made, drawn and written. */
import { expect, test } from 'vitest';
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { checkDrawing } from '../../src/drawing/check.js';
import { dxf } from '../../src/formats/dxf.js';
import { svg } from '../../src/formats/svg.js';
import { gauged } from '../../src/gauged.js';
import { makeJigs } from '../../src/jig/set.js';
import { roundOver } from '../../src/mass/round-over.js';
import type { Cutter } from '../../src/pattern/run.js';
import { loadKernel } from '../../src/solid/kernel.js';
import { gaugesSetup, printer } from '../jig/set-ups.js';
import { MATERIALS, patternOf, seeded } from '../mass/lures.js';
import { anyLure } from './any-lure.js';

const SEED = 20265;
const LURES = 8;
const PRINTED = 1; // of these also as solids, which takes longer

const kernel = await loadKernel();
const sheet = {
  material: 'birch plywood',
  lengthMm: 300,
  widthMm: 200,
  thicknessMm: 3,
  hangHoleMm: 5,
  pencilHoleMm: 2.5,
  leastWallMm: 2,
  marginMm: 5,
};
const cutter: Cutter = {
  guidance: 'follows',
  kerfMm: 0.2,
  wanderMm: 0,
  bladeWidthMm: null,
  cutsLipSlot: true,
};

test(`${LURES} lures by chance (seed ${SEED})`, () => {
  const random = seeded(SEED);
  let made = 0;
  while (made < LURES) {
    const pattern = patternOf('plain', anyLure(random));
    const shape = bodyShape(pattern);
    const { blank } = makeBlank(pattern, shape);
    if (!blank) continue;
    for (const tools of [null, { sheet, cutter }]) {
      const { gauged: found, problems } = gauged(
        { pattern, shape, blank },
        { wish: gaugesSetup, asked: true },
        tools,
      );
      // A belly like a keel has a corner that even a fine cutter rounds.
      expect(problems.filter((p) => p.code !== 'gauge-corner-left')).toEqual([]);
      if (!found) throw new Error('no gauges');
      for (const { drawing, unlabeled } of [found.plates, found.strips]) {
        expect(checkDrawing(drawing), drawing.title).toEqual([]);
        expect(unlabeled).toEqual([]);
        expect(svg(drawing).length + dxf(drawing).length).toBeGreaterThan(1000);
      }
      const { limitMm } = roundOver(shape, blank, MATERIALS);
      const least = Math.min(found.map.back.least.radiusMm, found.map.belly.least.radiusMm);
      expect(Math.abs(least - limitMm)).toBeLessThan(5e-3);
    }
    if (made < PRINTED) {
      const work = {
        pattern,
        body: makeBody(shape),
        blank,
        materials: MATERIALS,
        shapedCgMm: [0, 0, 0] as const,
      };
      const { jigs, problems } = makeJigs(kernel, work, {
        asked: true,
        printer,
        byKind: { gauges: gaugesSetup },
      });
      expect(problems).toEqual([]);
      expect(jigs.length).toBeGreaterThan(3);
    }
    made++;
  }
});
