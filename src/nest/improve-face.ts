/** The search of `pack/` set on one face: what it adds to a layout, and how far it pushes it together. */
import { ringArea } from '../geometry/ring.js';
import {
  type FaceProblem,
  type FaceSearch,
  type Spot as Place,
  packMore,
  packShorter,
} from '../pack/face.js';
import type { Table } from '../pack/table.js';
import type { Spot } from './fill.js';
import type { Kit } from './kit.js';
import type { FaceSize } from './nest.js';

/** More outlines than this are not pushed together as a whole. */
const MOST_PUSHED = 60;

/** Share of the work that may go into pushing them together. */
const PUSHED_SHARE = 0.3;

/**
 * The spots with further outlines, and then, if that leaves work to spend, pushed to the left.
 * @param spots free of overlaps
 */
export function improvedFace(
  kit: Kit,
  { face, wanted }: { readonly face: FaceSize; readonly wanted: readonly number[] },
  spots: readonly Spot[],
  search: FaceSearch,
): Spot[] {
  const problem = faceProblem(kit, face, wanted);
  const turned = turnedOf(kit, problem.table);
  const places = spots.map(({ shape, x, y }): Place => ({ turned: turned[shape], x, y }));
  const more = packMore(problem, places, search);
  const looks = Math.min(search.looks - more.looks, PUSHED_SHARE * search.looks);
  const { spots: found } =
    more.spots.length > MOST_PUSHED ? more : packShorter(problem, more.spots, { ...search, looks });
  return found.map(({ turned: k, x, y }) => ({ shape: turned.indexOf(k), x, y }));
}

/** Number of each shape of the set in the table. */
const turnedOf = ({ set }: Kit, table: Table): number[] =>
  set.shapes.map(({ partIndex, turnDeg }) =>
    table.turned.findIndex((t) => t.outline === partIndex && t.turnDeg === turnDeg),
  );

function faceProblem(kit: Kit, face: FaceSize, wanted: readonly number[]): FaceProblem {
  const { lengthMm, widthMm, marginMm } = face;
  const { outlines, table } = kit.ground(face, wanted);
  const flaws = outlines.length - kit.parts;
  const first = table.turned.length - flaws;
  const [alongMm, acrossMm] = [lengthMm, widthMm].map((mm) => mm - 2 * marginMm + kit.gapMm);
  return {
    table,
    areas: outlines.map((o) => ringArea(o.ring)),
    grownAreas: outlines.map((o) => ringArea(o.grown)),
    container: [marginMm, marginMm, lengthMm - marginMm, widthMm - marginMm],
    mostGrownArea: alongMm * acrossMm * mostDensity(kit, wanted),
    keepOuts: Array.from({ length: flaws }, (_, i) => ({ turned: first + i, x: 0, y: 0 })),
    wanted: outlines.map((_, i) => wanted[i] ?? 0),
  };
}

/** Hollows and mixtures may be so much denser than the lattice of the densest hull: common practice, no source. */
const DENSER = 1.04;

/** No denser face is looked for: some way beyond what the hulls of the wanted parts can reach. */
function mostDensity(kit: Kit, wanted: readonly number[]): number {
  const densities = wanted.flatMap((n, part) => (n > 0 ? [kit.hullDensity(part)] : []));
  return Math.min(1, DENSER * Math.max(0, ...densities));
}
