/** Where a seated workpiece can touch the guide when it turns: flat sides, or the skin of a body at the edges of its seat. */
import { halves } from '../../body/properties.js';
import type { BodyShape } from '../../body/shape.js';
import { asRegion, intersect } from '../../geometry/clip.js';
import { convexHull } from '../../geometry/convex.js';
import { rectRing } from '../../geometry/ring.js';
import { thinned } from '../../geometry/thin.js';
import { cosSinDeg, type Point2, type Point3 } from '../../geometry/vec.js';
import { unit3 } from '../../geometry/vec3.js';
import type { JigSlot } from '../jig.js';
import { type Held, levelsAt } from './held.js';
import { jigView, stepEdges } from './layers.js';
import type { Contact } from './play.js';
import { RELIEF_SLOPE, type SaddlePlan, turnOf } from './saddle.js';
import type { LipSlotGuideSetup } from './setup.js';

type Block = Pick<SaddlePlan, 'corner' | 'profile' | 'heightMm'> & {
  readonly cheekLengthMm: number;
  /** Half the greatest breadth between the cheeks. */
  readonly halfMm: number;
};

/** Contacts on the port side, jig coordinates with Y counted from the center plane. */
export function contactsOf(
  held: Held,
  slot: JigSlot,
  block: Block,
  setup: LipSlotGuideSetup,
): Contact[] {
  return held.kind === 'sawn'
    ? flatSide(block, setup)
    : bodySkin(held, slot, block, setup).concat(widest(held.shape, slot, block, setup));
}

/** The corners of the least convex outline of what the cheek covers: no other place touches before them. */
function flatSide(
  { profile, cheekLengthMm, heightMm, halfMm }: Block,
  { sideClearanceMm }: LipSlotGuideSetup,
): Contact[] {
  const cheek = asRegion(rectRing(0, 0, cheekLengthMm, heightMm));
  const covered = intersect([asRegion(profile)], [cheek]).flatMap(({ outer }) => outer);
  return convexHull(covered).map(([x, z]) => ({
    at: [x, halfMm, z],
    normal: [0, 1, 0],
    gapMm: sideClearanceMm,
  }));
}

const LEVEL_CHORD = 0.1; // mm: a level line in as many points as tell its run

/** Where edges of the seat's steps lie under the body's skin; the relieved side does not count. */
function bodySkin(
  { shape, strayMm }: Held & { kind: 'shaped' },
  slot: JigSlot,
  block: Block,
  { seatClearanceMm, sideClearanceMm }: LipSlotGuideSetup,
): Contact[] {
  const gaps = [sideClearanceMm, seatClearanceMm + strayMm] as const;
  return stepEdges(block.halfMm)
    .slice(0, -1)
    .flatMap((y) => levelPoints(shape, y).map(([x, z]): Point3 => [x, y, z]))
    .map((p) => ({ at: inJig(p, slot, block), normal: turned(normalAt(shape, p), slot) }))
    .filter(({ at, normal: [nx, , nz] }) => {
      const relieved = nx > 0 && -nz < nx / RELIEF_SLOPE;
      return isIn(at, block) && nz < 0 && !relieved;
    })
    .map(({ at, normal }) => ({
      at,
      normal,
      gapMm: Math.abs(normal[1]) * gaps[0] + Math.hypot(normal[0], normal[2]) * gaps[1],
    }));
}

const WIDEST = 0.995; // of the greatest half-breadth: the place itself is one point

/** Where the body is widest between the cheeks, against their flat sides. */
function widest(
  shape: BodyShape,
  slot: JigSlot,
  block: Block,
  { sideClearanceMm }: LipSlotGuideSetup,
): Contact[] {
  const y = WIDEST * block.halfMm;
  return levelPoints(shape, y)
    .map(([x, z]) => inJig([x, y, z], slot, block))
    .filter((at) => isIn(at, block))
    .map((at) => ({ at, normal: [0, 1, 0], gapMm: block.halfMm - y + sideClearanceMm }));
}

const levelPoints = (shape: BodyShape, halfMm: number): readonly Point2[] =>
  levelsAt(shape, halfMm).flatMap((level) => [...thinned(level, LEVEL_CHORD)]);

function inJig([x, y, z]: Point3, slot: JigSlot, block: Block): Point3 {
  const [jx, jz] = jigView(slot, block)([x, z]);
  return [jx, y, jz];
}

const isIn = ([x, , z]: Point3, { cheekLengthMm, heightMm }: Block): boolean =>
  x >= 0 && x <= cheekLengthMm && z >= 0 && z <= heightMm;

function turned([x, y, z]: Point3, slot: JigSlot): Point3 {
  const [cos, sin] = cosSinDeg(turnOf(slot).turnDeg);
  return [cos * x - sin * z, y, sin * x + cos * z];
}

const PROBE = 1e-3; // mm, to either side, for the slope along the body

/** Outward: the slope of |y/b|ⁿ + |z/h|ⁿ, with b, h and n of the station. */
function normalAt(shape: BodyShape, [x, y, z]: Point3): Point3 {
  const field = (at: number, [dy, dz]: Point2 = [0, 0]) => {
    const { b, h, n } = halves(shape, at)[z >= 0 ? 0 : 1];
    return Math.abs((y + dy) / b) ** n + Math.abs((z + dz) / h) ** n;
  };
  return unit3([
    field(x + PROBE) - field(x - PROBE),
    field(x, [PROBE, 0]) - field(x, [-PROBE, 0]),
    field(x, [0, PROBE]) - field(x, [0, -PROBE]),
  ]);
}
