/**
 * The drying comb: a flat bar, screwed to the edge of a shelf, with a keyhole slot for the hook of
 * each lure. The slots are so far apart, and so far from the shelf, that lures which turn on their
 * hooks touch neither each other nor the shelf; combs butted end to end keep the distance. Printed
 * flat.
 *
 * Jig coordinates: X along the shelf, Y out over its edge, Z up.
 */

import type { Blank } from '../../blank/blank.js';
import { asRegion, union } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { circleRing, type Region, rectRing } from '../../geometry/ring.js';
import type { Point2, Point3 } from '../../geometry/vec.js';
import { add, times } from '../../geometry/vec.js';
import { eyePlaces, loopCenter, loopOf } from '../../mass/eyes.js';
import type { Pattern } from '../../pattern/pattern.js';
import { type Csg, extruded, OVERSHOOT } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { translation } from '../../solid/placement.js';
import type { Jig, JigOutcome, JigWork } from '../jig.js';
import type { JigSet } from '../kind.js';
import { grooves } from '../letters.js';
import { bedOf } from '../setup.js';
import { combLetters } from './letters.js';
import { layoutOf } from './plan.js';
import type { DryingCombSetup } from './setup.js';
import { swingRadius } from './swing.js';

const SIDES = 48; // of a circle: 0.01 mm at a dimple of 6 mm

export type DryingComb = Jig & {
  readonly kind: 'drying-comb';
  /** The eye the lures hang by. */
  readonly hungBy: string;
  /** Lures that hang on one comb. */
  readonly places: number;
  readonly pitchMm: number;
  /** Of the upright cylinder round a lure that turns on its hook. */
  readonly swingRadiusMm: number;
};

/** None for a lure without an eye at nose or tail. */
export function dryingComb(
  kernel: SolidKernel,
  work: JigWork,
  { setup, printer }: JigSet<DryingCombSetup>,
): JigOutcome<DryingComb> {
  const eye = hangingEye(work, setup);
  if (!eye) return { jigs: [], problems: [] };
  const at: Point3 = [eye.center[0], 0, eye.center[1]];
  const lip = lipCorners(work.pattern, work.blank);
  const swingRadiusMm = swingRadius(work.body.mesh, lip, at, work.shapedCgMm);
  const pitchMm = Math.ceil(2 * swingRadiusMm + setup.gapMm);
  const { xMm, yMm } = bedOf(setup, printer);
  const places = Math.max(1, Math.floor(Math.min(setup.lengthMm, Math.max(xMm, yMm)) / pitchMm));
  const layout = layoutOf(places, pitchMm, setup);
  const { sunk, leftOut } = combLetters(work.blank, { places, pitchMm }, setup, layout);
  const csg: Csg = {
    kind: 'subtract',
    from: extruded(
      [asRegion(rectRing(0, 0, layout.lengthMm, layout.widthMm))],
      0,
      setup.thicknessMm,
    ),
    parts: [
      extruded(
        [
          ...layout.slots.map((p) => keyhole(p, layout.widthMm, setup)),
          ...layout.screws.map((p) => round(p, setup.screwHoleMm)),
        ],
        -OVERSHOOT,
        setup.thicknessMm + OVERSHOOT,
      ),
      ...grooves(sunk, setup.letters),
    ],
  };
  const mesh = evaluate(kernel, csg);
  const jig: DryingComb = {
    kind: 'drying-comb',
    pattern: work.blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: translation(0, 0, 0),
    workpiece: null,
    seatMm: 0,
    fit: null,
    freeDirection: null,
    leastWallMm: Math.min(setup.thicknessMm, setup.toothMm),
    keepWholeMm: [],
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: layout.screws.length,
    letters: sunk,
    lettersLeftOut: leftOut,
    words: [
      `Screw the comb to the edge of a shelf and hang up to ${places} lures by the ${eye.name} eye, each on a wire hook.`,
      `They hang ${pitchMm} mm apart and do not touch when they turn.`,
      'Sealer and uncured epoxy: gloves, moving air, no flame. Follow the maker’s data sheet and local rules.',
    ],
    hungBy: eye.name,
    places,
    pitchMm,
    swingRadiusMm,
  };
  return { jigs: [jig], problems: [] };
}

function hangingEye({ pattern, body, materials }: JigWork, { hangBy }: DryingCombSetup) {
  const ends = eyePlaces(pattern, body.shape).filter((p) => p.name === 'tow' || p.name === 'tail');
  const place = ends.find((p) => p.name === hangBy) ?? ends[0];
  return (
    place && { name: place.name, center: loopCenter(place, loopOf(place, pattern, materials)) }
  );
}

/** Outer corners of the lip, which is in its slot before the coats; none without one. */
function lipCorners({ lip }: Pattern, { slot }: Pick<Blank, 'slot'>): Point3[] {
  if (!lip || !slot) return [];
  const [x, z] = add(slot.end, times(slot.outward, lip.lengthMm));
  return [
    [x, lip.widthMm / 2, z],
    [x, -lip.widthMm / 2, z],
  ];
}

/** A round end, and a narrower way in from the front. */
function keyhole([x, y]: Point2, frontMm: number, { slotMm, dimpleMm }: DryingCombSetup): Region {
  const way = rectRing(x - slotMm / 2, y, x + slotMm / 2, frontMm + OVERSHOOT);
  return union([asRegion(way), round([x, y], Math.max(dimpleMm, slotMm))])[0];
}

const round = (center: Point2, diameterMm: number): Region =>
  asRegion(circleRing(center, diameterMm / 2, { segments: SIDES }));
