/** Relief cuts on a face: those of each outline where it lies, as far as the neighbors leave room. */
import { distance, mix, moved, type Point2 } from '../geometry/vec.js';
import type { NestFace } from '../nest/nest.js';
import type { ReliefCut } from './cutplan.js';
import { onFace, type Waste } from './waste.js';

/** Halvings in finding how far out a cut may begin: to a thousandth of its length. */
const HALVINGS = 10;

/**
 * A neighbor that reaches into the hollow, or the block's edge, makes a cut begin later: there is an
 * open cut, or air. What is then no longer than the kerf is left out.
 */
export const reliefCutsOf = (
  face: NestFace,
  waste: Waste,
  cutsOf: (part: string) => readonly (readonly Point2[])[],
): ReliefCut[] => {
  const known = new Map<string, readonly (readonly Point2[])[]>();
  return face.placements.flatMap(({ part, turnDeg, xMm, yMm }, placement) => {
    const cuts = known.get(part) ?? cutsOf(part);
    known.set(part, cuts);
    return cuts
      .map((cut) => cut.map((p) => moved({ turnDeg, move: [xMm, yMm] }, p)))
      .map(([mouth, end]) => [clearStart(waste, placement, mouth, end), end])
      .filter(([start, end]) => distance(start, end) >= waste.kerfMm)
      .map((path) => ({ placement, path }));
  });
};

function clearStart(waste: Waste, placement: number, mouth: Point2, end: Point2): Point2 {
  const { walls, keepMm } = waste;
  const free = (start: Point2) =>
    onFace(waste, start) && walls.clear(start, end, keepMm, placement);
  if (free(mouth)) return mouth;
  let [good, bad] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const half = (good + bad) / 2;
    if (free(mix(end, mouth, half))) good = half;
    else bad = half;
  }
  return mix(end, mouth, good);
}
