/** Lures for the ballast tests: one pattern with everything on it, changed as a test needs. */

import { type Workpiece, workpiece } from '../../src/ballast/workpiece.js';
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { immersible } from '../../src/float/immersible.js';
import { outsideOf } from '../../src/mass/budget.js';
import { type Ballast, type Pattern, resolvePattern } from '../../src/pattern/pattern.js';
import { type PatternFile, patternSchema } from '../../src/pattern/schema.js';
import { type WishFile, wishSection } from '../../src/pattern/wish-schema.js';
import { MATERIALS } from '../mass/lures.js';

export const FRESH = 999.1; // kg/m³, about 15 °C

const FILE = {
  schema: 1,
  kind: 'pattern',
  name: 'scar',
  version: '1.0',
  body: {
    lengthMm: 95,
    noseRadiusMm: 4,
    tailRadiusMm: 1.8,
    offsets: [
      { stationMm: 5, backMm: 6, bellyMm: 6.4, halfBreadthMm: 4.8 },
      { stationMm: 20, backMm: 10.4, bellyMm: 11.8, halfBreadthMm: 8 },
      { stationMm: 38, backMm: 12, bellyMm: 13.4, halfBreadthMm: 9.4 },
      { stationMm: 58, backMm: 10.6, bellyMm: 11.6, halfBreadthMm: 8.4 },
      { stationMm: 78, backMm: 6.6, bellyMm: 7, halfBreadthMm: 5.6 },
      { stationMm: 89, backMm: 3.8, bellyMm: 3.9, halfBreadthMm: 3.2 },
    ],
    fullness: [{ stationMm: 40, upperExponent: 2.4, lowerExponent: 2.6 }],
  },
  lip: {
    widthMm: 21,
    lengthMm: 32,
    thicknessMm: 1.5,
    angleDeg: 40,
    slot: { stationMm: 7, depthMm: 10 },
  },
  towEye: { kind: 'screw', heightMm: 1 },
  hangers: [{ stationMm: 52, kind: 'screw', ring: 'ring-5', treble: 'treble-6' }],
  tailEye: { kind: 'screw', ring: 'ring-5', treble: 'treble-6' },
  timber: 'western-redcedar',
  sandingAllowanceMm: 1.5,
  blockThicknessMm: 20,
  coats: [{ name: 'epoxy', thicknessMm: 0.15, count: 3 }],
};

export const patternOf = (change: Partial<PatternFile> = {}): Pattern =>
  resolvePattern(patternSchema.parse({ ...FILE, ...change }));

export const wish = (given: Partial<WishFile>): WishFile => wishSection.parse(given);

export const hole = (given: Partial<Ballast>): Ballast => ({
  stationMm: 36,
  tiltDeg: 0,
  diameterMm: 8,
  depthMm: 14,
  pointAngleDeg: 118,
  metal: 'lead',
  pour: 'topped-up',
  fillMm: null,
  weight: null,
  ...given,
});

export function pieceOf(pattern: Pattern, timberKgM3 = 358, waterDensityKgM3 = FRESH): Workpiece {
  const body = makeBody(bodyShape(pattern));
  const { blank, problems } = makeBlank({ ...pattern, ballast: [] }, body.shape);
  if (!blank) throw new Error(JSON.stringify(problems));
  const timber = { densityKgM3: timberKgM3, spreadKgM3: timberKgM3 / 10 };
  const design = { pattern, body, blank };
  const displacing = outsideOf(design, MATERIALS);
  const solid = immersible(displacing.map((d) => d.mesh));
  return workpiece(
    design,
    { materials: MATERIALS, timber },
    { displacing, solid, waterDensityKgM3 },
  );
}
