/**
 * The center scribe: a tray for the sawn blank, lying on its side, with a wall all round it whose rim
 * lies at half the blank's thickness, less half a pencil. A pencil slid along the rim draws the
 * centerline all round; notches in the rim lead it down for a tick at tow eye, lip, ballast, hangers
 * and tail eye. Turned over, the blank must show the same line: that proves the thickness. Printed
 * as it is used, nothing needs support.
 *
 * Jig coordinates: X aft as in the blank, Y = down (toward the belly), Z = port, up from the bed.
 */
import { asRegion } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { ring, ringBox } from '../../geometry/ring.js';
import { type Csg, extruded, OVERSHOOT } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement } from '../../solid/placement.js';
import type { Fit } from '../fit.js';
import type { Jig, JigOutcome, JigWork } from '../jig.js';
import { grooves } from '../letters.js';
import { scribeLetters } from './letters.js';
import { apart, LEAST_FIN_MM, notch, trayOf } from './plan.js';
import type { CenterScribeSetup } from './setup.js';
import { type Tick, ticksOf } from './ticks.js';

const LEAST_TICK_MM = 1;
const UNDER_TICK_MM = 1; // of wall that stays under a notch

export type CenterScribe = Jig & {
  readonly kind: 'center-scribe';
  readonly ticks: readonly Tick[];
  /** Height of the rim over the floor the blank lies on. */
  readonly rimMm: number;
  /** Length of a tick. */
  readonly tickMm: number;
  /** What the pencil must add to the rim. */
  readonly pencilMm: number;
};

export function centerScribe(
  kernel: SolidKernel,
  { pattern, blank }: JigWork,
  setup: CenterScribeSetup,
): JigOutcome<CenterScribe> {
  const rimMm = blank.thicknessMm / 2 - setup.pencilMm;
  const leastMm = LEAST_TICK_MM + UNDER_TICK_MM;
  if (rimMm < leastMm) {
    const most = blank.thicknessMm / 2 - leastMm;
    const facts = { rimMm, leastMm, pencilMm: setup.pencilMm, mostPencilMm: Math.max(0, most) };
    return { jigs: [], problems: [{ code: 'jig-rim-too-low', facts }] };
  }
  const { tray, corner } = trayOf(blank.profileRing, setup, rimMm);
  const { ticks, crowded } = apart(ticksOf(pattern, blank), setup);
  const { sunk, leftOut } = scribeLetters(blank, setup, tray, ticks);
  const { floorMm, seatClearanceMm } = setup;
  const tickMm = Math.min(setup.tickDepthMm, rimMm - UNDER_TICK_MM);
  const notches = ticks.map((tick) => ring(notch(tick, setup).map(tray.toTray)));
  const csg: Csg = {
    kind: 'subtract',
    from: {
      kind: 'union',
      parts: [
        extruded([asRegion(tray.apron)], 0, floorMm),
        extruded([{ outer: tray.wall, holes: [tray.cavity] }], 0, tray.rimZ),
      ],
    },
    parts: [
      ...grooves(sunk, setup.letters),
      ...notches.map((outline) =>
        extruded([asRegion(outline)], tray.rimZ - tickMm, tray.rimZ + OVERSHOOT),
      ),
    ],
  };
  const mesh = evaluate(kernel, csg);
  const up = floorMm + seatClearanceMm + blank.thicknessMm / 2;
  const jig: CenterScribe = {
    kind: 'center-scribe',
    pattern: blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: placement([1, 0, 0], [0, 0, -1], [0, 1, 0], [corner[0], -up, corner[1]]),
    workpiece: 'sawn',
    seatMm: seatClearanceMm,
    fit: fitOf(blank, setup),
    freeDirection: [0, 1, 0],
    leastWallMm: Math.min(setup.wallMm, floorMm, LEAST_FIN_MM + setup.letters.depthMm),
    keepWholeMm: notches.map((r): [number, number] => [ringBox(r)[0] - 1, ringBox(r)[2] + 1]),
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: 0,
    letters: sunk,
    lettersLeftOut: leftOut,
    words: [
      'Lay the sawn blank in the tray and slide the pencil, flat on the rim, all the way round.',
      `Draw it down in each notch: ${ticks.map((t) => `${t.letter} ${t.what}`).join(', ')}.`,
      'Turn the blank over and look: a second line beside the first tells that the blank is not as thick as planned.',
    ],
    ticks,
    rimMm: rimMm + seatClearanceMm,
    tickMm,
    pencilMm: setup.pencilMm,
  };
  const problems = crowded.map(({ what, at, beside }) => ({
    code: 'jig-tick-left-out' as const,
    path: [],
    facts: { what, stationMm: at[0], beside },
  }));
  return { jigs: [jig], problems };
}

/** It rests on the floor, and can slide as far as the wall is clear of it. */
function fitOf({ profileRing }: JigWork['blank'], setup: CenterScribeSetup): Fit {
  const { seatClearanceMm, clearanceMm } = setup;
  const room = Math.max(0, clearanceMm - seatClearanceMm);
  const [minX, minZ, maxX, maxZ] = ringBox(profileRing);
  const called = 'to the floor';
  return {
    gapMm: [Math.min(seatClearanceMm, clearanceMm), seatClearanceMm],
    playMm: [
      [room, 0, 0],
      [-room, 0, 0],
      [0, 0, room],
      [0, 0, -room],
    ],
    pressed: [{ called, at: [(minX + maxX) / 2, 0, (minZ + maxZ) / 2], direction: [0, -1, 0] }],
    tools: [],
  };
}
