/** The plan of a saw led by hand: parting cuts, ways in, relief cuts and their order. */
import { pathLength } from '../geometry/arcpath.js';
import { distance, type Point2 } from '../geometry/vec.js';
import { roundFlaw, splitFlaw } from '../nest/flaw.js';
import type { NestFace } from '../nest/nest.js';
import type { Cutter } from '../pattern/run.js';
import { type Problem, problem } from '../problem.js';
import { type Blades, turningRadiusMm } from '../tables/blades.js';
import { type CutPlan, lineLength, type SawnPart } from './cutplan.js';
import { mouthCuts } from './hollows.js';
import { type Round, shortRound, travelOf } from './order.js';
import { partingOf } from './parting.js';
import { reliefCutsOf } from './relief.js';
import type { WayIn } from './roadmap.js';
import { partOf, type Waste, wasteOf } from './waste.js';
import { waysIn } from './way-in.js';

/** What a blade turns whose width is not told, mm: that of 1/4 in, usual for such curves (common practice, no source). */
const USUAL_RADIUS_MM = 16;

export type Planned = { readonly plan: CutPlan; readonly problems: readonly Problem[] };

export function steeredCuts(
  face: NestFace,
  parts: ReadonlyMap<string, SawnPart>,
  { kerfMm, wanderMm, bladeWidthMm }: Pick<Cutter, 'kerfMm' | 'wanderMm' | 'bladeWidthMm'>,
  blades: Blades,
): Planned {
  const waste = wasteOf(face, parts, kerfMm);
  const radiusMm = bladeWidthMm === null ? USUAL_RADIUS_MM : turningRadiusMm(blades, bladeWidthMm);
  const ways = waysIn(waste, radiusMm);
  const flaws = [...face.knots.map(roundFlaw), ...face.splits.map(splitFlaw)];
  const parting = partingOf(waste, { wanderMm, flaws });
  const entryPaths = ways.map((w) => w?.path ?? []);
  const reliefCuts =
    bladeWidthMm === null
      ? []
      : reliefCutsOf(face, waste, (name) =>
          mouthCuts(partOf(parts, name).profile, { bladeWidthMm, kerfMm }, blades),
        );
  const { order, travelMm } = sawingOrder(ways, parting);
  const outlinesMm = face.placements.map((p) => pathLength(partOf(parts, p.part).outline));
  const lines = [...entryPaths, ...parting.cuts, ...reliefCuts.map((r) => r.path)];
  return {
    plan: {
      entryPaths,
      partingCuts: parting.cuts,
      pieces: parting.pieces,
      cutOrder: order,
      reliefCuts,
      sharedLines: [],
      sawnMm: [...outlinesMm, ...lines.map(lineLength)].reduce((sum, l) => sum + l, 0),
      travelMm,
    },
    problems: ways.flatMap((way, i) =>
      way ? closedHollows(face, waste, i) : [unreached(face, i)],
    ),
  };
}

const unreached = (face: NestFace, i: number): Problem => {
  const [xMm, yMm] = face.placements[i].outline[0];
  const facts = { name: face.placements[i].part, face: face.id, xMm, yMm };
  return problem('outline-unreachable', ['saw', 'kerfMm'], facts);
};

/** Hollows whose mouth is narrower than the kerf: nothing gets in there. */
const closedHollows = (face: NestFace, { tracks }: Waste, i: number): Problem[] =>
  tracks[i].slice(1).map((ring) =>
    problem('outline-unreachable', ['saw', 'kerfMm'], {
      name: face.placements[i].part,
      face: face.id,
      xMm: ring[0][0],
      yMm: ring[0][1],
    }),
  );

/**
 * Pieces from left to right. In a piece an outline comes after those whose cuts its way runs along,
 * so that every cut begins at an edge or in an open cut and no way is sawn through what is still
 * to be held; among the rest, the round along the edge is kept short.
 */
function sawingOrder(
  ways: readonly (WayIn | null)[],
  { cuts, pieces }: ReturnType<typeof partingOf>,
): { readonly order: number[]; readonly travelMm: number } {
  let at: Point2 = [0, 0];
  let travelMm = 0;
  for (const cut of cuts) {
    const [from, to] = [cut[0], cut[cut.length - 1]];
    travelMm += distance(at, from);
    at = to;
  }
  const order: number[] = [];
  for (const { placements } of pieces) {
    const round: Round = {
      from: at,
      // The blade backs out by the way it came in, or the blank falls free: it ends where it began.
      stops: placements.map((i) => {
        const start = ways[i]?.path[0] ?? at;
        return { start, end: start };
      }),
      after: placements.map((i) =>
        (ways[i]?.along ?? []).map((o) => placements.indexOf(o)).filter((k) => k >= 0),
      ),
    };
    const turn = shortRound(round);
    travelMm += travelOf(round, turn);
    order.push(...turn.map((k) => placements[k]));
    if (turn.length > 0) at = round.stops[turn[turn.length - 1]].end;
  }
  return { order, travelMm };
}
