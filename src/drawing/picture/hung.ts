/** What hangs on an eye, as signs of lines: a split ring and a treble, straight down in the water. */
import { add, cosSinDeg, type Point2 } from '../../geometry/vec.js';

/** Of the signs, true mm: a middling ring, and a treble by its shank, the gap of a hook and its spear. */
const RING_RADIUS_MM = 2.6;
const SHANK_MM = 8;
const GAP_MM = 4.4;
const SPEAR_MM = 2.6;
/** How wide each hook of the treble is seen: they stand a third of a turn apart, one almost end on. */
const TURNS_DEG = [20, 140, 260] as const;

/** Lines under the middle of an eye, as seen, true mm. What hangs looks alike from all sides. */
export function hungLines(
  eye: Point2,
  { ring, treble }: { readonly ring: boolean; readonly treble: boolean },
): Point2[][] {
  const links = ring ? [ringLine(add(eye, [0, -RING_RADIUS_MM]))] : [];
  const from = add(eye, [0, ring ? -2 * RING_RADIUS_MM : 0]);
  return [...links, ...(treble ? trebleLines(from) : [])];
}

const ringLine = (center: Point2): Point2[] =>
  Array.from({ length: 25 }, (_, i) => {
    const [c, s] = cosSinDeg((360 * i) / 24);
    return add(center, [RING_RADIUS_MM * c, RING_RADIUS_MM * s]);
  });

/** A shank, and from its foot three half circles that end in spears, as wide as they are seen. */
function trebleLines(eye: Point2): Point2[][] {
  const foot = add(eye, [0, -SHANK_MM]);
  const hooks = TURNS_DEG.map((turnDeg): Point2[] => {
    const seen = cosSinDeg(turnDeg)[0];
    const bend = Array.from({ length: 13 }, (_, i): Point2 => {
      const [c, s] = cosSinDeg(180 + (180 * i) / 12);
      return add(foot, [seen * (GAP_MM / 2) * (1 + c), (GAP_MM / 2) * s]);
    });
    return [...bend, add(foot, [0.9 * seen * GAP_MM, SPEAR_MM])];
  });
  return [[eye, foot], ...hooks];
}
