/** The lip seen from above: what sticks out beside and before the body, and what is under it. */
import { lipHole, lipOutline } from '../../blank/lip-outline.js';
import { flatten } from '../../geometry/arcpath.js';
import { circleRing } from '../../geometry/ring.js';
import { cosSinDeg, type Point2 } from '../../geometry/vec.js';
import { parted, type SeenLine } from './hidden.js';
import type { ViewsInput } from './input.js';

const CHORD_MM = 0.02;
const HOLE_POINTS = 48;

/** Lines as (station, distance from the center plane); `body` is its outline seen from above. */
export function lipFromAbove(
  { pattern: { lip }, blank: { slot } }: Pick<ViewsInput, 'pattern' | 'blank'>,
  body: readonly Point2[],
): readonly SeenLine[] {
  if (!lip || !slot) return [];
  const [c] = cosSinDeg(slot.angleDeg);
  const above = ([across, along]: Point2): Point2 => [
    slot.end[0] - c * along,
    across - lip.widthMm / 2,
  ];
  const hole = lipHole(lip);
  const edges = [
    flatten(lipOutline(lip), CHORD_MM),
    ...(hole ? [circleRing(hole.center, hole.radius, { segments: HOLE_POINTS })] : []),
  ];
  return edges.flatMap((edge) => parted([...edge, edge[0]].map(above), body));
}
