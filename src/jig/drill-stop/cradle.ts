/** The cradle about the cavity: its ends, its base with ears, and where it is raised about the guides. */
import { type Ring, rectRing, ring, ringBox } from '../../geometry/ring.js';
import type { JigBlank } from '../jig.js';
import { columnAt, wholeMicrons } from '../outline.js';
import { fromUpright } from './boring.js';
import { bossHalf, type Faced, type Guided, isUpright, leans, wholeSetting } from './guided.js';
import type { DrillStopSetup } from './setup.js';

/** Ends and faces in the side view, and heights above the bed it is printed on. */
export type Cradle = Ends & {
  /** Where jig X begins: the nose end, or the end of the ear before it. */
  readonly originMm: number;
  /** Heights (z) of the face the collar stops at and of the base it stands on. */
  readonly stopFaceMm: number;
  readonly baseMm: number;
  readonly floorMm: number;
  readonly axisUpMm: number;
  readonly wallTopMm: number;
  readonly bosses: readonly Boss[];
  readonly ears: CradleEars | null;
};

export type Ends = {
  readonly noseEndMm: number;
  readonly aftEndMm: number;
  readonly openAtTail: boolean;
  /** Where they would be if no collar had to be carried. */
  readonly wallsAlone: { readonly noseMm: number; readonly aftMm: number };
};

/** Plastic beside the plain block: an outline in the side view, from the bed up. */
export type Boss = { readonly outline: Ring; readonly topMm: number };

export type CradleEars = {
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly boltMm: number;
  /** Above the bed. */
  readonly topMm: number;
};

type Given = {
  readonly cavity: Ring;
  readonly stopFaceMm: number;
};

/**
 * Closed by a wall at the tail where that carries a guide or an ear, or where the tail would stand out
 * by less than a wall. The collar settings of tow eye and tail eye are whole millimeters.
 */
export function endsOf(
  {
    belly,
    eyes,
    cavity,
    stopFaceMm,
  }: Given & { readonly belly: readonly Faced[]; readonly eyes: readonly Guided[] },
  setup: DrillStopSetup,
): Ends {
  const [noseMm, , tailMm] = ringBox(cavity);
  const spans = belly.map((g) => spanOf(g, stopFaceMm));
  const first = Math.min(...spans.map(([from]) => from));
  const last = Math.max(...spans.map(([, to]) => to));
  const tow = eyes.find(({ boring }) => boring.inward[0] > 0);
  const tail = eyes.find(({ boring }) => boring.inward[0] < 0);
  const reached = Math.max(last, ...belly.map((g) => g.boring.mouth[0] + setup.reachMm));
  const openAtTail = belly.length > 0 && !tail && !setup.ears && reached < tailMm - setup.wallMm;
  const wallsAlone = {
    noseMm: Math.min(noseMm - setup.wallMm, tow ? tow.endMm - tow.leastMm : Infinity),
    aftMm: Math.max(tailMm + setup.wallMm, tail ? tail.leastMm - tail.endMm : -Infinity),
  };
  const nose = Math.min(wallsAlone.noseMm, first);
  const closed = Math.max(wallsAlone.aftMm, last);
  const noseEndMm = tow ? wholeSetting(tow, nose) : nose;
  const aft = openAtTail ? reached : tail ? -wholeSetting(tail, -closed) : closed;
  const aftEndMm = noseEndMm + wholeMicrons(aft - noseEndMm);
  return { noseEndMm, aftEndMm, openAtTail, wallsAlone };
}

/** From where to where along the blank a guide from the belly needs plastic. */
function spanOf(guide: Faced, stopFaceMm: number): readonly [number, number] {
  const { boring, land } = guide;
  const [x] = boring.mouth;
  if (isUpright(guide)) return [x - land, x + land];
  const [from, , to] = ringBox(leaningBoss(guide, stopFaceMm));
  return [Math.min(from, x - land), Math.max(to, x + land)];
}

/** How far a leaning boss goes into the wall behind the stop face, mm. */
const ROOT = 0.5;

/** The side view of the boss of a leaning guide: its end face is square to the axis. */
function leaningBoss(guide: Faced, stopFaceMm: number): Ring {
  const { boring, acrossMm, faceMm } = guide;
  const [sin, cos] = boring.inward;
  const half = bossHalf(guide);
  const root = (stopFaceMm + ROOT + acrossMm * sin + half * Math.abs(sin)) / cos;
  const corners = boxCorners(acrossMm - half, faceMm, acrossMm + half, root);
  return ring(corners.map((p) => fromUpright(boring.inward, p)));
}

const boxCorners = (x0: number, y0: number, x1: number, y1: number) =>
  [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ] as const;

export function cradleOf(
  {
    guides,
    cavity,
    ends,
    stopFaceMm,
    blank,
  }: Given & {
    readonly guides: readonly Faced[];
    readonly ends: Ends;
    readonly blank: JigBlank;
  },
  setup: DrillStopSetup,
): Cradle {
  const half = blank.thicknessMm / 2;
  const land = Math.max(...guides.map((g) => g.land));
  const floorMm = Math.max(setup.floorMm, land - half - setup.seatClearanceMm);
  const axisUpMm = floorMm + setup.seatClearanceMm + half;
  const wallTopMm = axisUpMm + half - setup.proudMm;
  const ears = earsOf(setup, wallTopMm);
  const back = Math.max(ringBox(cavity)[3] + setup.wallMm, ...eyesOverEars(guides, setup));
  const baseMm = stopFaceMm + wholeMicrons(back - stopFaceMm);
  const common = { ...ends, stopFaceMm, baseMm, floorMm, axisUpMm, wallTopMm, ears };
  const bosses = [
    ...bellyBoss(guides, cavity, common),
    ...guides.filter(leans).map((g) => ({
      outline: leaningBoss(g, stopFaceMm),
      topMm: axisUpMm + bossHalf(g),
    })),
    ...endBosses(guides, common),
  ];
  return { ...common, bosses, originMm: ends.noseEndMm - (ears?.lengthMm ?? 0) };
}

/** Room between what turns at an end's guide and the ear under it, mm. */
const OVER_EAR = 1;

/** How deep the base must lie so that the ears are clear of what turns over the eyes' guides. */
const eyesOverEars = (guides: readonly Faced[], { ears }: DrillStopSetup): number[] =>
  guides.flatMap(({ boring, collarMm }) =>
    ears && boring.inward[1] === 0
      ? [boring.mouth[1] + collarMm / 2 + OVER_EAR + ears.thicknessMm]
      : [],
  );

/** The ears are as high as the walls; over a thin blank high enough to hold their bolt. */
const earsOf = ({ ears, wallMm }: DrillStopSetup, wallTopMm: number): CradleEars | null =>
  ears
    ? {
        lengthMm: ears.lengthMm,
        thicknessMm: ears.thicknessMm,
        boltMm: ears.boltMm,
        topMm: ears.boltMm > 0 ? Math.max(wallTopMm, ears.boltMm + 2 * wallMm) : wallTopMm,
      }
    : null;

type Walls = Ends & Pick<Cradle, 'stopFaceMm' | 'axisUpMm' | 'wallTopMm'>;

/** Where the walls are too low to carry collar and guide, the belly wall is raised about the axes. */
function bellyBoss(guides: readonly Faced[], cavity: Ring, walls: Walls): Boss[] {
  const { stopFaceMm, axisUpMm, wallTopMm } = walls;
  const belly = guides.filter(({ boring }) => boring.inward[1] > 0);
  const topMm = axisUpMm + Math.max(...belly.map((g) => g.land));
  if (!(topMm > wallTopMm)) return [];
  const spans = belly.map((g) => spanOf(g, stopFaceMm));
  const from = Math.min(...spans.map(([a]) => a));
  const to = Math.max(...spans.map(([, b]) => b));
  const bellies = cavity
    .map(([x]) => x)
    .filter((x) => x > from && x < to)
    .map((x) => columnAt(cavity, x)?.low ?? stopFaceMm);
  return [{ outline: rectRing(from, stopFaceMm, to, Math.max(...bellies)), topMm }];
}

/** The same for the guides in the end walls. */
function endBosses(guides: readonly Faced[], walls: Walls): Boss[] {
  return guides.flatMap(({ boring, land, way }) => {
    const [x, z] = boring.mouth;
    const topMm = walls.axisUpMm + land;
    if (boring.inward[1] !== 0 || topMm <= walls.wallTopMm || !way) return [];
    const [from, to] =
      boring.inward[0] > 0 ? [walls.noseEndMm, way.insideMm] : [-way.insideMm, walls.aftEndMm];
    const low = Math.max(walls.stopFaceMm, z - land);
    return [{ outline: rectRing(Math.min(from, x), low, Math.max(to, x), z + land), topMm }];
  });
}
