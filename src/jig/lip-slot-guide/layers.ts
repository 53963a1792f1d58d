/** The room between the cheeks: layers of side views, each as broad as what of the workpiece it lets in. */
import { asRegion, intersect, subtract, union } from '../../geometry/clip.js';
import { areaOf, movedRing, type Region, rectRing } from '../../geometry/ring.js';
import { cosSinDeg, type Motion, moved, type Point2 } from '../../geometry/vec.js';
import { halfBreadthAt } from '../../mass/strip.js';
import type { JigSlot } from '../jig.js';
import { type Held, levelsAt } from './held.js';
import { cavityOf, type SaddlePlan, sawWay, turnOf } from './saddle.js';
import type { LipSlotGuideSetup } from './setup.js';
import { thinParts } from './thin-parts.js';

/** Free from the center plane to `halfMm` on both sides; jig coordinates. */
export type Layer = { readonly regions: readonly Region[]; readonly halfMm: number };

/** Steps of the seat of a shaped body from its center plane to its widest place, in equal turns of a round section. */
export const STEPS = 5;

/** Half the breadth from the center plane to each step's edge, for a body of this half-breadth. */
export const stepEdges = (halfMm: number): readonly number[] =>
  Array.from({ length: STEPS }, (_, k) => halfMm * Math.sin((Math.PI * (k + 1)) / (2 * STEPS)));

const LEAST_AREA = 1e-3; // mm²: less is where two outlines touch

type Block = Pick<
  SaddlePlan,
  'corner' | 'lengthMm' | 'heightMm' | 'cavity' | 'slotX' | 'guideSlotMm'
> & { readonly cheekLengthMm: number };

/**
 * Half the greatest breadth of what is held anywhere between the cheeks, and the layers from the
 * center plane to there: one for a sawn blank; for a body one for each step, whose side view is that
 * of the body at the step's inner edge, so that the step's corners lie on the body's skin, a gap off.
 */
export function layersOf(held: Held, slot: JigSlot, block: Block, setup: LipSlotGuideSetup) {
  const { sideClearanceMm } = setup;
  const box = asRegion(rectRing(0, 0, block.lengthMm, block.heightMm));
  const saw = asRegion(sawWay({ ...block, slotTopZ: block.heightMm + 1 }));
  const least = Math.min(setup.wallMm, setup.cheekMm);
  /** Free for the workpiece, and where what stays between it and the saw's way would be too thin. */
  const cleared = (free: readonly Region[]): readonly Region[] => {
    const thin = thinParts(subtract([box], [...free, saw]), least);
    return thin.length > 0 ? union([...free, ...thin]) : free;
  };
  if (held.kind === 'sawn') {
    const regions = cleared([asRegion(block.cavity)]);
    return {
      halfMm: held.halfMm,
      layers: [{ regions, halfMm: held.halfMm + sideClearanceMm }],
    };
  }
  const halfMm = broadestIn(held, slot, block);
  const edges = stepEdges(halfMm);
  const topZ = block.corner[1] + block.heightMm;
  const layers = edges.flatMap((edge, k): Layer[] => {
    const free =
      k === 0
        ? [block.cavity]
        : levelsAt(held.shape, edges[k - 1]).map((level) => {
            const turned = movedRing(turnOf(slot), level);
            return movedRing(toJig(block), cavityOf(turned, topZ, held.strayMm, setup));
          });
    // Where the body is that broad there may be only the ends of cheeks, with nothing between them.
    const here = areaOf(intersect([box], free.map(asRegion)));
    if (here < LEAST_AREA) return [];
    return [{ regions: cleared(free.map(asRegion)), halfMm: edge + sideClearanceMm }];
  });
  return { halfMm, layers };
}

const toJig = ({ corner }: Pick<SaddlePlan, 'corner'>): Motion => ({
  turnDeg: 0,
  move: [-corner[0], -corner[1]],
});

/** From the lure's side view to that of the jig. */
export const jigView = (slot: JigSlot, plan: Pick<SaddlePlan, 'corner'>) => (p: Point2) =>
  moved(toJig(plan), moved(turnOf(slot), p));

const STATIONS = 400;

/** On each station's line across the side view: the place between the cheeks that is nearest the datum line, where the breadth is greatest. */
function broadestIn(
  { shape }: Held & { kind: 'shaped' },
  slot: JigSlot,
  { corner: [x0, z0], heightMm, cheekLengthMm }: Block,
): number {
  const [cos, sin] = cosSinDeg(turnOf(slot).turnDeg);
  let most = 0;
  for (let k = 1; k < STATIONS; k++) {
    const x = (shape.lengthMm * k) / STATIONS;
    // The jig's X and Z of height z there: cos x − sin z, sin x + cos z.
    const across = within(cos * x, -sin, [x0, x0 + cheekLengthMm]);
    const along = within(sin * x, cos, [z0, z0 + heightMm]);
    const low = Math.max(across[0], along[0]);
    const high = Math.min(across[1], along[1]);
    if (low > high) continue;
    most = Math.max(most, halfBreadthAt(shape, [x, Math.min(Math.max(0, low), high)]));
  }
  return most;
}

/** The z for which `at + slope z` lies in the span. */
function within(at: number, slope: number, [from, to]: Point2): Point2 {
  if (slope === 0) return at >= from && at <= to ? [-Infinity, Infinity] : [1, -1];
  const [a, b] = [(from - at) / slope, (to - at) / slope];
  return a < b ? [a, b] : [b, a];
}
