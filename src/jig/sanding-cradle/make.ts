/**
 * The sanding cradle: a hollow of the finished body's own shape, lined with felt, in which the shaped
 * body lies on its side while the other side is sanded. Port and starboard are alike, so one cradle
 * serves both. Ears at nose and tail are screwed to the bench. Printed as it is used, hollow up:
 * nothing needs support.
 *
 * Jig coordinates: X aft as in the lure, Y = down (toward the belly), Z = port, up from the bed.
 */

import type { Body } from '../../body/body.js';
import { bodyMesh, finenessFor } from '../../body/mesh.js';
import { asRegion } from '../../geometry/clip.js';
import { type Mesh, meshBox, meshVolume, outset } from '../../geometry/mesh.js';
import { type Csg, extruded, holeAlongZ, movedBy, OVERSHOOT } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { inverse, translation } from '../../solid/placement.js';
import type { Jig, JigOutcome, JigWork } from '../jig.js';
import { grooves } from '../letters.js';
import { told } from '../wording.js';
import { cradleLetters } from './letters.js';
import { layoutOf } from './plan.js';
import type { SandingCradleSetup } from './setup.js';

const HOLE_TOLERANCE = 0.05; // mm the corners of a screw hole stand outside its circle

export type SandingCradle = Jig & {
  readonly kind: 'sanding-cradle';
  readonly liningMm: number;
  /** How deep the body lies in the hollow. */
  readonly depthMm: number;
};

export function sandingCradle(
  kernel: SolidKernel,
  { blank, body }: JigWork,
  setup: SandingCradleSetup,
): JigOutcome<SandingCradle> {
  const [low] = meshBox(body.mesh);
  const halfBreadthMm = 0 - low[1];
  const depthMm = setup.depthRatio * halfBreadthMm;
  const layout = layoutOf(body, halfBreadthMm, depthMm, setup);
  const { sunk, leftOut } = cradleLetters(blank, setup, layout);
  const csg: Csg = {
    kind: 'subtract',
    from: {
      kind: 'union',
      parts: [
        extruded([asRegion(layout.block)], 0, layout.topZ),
        extruded([asRegion(layout.ears)], 0, setup.earThicknessMm),
      ],
    },
    parts: [
      movedBy(inverse(layout.jigToBlank), {
        kind: 'mesh',
        mesh: lined(body, setup.liningMm),
      }),
      ...layout.screws.map(([x, y]) =>
        movedBy(
          translation(x, y, 0),
          holeAlongZ(setup.screwHoleMm / 2, {
            fromZ: -OVERSHOOT,
            toZ: setup.earThicknessMm + OVERSHOOT,
            tolerance: HOLE_TOLERANCE,
          }),
        ),
      ),
      ...grooves(sunk, setup.letters),
    ],
  };
  const mesh = evaluate(kernel, csg);
  const jig: SandingCradle = {
    kind: 'sanding-cradle',
    pattern: blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: layout.jigToBlank,
    workpiece: 'shaped',
    seatMm: setup.liningMm,
    fit: {
      gapMm: [setup.liningMm, setup.liningMm + HOLLOW_OPEN],
      playMm: [],
      pressed: [
        { called: 'into the hollow', at: body.properties.centroidMm, direction: [0, -1, 0] },
      ],
      tools: [],
    },
    freeDirection: [0, 1, 0],
    leastWallMm: Math.min(setup.wallMm, setup.floorMm, setup.earThicknessMm),
    keepWholeMm: layout.screws.map(([x]): [number, number] => [
      x - 1.5 * setup.screwHoleMm,
      x + 1.5 * setup.screwHoleMm,
    ]),
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: 2,
    letters: sunk,
    lettersLeftOut: leftOut,
    words: [
      `Glue felt or foam of ${told(setup.liningMm)} mm into the hollow and screw the cradle to the bench.`,
      'Lay the shaped body in on its side, sand the side that is up, turn it over.',
      'Wear a mask against dust and collect it. Local rules come first.',
    ],
    liningMm: setup.liningMm,
    depthMm,
  };
  return { jigs: [jig], problems: [] };
}

const HOLLOW_OPEN = 0.3; // mm the hollow may be wider than its lining, where the body is sharply round
const HOLLOW_CHORD = 0.04; // mm the hollow may be flattened: a printed layer is coarser

/** The body with room for a lining of this thickness over every facet. */
function lined({ shape, properties }: Body, liningMm: number): Mesh {
  const bare = bodyMesh(shape, finenessFor(shape, HOLLOW_CHORD), properties.volumeMm3);
  return outset(bare, liningMm + HOLLOW_CHORD);
}
