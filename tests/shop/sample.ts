/** Lines of an order as the shop takes them, without nesting or jigs. */
import { floating, USUAL_WATER } from '../../src/afloat/floating.js';
import { timberDensity } from '../../src/blank/timber-density.js';
import type { JigWork } from '../../src/jig/jig.js';
import { USUAL_SHOP } from '../../src/job.js';
import { bentFor } from '../../src/mass/wire-bent.js';
import type { NestFace } from '../../src/nest/nest.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import type { FinishWork } from '../../src/shop/finishes.js';
import { makeShop } from '../../src/shop/make.js';
import type { ShopLine, ShopWork } from '../../src/shop/work.js';
import { shippedWork } from '../jig/works.js';
import { MATERIALS } from '../mass/lures.js';

export function lineFor({ pattern, body, blank, materials }: JigWork, count = 1): ShopLine {
  const timber = timberDensity(materials.timbers[pattern.timber], pattern.timberDensityKgM3, []);
  const water = pattern.water ?? USUAL_WATER;
  return {
    pattern,
    count,
    body,
    blank,
    floating: floating({ pattern, body, blank, materials, timber, water }),
    jigs: [],
    wire: bentFor(pattern, body.shape, materials)?.wire ?? null,
    gauged: null,
  };
}

/** A shipped pattern, something in its file changed. */
export const shippedLine = (
  name: string,
  changed: Partial<PatternFile> = {},
  count = 1,
): ShopLine => lineFor(shippedWork(name, changed), count);

export const workFor = (lines: readonly ShopLine[], changed: Partial<ShopWork> = {}): ShopWork => ({
  wish: USUAL_SHOP,
  materials: MATERIALS,
  lines,
  nest: null,
  blocks: [],
  slotIsCut: false,
  ...changed,
});

export const shopFor = (lines: readonly ShopLine[], changed: Partial<ShopWork> = {}) =>
  makeShop(workFor(lines, changed));

/** A lure of which nothing is known but its surface and its coats. */
export const bareLine = (
  name: string,
  count: number,
  { areaMm2, coats }: { areaMm2: number; coats: PatternFile['coats'] },
) =>
  ({
    pattern: { name, coats },
    count,
    body: { properties: { areaMm2 } },
  }) as unknown as FinishWork['lines'][number];

/** A face of a nest, as far as the shop looks at it. */
export const faceOf = (changed: Partial<NestFace>): NestFace => ({
  id: 1,
  lengthMm: 400,
  widthMm: 90,
  thicknessMm: 20,
  marginMm: 4,
  gapMm: 2,
  layers: 2,
  copies: 1,
  stacks: [],
  stackHeightMm: 40.2,
  placements: [],
  usedRatio: 0,
  offcut: { fromMm: 400, lengthMm: 0 },
  knots: [],
  splits: [],
  poorZones: [],
  ...changed,
});
