/**
 * The drill-stop jig: a cradle for the sawn blank, open to one side. The blank goes in sideways,
 * nose against the nose wall, back on the base; the belly wall carries a guide hole on each ballast
 * axis, and its flat outer face stops a collar on the bit, so station and depth repeat without
 * measuring. It stands on its base under a drill press, belly up. Printed lying on its floor plate:
 * every wall stands upright, the guides are short level bores, nothing needs support.
 *
 * Jig coordinates: X aft as in the blank, Y = down (toward the belly), Z = port, up from the bed.
 */
import { asRegion } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { type Ring, rectRing, ring } from '../../geometry/ring.js';
import type { Point2, Point3 } from '../../geometry/vec.js';
import { type Csg, extruded, holeAlongZ, movedBy } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement, translation } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { JigBlank, JigOutcome } from '../jig.js';
import { grooves, type Sunk } from '../letters.js';
import { columnAt } from '../outline.js';
import type { DrillStopJig } from './jig.js';
import { drillStopLetters } from './letters.js';
import { type Cradle, type DrillStopPlan, planDrillStop } from './plan.js';
import type { DrillStopSetup } from './setup.js';

const BORE_TOLERANCE = 0.01; // mm the corners of a bore stand outside its circle; its flats touch it
const OVERSHOOT = 1; // mm a cutter goes on in free air, so that no skin stays

/** The jig for the blank's ballast holes; none when there are no holes. */
export function drillStopJig(
  kernel: SolidKernel,
  blank: JigBlank,
  setup: DrillStopSetup,
): JigOutcome<DrillStopJig> {
  if (blank.holes.length === 0) return { jigs: [], problems: [] };
  const { plan, problems } = planDrillStop(blank, setup);
  if (!plan) return { jigs: [], problems };
  const { cradle } = plan;
  const { sunk, leftOut } = drillStopLetters(blank, setup, plan);
  const csg = drillStopCsg(plan, setup, sunk);
  const mesh = evaluate(kernel, csg);
  const sizeMm = meshBox(mesh)[1];
  const first = plan.guides.reduce((a, b) => (b.depthMm > a.depthMm ? b : a));
  const jig: DrillStopJig = {
    kind: 'drill-stop',
    pattern: blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: placement(
      [1, 0, 0],
      [0, 0, -1],
      [0, 1, 0],
      [cradle.noseEndMm, -cradle.axisUpMm, cradle.baseMm],
    ),
    axis: first.axis,
    workpiece: 'sawn',
    seatMm: setup.seatClearanceMm,
    fit: fitOf(blank, plan, setup),
    freeDirection: [0, 1, 0],
    leastWallMm: Math.min(setup.wallMm, setup.floorMm, setup.webMm + setup.letters.depthMm),
    keepWholeMm: plan.guides.map(({ stationMm, holeDiameterMm }): [number, number] => {
      const reach = holeDiameterMm / 2 + setup.wallMm;
      const x = stationMm - cradle.noseEndMm;
      return [x - reach, x + reach];
    }),
    sizeMm,
    volumeMm3: meshVolume(mesh),
    openings: plan.guides.length + (plan.pushHole ? 1 : 0),
    letters: sunk,
    lettersLeftOut: leftOut,
    words: [
      'Press the blank back onto the base and forward against the nose wall, and clamp it there.',
      'Set the collar from the shoulder of the bit; drill until it meets the stop face.',
      'Hold small parts in the jig, never by fingers near the bit. Local rules come first.',
    ],
    guides: plan.guides,
    openAtTail: plan.openAtTail,
    stopFaceMm: cradle.stopFaceMm,
  };
  return { jigs: [jig], problems: [] };
}

/**
 * Pressed to nose, back and floor, the blank has play toward tail and belly only. A clamp or a hand
 * presses its open side to the floor, in the middle of the cradle; a hand can press a tail that stands
 * out of it.
 */
function fitOf({ profileRing, thicknessMm }: JigBlank, plan: DrillStopPlan, setup: DrillStopSetup) {
  const { cradle, guides, openAtTail } = plan;
  const tail = profileRing.reduce((a, b) => (b[0] > a[0] ? b : a));
  const middleMm = (Math.max(0, cradle.noseEndMm) + Math.min(tail[0], cradle.aftEndMm)) / 2;
  const band = columnAt(profileRing, middleMm);
  const play = 2 * setup.clearanceMm;
  return {
    gapMm: [setup.seatClearanceMm, setup.seatClearanceMm],
    playMm: [
      [play, 0, 0],
      [0, 0, -play],
    ],
    pressed: [
      {
        called: 'to the floor',
        at: [middleMm, thicknessMm / 2, band ? (band.low + band.high) / 2 : 0],
        direction: [0, -1, 0],
      },
      ...(openAtTail
        ? [
            {
              called: 'to the nose wall',
              at: [tail[0], 0, tail[1]],
              direction: [-1, 0, 0],
            } as const,
          ]
        : []),
    ],
    tools: guides.map(({ stationMm, holeDiameterMm, axis }) => ({
      kind: 'drill',
      called: `the bit at ${Number(stationMm.toFixed(1))} mm`,
      axis,
      widthMm: holeDiameterMm,
    })),
  } satisfies Fit;
}

function drillStopCsg(plan: DrillStopPlan, setup: DrillStopSetup, sunk: readonly Sunk[]): Csg {
  const { cradle } = plan;
  const flat = flatOf(cradle);
  const { noseEndMm, aftEndMm, stopFaceMm, baseMm, floorMm, wallTopMm, bossTopMm } = cradle;
  const plate = flat(rectRing(noseEndMm, stopFaceMm, aftEndMm, baseMm));
  const block = extruded([asRegion(plate)], 0, wallTopMm);
  const inside = sunk.filter((s) => s.face.name === 'floor');
  const outside = sunk.filter((s) => s.face.name !== 'floor');
  const top = Math.max(wallTopMm, bossTopMm) + OVERSHOOT;
  return {
    kind: 'subtract',
    from: bossTopMm > wallTopMm ? { kind: 'union', parts: [block, boss(cradle, flat)] } : block,
    parts: [
      // Letters are cut quickest while their face is still a plain one.
      ...grooves(outside, setup.letters),
      extruded([asRegion(flat(plan.cavity))], floorMm, top),
      ...plan.guides.map((_, i) => bore(plan, i)),
      ...pushBore(plan, setup),
      ...grooves(inside, setup.letters),
    ],
  };
}

/** From the blank's side view to the plate's X and Y. */
const flatOf =
  ({ noseEndMm, baseMm }: Cradle) =>
  (outline: readonly Point2[]): Ring =>
    ring(outline.map(([x, z]): Point2 => [x - noseEndMm, baseMm - z]));

/** Where the walls are too low to carry collar and guide, the belly wall is raised about the axes. */
function boss(cradle: Cradle, flat: (r: Ring) => Ring): Csg {
  const { bossFromMm, bossToMm, bossInMm, bossTopMm, stopFaceMm } = cradle;
  const block = rectRing(bossFromMm, stopFaceMm, bossToMm, bossInMm);
  return extruded([asRegion(flat(block))], 0, bossTopMm);
}

/** The bore runs square to the stop face, from inside the cavity out through the face. */
function bore({ guides, boreFromMm, cradle }: DrillStopPlan, i: number): Csg {
  const { stationMm, holeDiameterMm } = guides[i];
  const faceY = cradle.baseMm - cradle.stopFaceMm;
  const at: Point3 = [stationMm - cradle.noseEndMm, 0, cradle.axisUpMm];
  return movedBy(
    placement([0, 0, 1], [1, 0, 0], [0, 1, 0], at),
    holeAlongZ(holeDiameterMm / 2, {
      fromZ: cradle.baseMm - boreFromMm[i],
      toZ: faceY + OVERSHOOT,
      tolerance: BORE_TOLERANCE,
    }),
  );
}

function pushBore({ pushHole, cradle }: DrillStopPlan, setup: DrillStopSetup): Csg[] {
  if (!pushHole) return [];
  const [x, z] = pushHole;
  return [
    movedBy(
      translation(x - cradle.noseEndMm, cradle.baseMm - z, 0),
      holeAlongZ(setup.pushHoleDiameterMm / 2, {
        fromZ: -OVERSHOOT,
        toZ: cradle.floorMm + OVERSHOOT,
        tolerance: 10 * BORE_TOLERANCE,
      }),
    ),
  ];
}
