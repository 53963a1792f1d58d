/**
 * The drill-stop jig: a cradle for the sawn blank, open to one side. The blank goes in sideways,
 * nose against the nose wall, back on the base. The belly wall carries a guide on the axis of each
 * ballast hole and hanger, the end walls those of tow eye and tail eye; a collar on the bit stops at
 * the flat face about each, so place and depth repeat without measuring. It stands on its base under
 * a drill press, belly up, clamped by ears at both ends. Printed lying on its floor plate: every wall,
 * boss and ear stands upright, the guides are short level bores, nothing needs support.
 *
 * Jig coordinates: X aft as in the blank, Y = down (toward the belly), Z = port, up from the bed.
 */

import { asRegion } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { type Ring, rectRing, ring } from '../../geometry/ring.js';
import type { Point2, Point3 } from '../../geometry/vec.js';
import { type Csg, extruded, holeAlongZ, movedBy, OVERSHOOT } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement, translation } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { JigBlank, JigOutcome } from '../jig.js';
import type { JigSet } from '../kind.js';
import { grooves, type Sunk } from '../letters.js';
import { columnAt } from '../outline.js';
import { told } from '../wording.js';
import { type Boring, ballastBorings } from './boring.js';
import { thinnestWeb } from './conflicts.js';
import type { Cradle } from './cradle.js';
import type { Faced } from './guided.js';
import type { DrillGuide, DrillStopJig } from './jig.js';
import { drillStopLetters } from './letters.js';
import { type DrillStopPlan, planDrillStop } from './plan.js';
import type { DrillStopSetup } from './setup.js';
import { guideTold, seatLength } from './told.js';
import { drillStopWords } from './words.js';

const BORE_TOLERANCE = 0.01; // mm the corners of a bore stand outside its circle; its flats touch it

/** The jig for the blank's ballast holes and these pilots; none when there is nothing to drill. */
export function drillStopJig(
  kernel: SolidKernel,
  blank: JigBlank,
  set: JigSet<DrillStopSetup>,
  pilots: readonly Boring[] = [],
): JigOutcome<DrillStopJig> {
  const borings = [...ballastBorings(blank.holes), ...pilots];
  if (borings.length === 0) return { jigs: [], problems: [] };
  const { plan, problems } = planDrillStop(borings, blank, set);
  if (!plan) return { jigs: [], problems };
  const { setup } = set;
  const { cradle } = plan;
  const guides = plan.guides.map((g) => guideTold(g, set));
  const { sunk, leftOut } = drillStopLetters(blank, setup, plan, guides);
  const csg = drillStopCsg(plan, setup, sunk);
  const mesh = evaluate(kernel, csg);
  const ballast = guides.filter((g) => g.for === 'ballast');
  const [first, ...others] = ballast.length > 0 ? ballast : guides;
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
      [cradle.originMm, -cradle.axisUpMm, cradle.baseMm],
    ),
    axis: others.reduce((a, b) => (b.depthMm > a.depthMm ? b : a), first).axis,
    workpiece: 'sawn',
    seatMm: setup.seatClearanceMm,
    fit: fitOf(blank, plan, guides, setup),
    freeDirection: [0, 1, 0],
    leastWallMm: leastWall(plan, setup),
    sizeMm: meshBox(mesh)[1],
    keepWholeMm: keptWhole(plan, setup),
    volumeMm3: meshVolume(mesh),
    openings: guides.some((g) => g.tiltDeg !== 0) ? null : openingsOf(plan),
    letters: sunk,
    lettersLeftOut: leftOut,
    guides,
    openAtTail: cradle.openAtTail,
    stopFaceMm: cradle.stopFaceMm,
    words: drillStopWords(guides, setup.ears),
  };
  return { jigs: [jig], problems: [] };
}

/**
 * Pressed to nose, back and floor, the blank has play toward tail and belly only. A clamp or a hand
 * presses its open side to the floor, in the middle of the cradle; a hand can press a tail that stands
 * out of it.
 */
function fitOf(
  { profileRing, thicknessMm }: JigBlank,
  { cradle }: DrillStopPlan,
  guides: readonly DrillGuide[],
  setup: DrillStopSetup,
): Fit {
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
      ...(cradle.openAtTail
        ? [
            {
              called: 'to the nose wall',
              at: [tail[0], 0, tail[1]],
              direction: [-1, 0, 0],
            } as const,
          ]
        : []),
    ],
    tools: guides.map((guide) => ({
      kind: 'drill',
      called:
        guide.for === 'tow eye' || guide.for === 'tail eye'
          ? `the bit for the ${guide.for}`
          : `the bit at ${told(guide.stationMm)} mm`,
      axis: guide.axis,
      widthMm: Math.max(guide.holeDiameterMm, guide.sleeve?.seatDiameterMm ?? 0),
    })),
  };
}

/** Letters are sunk into faces, not into the webs between bores and beside bolts. */
function leastWall({ guides, cradle: { ears } }: DrillStopPlan, setup: DrillStopSetup): number {
  const inside = [
    thinnestWeb(guides),
    ...(setup.bushingOuterDiameterMm > 0 ? [setup.bushingShoulderMm] : []),
    ...(ears ? [ears.thicknessMm, (ears.lengthMm - ears.boltMm) / 2] : []),
  ];
  return Math.min(setup.wallMm, setup.floorMm, ...inside.map((w) => w + setup.letters.depthMm));
}

/** Jig X at which no joint may run through a guide, its boss, or an end with what stands out of it. */
function keptWhole({ guides, cradle }: DrillStopPlan, { wallMm }: DrillStopSetup): Span[] {
  const { originMm, noseEndMm, aftEndMm, ears } = cradle;
  const spans = guides.map(({ boring, face, land }): Span => {
    const ends = [face[0], boring.mouth[0]];
    const aside = boring.inward[1] === 0 ? wallMm : land;
    return [Math.min(...ends) - aside, Math.max(...ends) + aside];
  });
  const beside: Span[] = ears
    ? [
        [originMm, noseEndMm + wallMm],
        [aftEndMm - wallMm, aftEndMm + ears.lengthMm],
      ]
    : [];
  return [...spans, ...beside].map(([from, to]): Span => [from - originMm, to - originMm]);
}

type Span = readonly [from: number, to: number];

function openingsOf({ guides, pushHole, cradle: { ears } }: DrillStopPlan): number {
  const bolts = ears && ears.boltMm > 0 ? 2 : 0;
  return guides.length + (pushHole ? 1 : 0) + bolts;
}

function drillStopCsg(plan: DrillStopPlan, setup: DrillStopSetup, sunk: readonly Sunk[]): Csg {
  const { cradle } = plan;
  const flat = flatOf(cradle);
  const { noseEndMm, aftEndMm, stopFaceMm, baseMm, floorMm, wallTopMm, bosses } = cradle;
  const plate = flat(rectRing(noseEndMm, stopFaceMm, aftEndMm, baseMm));
  const block = extruded([asRegion(plate)], 0, wallTopMm);
  const beside = [
    ...bosses.map((b) => extruded([asRegion(flat(b.outline))], 0, b.topMm)),
    ...ears(cradle),
  ];
  const inside = sunk.filter((s) => s.face.name === 'floor');
  const outside = sunk.filter((s) => s.face.name !== 'floor');
  const top = Math.max(wallTopMm, ...bosses.map((b) => b.topMm)) + OVERSHOOT;
  return {
    kind: 'subtract',
    from: beside.length > 0 ? { kind: 'union', parts: [block, ...beside] } : block,
    parts: [
      // Letters are cut quickest while their face is still a plain one.
      ...grooves(outside, setup.letters),
      extruded([asRegion(flat(plan.cavity))], floorMm, top),
      // Apart from each other, and quicker cut together.
      { kind: 'union', parts: holesOf(plan, setup) },
      ...grooves(inside, setup.letters),
    ],
  };
}

const holesOf = (plan: DrillStopPlan, setup: DrillStopSetup): Csg[] => [
  ...plan.guides.flatMap((g) => bores(g, plan.cradle, setup)),
  ...pushBore(plan, setup),
  ...boltBores(plan.cradle),
];

/** From the blank's side view to the plate's X and Y. */
const flatOf =
  ({ originMm, baseMm }: Cradle) =>
  (outline: readonly Point2[]): Ring =>
    ring(outline.map(([x, z]): Point2 => [x - originMm, baseMm - z]));

const EAR_ROOT = 1; // mm an ear goes on into the block

function ears({ ears, noseEndMm, aftEndMm, originMm }: Cradle): Csg[] {
  if (!ears) return [];
  const { lengthMm, thicknessMm, topMm } = ears;
  const aft = aftEndMm - originMm;
  return [
    rectRing(0, 0, noseEndMm - originMm + EAR_ROOT, thicknessMm),
    rectRing(aft - EAR_ROOT, 0, aft + lengthMm, thicknessMm),
  ].map((outline) => extruded([asRegion(outline)], 0, topMm));
}

/** Square to the base, in the middle of each ear. */
function boltBores({ ears, aftEndMm, originMm }: Cradle): Csg[] {
  if (!ears || ears.boltMm === 0) return [];
  const { lengthMm, thicknessMm, topMm, boltMm } = ears;
  const middles = [lengthMm / 2, aftEndMm - originMm + lengthMm / 2];
  return middles.map((x) =>
    movedBy(
      placement([0, 0, 1], [1, 0, 0], [0, 1, 0], [x, 0, topMm / 2]),
      holeAlongZ(boltMm / 2, {
        fromZ: -OVERSHOOT,
        toZ: thicknessMm + OVERSHOOT,
        tolerance: BOLT_TOLERANCE,
      }),
    ),
  );
}

const BOLT_TOLERANCE = 10 * BORE_TOLERANCE;

/** From inside the cavity out through the stop face; and the seat of a sleeve from the face to its shoulder. */
function bores(guide: Faced, cradle: Cradle, setup: DrillStopSetup): Csg[] {
  const { boring, way, faceMm, face, radius, seatRadius } = guide;
  const [dx, dz] = boring.inward;
  const at: Point3 = [face[0] - cradle.originMm, cradle.baseMm - face[1], cradle.axisUpMm];
  const out = placement([0, 0, 1], [dz, dx, 0], [0 - dx, dz, 0], at);
  const { insideMm, leaveMm } = way as NonNullable<typeof way>;
  const from = Math.min(insideMm + 1, (insideMm + leaveMm) / 2);
  const hole = (r: number, deepMm: number) =>
    movedBy(out, holeAlongZ(r, { fromZ: -deepMm, toZ: OVERSHOOT, tolerance: BORE_TOLERANCE }));
  const seatMm = seatLength(guide, setup);
  return [hole(radius, from - faceMm), ...(seatMm > 0 ? [hole(seatRadius, seatMm)] : [])];
}

function pushBore({ pushHole, cradle }: DrillStopPlan, setup: DrillStopSetup): Csg[] {
  if (!pushHole) return [];
  const [x, z] = pushHole;
  return [
    movedBy(
      translation(x - cradle.originMm, cradle.baseMm - z, 0),
      holeAlongZ(setup.pushHoleDiameterMm / 2, {
        fromZ: -OVERSHOOT,
        toZ: cradle.floorMm + OVERSHOOT,
        tolerance: 10 * BORE_TOLERANCE,
      }),
    ),
  ];
}
