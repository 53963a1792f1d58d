/** The lip plate as it is cut: its outline and its hole. */
import type { ArcPath, Circle, PathVertex } from '../geometry/arcpath.js';
import type { Lip } from '../pattern/pattern.js';

/** What of a lip its outline needs. */
export type Plate = Pick<
  Lip,
  'widthMm' | 'lengthMm' | 'slotDepthMm' | 'cornerRadiusMm' | 'tab' | 'eyeHole'
>;

const QUARTER = Math.tan(Math.PI / 8); // bulge of a quarter turn
const SAME_MM = 1e-9;

/**
 * Counter-clockwise from the right corner of the inner end, in the frame of the plate: x across it
 * from its right edge, y from the inner end toward the tip. Between tab and shoulder runs an arc, on
 * the slot's side of the belly.
 */
export function lipOutline(lip: Plate): ArcPath {
  const middle = lip.widthMm / 2;
  const half = halfOutline(lip);
  const left = half.map((v, i): PathVertex => {
    // Seen from the other side and passed the other way, an arc turns as it did.
    const bulge = i === 0 ? 0 : half[i - 1].bulge;
    return { x: middle - v.x, y: v.y, bulge };
  });
  const right = half.map((v): PathVertex => ({ ...v, x: middle + v.x }));
  const vertices = [left[0], ...right, ...left.slice(1).reverse()];
  return { closed: true, vertices: vertices.filter((v, i) => !isSame(v, vertices[i + 1])) };
}

/** From the inner end to the tip, x outward from the center line. */
function halfOutline({ widthMm, lengthMm, slotDepthMm, cornerRadiusMm, tab }: Plate): PathVertex[] {
  const side = widthMm / 2;
  const inner: PathVertex[] = tab
    ? [
        { x: tab.widthMm / 2, y: 0, bulge: 0 },
        { x: tab.widthMm / 2, y: slotDepthMm - tab.insideRadiusMm, bulge: -QUARTER },
        { x: tab.widthMm / 2 + tab.insideRadiusMm, y: slotDepthMm, bulge: 0 },
        { x: side, y: slotDepthMm, bulge: 0 },
      ]
    : [{ x: side, y: 0, bulge: 0 }];
  const all: PathVertex[] = [
    ...inner,
    { x: side, y: lengthMm - cornerRadiusMm, bulge: QUARTER },
    { x: side - cornerRadiusMm, y: lengthMm, bulge: 0 },
  ];
  return all.filter((v, i) => !isSame(v, all[i + 1]));
}

const isSame = (a: PathVertex, b: PathVertex | undefined): boolean =>
  b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < SAME_MM;

/** The hole for the tow eye, in the same frame; null without one. */
export const lipHole = ({ widthMm, slotDepthMm, eyeHole }: Plate): Circle | null =>
  eyeHole && {
    center: [widthMm / 2, slotDepthMm + eyeHole.forwardMm],
    radius: eyeHole.diameterMm / 2,
  };
