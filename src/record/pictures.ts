/** What a lure does in the water → what is drawn of it. */

import type { Floating } from '../afloat/floating.js';
import { toldSpeed } from '../afloat/told-speed.js';
import type { Choice } from '../ballast/choice.js';
import { bellyIn } from '../ballast/workpiece.js';
import { lipHole, lipOutline, type Plate } from '../blank/lip-outline.js';
import type { CutPlan } from '../cutplan/cutplan.js';
import { sawnWays } from '../cutplan/open-cuts.js';
import { checkPicture } from '../drawing/picture/check.js';
import { choicesPicture } from '../drawing/picture/choices-picture.js';
import { facePicture } from '../drawing/picture/face-picture.js';
import { floatPicture } from '../drawing/picture/float-picture.js';
import type {
  DrawnEye,
  DrawnHole,
  DrawnLip,
  DrawnLure,
  FloatInput,
} from '../drawing/picture/input.js';
import type { Picture } from '../drawing/picture/picture.js';
import { type SolidsInput, solidsPicture } from '../drawing/picture/solids-picture.js';
import { tubPicture } from '../drawing/picture/tub-picture.js';
import { printable } from '../drawing/views/printable.js';
import { pictureSvg } from '../formats/picture-svg.js';
import { flatten } from '../geometry/arcpath.js';
import { circleRing } from '../geometry/ring.js';
import { add, type Point2, quarterLeft, times } from '../geometry/vec.js';
import { eyePlaces } from '../mass/eyes.js';
import { floorOf } from '../mass/plug.js';
import { rowOf } from '../mass/row.js';
import type { NestFace } from '../nest/nest.js';
import { Fault } from '../problem.js';

/** The sheet of one lure at rest, as SVG. */
export const floatSvg = (f: Floating): string => written(floatPicture(floatInput(f)));

/** The lure in its water, to be held beside the tub, as SVG. */
export const tubSvg = (f: Floating): string => written(tubPicture(floatInput(f)));

/** A face as the sawyer looks at it, as SVG. */
export const faceSvg = (face: NestFace, plan: CutPlan): string =>
  written(
    facePicture({
      ...face,
      outlines: face.placements.map(({ part, outline }) => ({ name: part, points: outline })),
      cutOrder: plan.cutOrder,
      ways: [
        ...sawnWays(plan).map((way) => way.slice(0, -1)),
        ...plan.reliefCuts.map((r) => r.path),
      ].filter((way) => way.length > 1),
      partingCuts: plan.partingCuts,
    }),
  );

function floatInput(f: Floating): FloatInput {
  const [attitude, ...others] = f.attitudes;
  return {
    name: f.pattern.name,
    version: f.pattern.version,
    verdict: f.verdict,
    waterDensityKgM3: f.water.densityKgM3,
    lure: drawnLure(f),
    attitude,
    others: others.filter((a) => a.stable),
    righting: f.righting,
    speed: toldSpeed(f.speed, f.pattern),
    items: f.lure.items.map(named),
    stages: f.stages.map(named),
  };
}

/** A coat may be called what no file can hold. */
const named = <T extends { readonly name: string }>(of: T): T => ({
  ...of,
  name: printable(of.name),
});

/** Choices of ballast side by side, as SVG, each with the lure it makes; or, where there are none, why. */
export const choicesSvg = (
  planned: Floating,
  wish: string,
  choices: readonly { readonly choice: Choice; readonly floating: Floating }[],
  unmet: string | null,
): string =>
  written(
    choicesPicture({
      name: planned.pattern.name,
      version: planned.pattern.version,
      wish,
      unmet,
      choices: choices.map(({ choice, floating }) => ({
        lure: drawnLure(floating),
        verdict: floating.verdict,
        massG: choice.massG,
        spreadG: floating.lure.spreadG,
        attitude: choice.attitude,
        speed: choice.speed && toldSpeed(choice.speed, floating.pattern),
        drilling: choice.holes.map((h, i) => ({
          ...h,
          tipDepthMm: floating.holes[i].tipDepthMm,
          metal: h.weight ?? h.metal,
        })),
        sensitivity: [
          { per: 'timber +10 kg/m³', ...choice.perTimber.per10KgM3 },
          ...choice.perHole.flatMap(({ perDepthMm, perStationMm }, i) => [
            { per: `hole ${i + 1}: 1 mm deeper`, ...perDepthMm },
            { per: `hole ${i + 1}: 1 mm aft`, ...perStationMm },
          ]),
        ],
      })),
    }),
  );

/** A sheet of solids from two sides, as SVG. */
export const solidsSvg = (input: SolidsInput): string => written(solidsPicture(input));

const written = (picture: Picture): string => pictureSvg(checked(picture));

/** The picture itself. @throws Fault when there is anything wrong with it */
export function checked(picture: Picture): Picture {
  const flaws = checkPicture(picture);
  if (flaws.length > 0) throw new Fault(`${picture.title}: ${JSON.stringify(flaws)}`);
  return picture;
}

function drawnLure({ pattern, blank, piece, lure, holes }: Floating): DrawnLure {
  const { shape } = piece.design.body;
  const { weights } = piece.materials;
  return {
    shape,
    cgMm: lure.cgMm,
    lip: drawnLip(pattern, blank),
    eyes: eyePlaces(pattern, shape).map(
      ({ surface, outward, eye }): DrawnEye => ({
        at: add(surface, times(outward, EYE_RADIUS_MM)),
        radiusMm: EYE_RADIUS_MM,
        ring: eye.ring !== null,
        treble: eye.treble !== null,
      }),
    ),
    holes: blank.holes.map((hole, i): DrawnHole => {
      const floorMm = floorOf(hole);
      const { placeMm, axisMm } = bellyIn(piece, hole);
      return {
        ...hole,
        placeMm,
        floorMm,
        bellyMm: Math.max(axisMm, floorMm - holes[i].plugMm),
        metalDiameterMm: hole.weight === null ? null : rowOf(weights, hole.weight).diameterMm,
      };
    }),
  };
}

export const EYE_RADIUS_MM = 2; // a sign for an eye, not its size

export function drawnLip(
  { lip }: Floating['pattern'],
  { slot }: Floating['blank'],
): DrawnLip | null {
  if (!lip || !slot) return null;
  const half = times(quarterLeft(slot.outward), lip.thicknessMm / 2);
  const tip = add(slot.end, times(slot.outward, lip.lengthMm));
  const corners: Point2[] = [
    add(slot.end, times(half, -1)),
    add(tip, times(half, -1)),
    add(tip, half),
    add(slot.end, half),
  ];
  return { widthMm: lip.widthMm, corners, face: drawnFace(lip) };
}

/** A twentieth of the finest line of a picture, mm. */
const CHORD_MM = 0.01;
const HOLE_POINTS = 48;

/** Null for a plain rectangle. */
function drawnFace(lip: Plate): DrawnLip['face'] {
  const hole = lipHole(lip);
  if (lip.cornerRadiusMm === 0 && !lip.tab && !hole) return null;
  const fromMiddle = ([x, y]: Point2): Point2 => [x - lip.widthMm / 2, y];
  return {
    outline: flatten(lipOutline(lip), CHORD_MM).map(fromMiddle),
    hole: hole
      ? circleRing(hole.center, hole.radius, { segments: HOLE_POINTS }).map(fromMiddle)
      : [],
  };
}
