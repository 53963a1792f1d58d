/** How much metal the wood has room for, wherever that would put it. */
import { LEAST_WOOD_MM } from '../blank/hole-neighbors.js';
import type { Drawer } from './draft.js';
import { DEPTH_STEP_MM, gainGMm3 } from './drill.js';
import { woodLeftMm, woodRefusal } from './refuse.js';
import { holeFor, slugsOf } from './weights.js';
import { type Hole, netOf, plugIn, type Workpiece } from './workpiece.js';

/** Holes and what they add to the lure, metal less timber. */
export type Room = { readonly holes: readonly Hole[]; readonly addsG: number };

/** The fullest hole, or the fullest two of one bit and metal (or one weight), looked for at every other mm of the length. */
export function mostRoom(piece: Workpiece, drawer: Drawer): Room {
  const kinds = drawer.weights ? weightKinds(piece, drawer) : pouredKinds(piece, drawer);
  let best: Filled[] = [];
  for (const { holeAt, mostG } of kinds) {
    if (drawer.mostHoles * mostG <= sum(best)) continue;
    const set = fullest(filledHoles(piece, holeAt), drawer.mostHoles);
    if (sum(set) > sum(best)) best = set;
  }
  return { holes: best.map(({ hole }) => hole), addsG: sum(best) };
}

type Filled = { readonly hole: Hole; readonly addsG: number };
/** The hole of a kind that holds most at a station, and what none of the kind holds more than. */
type Kind = { readonly holeAt: (stationMm: number) => Hole; readonly mostG: number };

function pouredKinds(piece: Workpiece, { metals, bitsMm, pointAngleDeg, pour }: Drawer): Kind[] {
  const usable = metals.filter((metal) => gainGMm3(piece, { metal, pour }) > 0);
  return usable.flatMap((metal) =>
    bitsMm.map((diameterMm): Kind => {
      const tool = {
        tiltDeg: 0,
        diameterMm,
        pointAngleDeg,
        metal,
        pour,
        fillMm: null,
        weight: null,
      };
      const holeAt = (stationMm: number): Hole => {
        const tried = { ...tool, stationMm, depthMm: 0 };
        const deepest = woodLeftMm(piece, [tried]) - LEAST_WOOD_MM;
        const depthMm = Math.floor(deepest / DEPTH_STEP_MM) / Math.round(1 / DEPTH_STEP_MM);
        return { ...tried, depthMm };
      };
      return { holeAt, mostG: Infinity };
    }),
  );
}

/** The heaviest first, so that the lighter ones need no look. */
const weightKinds = (piece: Workpiece, drawer: Drawer): Kind[] =>
  drawer.metals
    .flatMap((metal) => slugsOf(piece, { ...drawer, metal }).slugs)
    .sort((a, b) => b.weight.massG - a.weight.massG)
    .map((slug) => ({
      holeAt: (stationMm) => holeFor(piece, slug, stationMm),
      mostG: slug.weight.massG,
    }));

const LOOK_EVERY_MM = 2;

function filledHoles(piece: Workpiece, holeAt: Kind['holeAt']): Filled[] {
  const lengthMm = piece.design.body.shape.lengthMm;
  const out: Filled[] = [];
  for (let at = LOOK_EVERY_MM; at < lengthMm; at += LOOK_EVERY_MM) {
    const hole = holeAt(at);
    if (woodRefusal(piece, [hole])) continue;
    out.push({ hole, addsG: netOf(piece, plugIn(piece, hole)).amount });
  }
  return out;
}

/** The fullest hole, or the fullest two that leave wood between them. */
function fullest(filled: readonly Filled[], mostHoles: number): Filled[] {
  let best: Filled[] = [];
  filled.forEach((a, i) => {
    if (sum([a]) > sum(best)) best = [a];
    if (mostHoles < 2) return;
    for (const b of filled.slice(i + 1)) {
      const apart = b.hole.stationMm - a.hole.stationMm >= a.hole.diameterMm + LEAST_WOOD_MM;
      if (apart && sum([a, b]) > sum(best)) best = [a, b];
    }
  });
  return best;
}

const sum = (set: readonly Filled[]): number => set.reduce((total, f) => total + f.addsG, 0);
