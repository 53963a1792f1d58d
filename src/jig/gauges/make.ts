/**
 * Printed gauges: plates that lie on the bed with their lettered face up. The negative is taken from
 * the finished body grown by the seat's gap.
 *
 * Jig coordinates of a section gauge: X outward from the center plane, Y up, Z out of the lettered
 * face, which stands at the station. A plate that lies aft of its station is made for the starboard
 * side, one that lies fore of it for port, so that all look alike.
 */

import { profilePath } from '../../blank/profile.js';
import { halves } from '../../body/properties.js';
import type { BodyShape } from '../../body/shape.js';
import { type Gauges, makeGauges } from '../../gauge/gauges.js';
import { onStretch, type ProfileGauge, type Stretch, stretchesOf } from '../../gauge/profile.js';
import { type SectionGauge, sectionCurve } from '../../gauge/section.js';
import { flatten, pathOf, pathPoints } from '../../geometry/arcpath.js';
import { asRegion, intersect, offset, subtract, union } from '../../geometry/clip.js';
import { convexHull } from '../../geometry/convex.js';
import { meshBox, meshCrossings, meshVolume } from '../../geometry/mesh.js';
import {
  areaOf,
  insideRing,
  type Region,
  type Ring,
  rectRing,
  regionArea,
  ring,
  ringBox,
} from '../../geometry/ring.js';
import { distanceToEdge, type Point2 } from '../../geometry/vec.js';
import { Fault } from '../../problem.js';
import { type Csg, extruded, movedBy, OVERSHOOT } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement, translation } from '../../solid/placement.js';
import type { Jig, JigOutcome, JigWork } from '../jig.js';
import type { JigSet } from '../kind.js';
import { grooves } from '../letters.js';
import { bedOf } from '../setup.js';
import type { GaugeJig, ProfileGaugeJig, SectionGaugeJig } from './jig.js';
import { type Lying, plateLetters, tickGrooves } from './letters.js';
import type { GaugesSetup } from './setup.js';

const CHORD_MM = 0.005; // of edges as polygons: a tenth of the seat's gap

type Work = Pick<JigWork, 'body' | 'blank'>;

export function gaugeJigs(
  kernel: SolidKernel,
  { body, blank }: Work,
  { setup, printer }: JigSet<GaugesSetup>,
): JigOutcome<GaugeJig> {
  const leastMm = printer.nozzleMm + setup.letters.depthMm;
  const { thicknessMm } = setup;
  if (thicknessMm < leastMm) {
    const facts = { thicknessMm, leastMm, nozzleMm: printer.nozzleMm };
    return { jigs: [], problems: [{ code: 'gauge-plate-thin', path: [], facts }] };
  }
  const { gauges, outside } = makeGauges(body.shape, blank, setup);
  if (!gauges) {
    const problems = outside.map((facts) => ({ code: 'gauge-station-outside' as const, facts }));
    return { jigs: [], problems };
  }
  const { xMm, yMm } = bedOf(setup, printer);
  const given = { kernel, body, pattern: blank.name, setup };
  return { jigs: allJigs(given, gauges, Math.max(xMm, yMm)), problems: [] };
}

type Body = JigWork['body'];

type Given = {
  readonly kernel: SolidKernel;
  readonly body: Body;
  readonly pattern: string;
  readonly setup: GaugesSetup;
};

function allJigs(given: Given, { sections, profiles }: Gauges, longestMm: number): GaugeJig[] {
  const { body, setup } = given;
  const { endMm, overlapMm } = setup;
  const stretches = stretchesOf(body.shape.lengthMm, endMm, { longestMm, overlapMm });
  return [
    ...sections.map((gauge) => sectionJig(given, gauge)),
    ...profiles.flatMap((gauge) =>
      stretches.map((stretch, i) => {
        const piece = stretches.length > 1 ? `-${i + 1}` : '';
        return profileJig(given, gauge, stretch, `${gauge.side}${piece}`);
      }),
    ),
  ];
}

function sectionJig({ kernel, body, pattern, setup }: Given, gauge: SectionGauge): SectionGaugeJig {
  const { shape } = body;
  const { stationMm, lies, number } = gauge;
  const { thicknessMm, edgeMm, seatClearanceMm: seatMm } = setup;
  const plate = asRegion(flatten(gauge.outline.path, CHORD_MM));
  const behind = lies === 'fore' ? -1 : 1;
  const within = (depthMm: number) => {
    const stations = Array.from(
      { length: SLICES + 1 },
      (_, i) => stationMm + (behind * depthMm * i) / SLICES,
    );
    return stations.filter((x) => x > 0 && x < shape.lengthMm);
  };
  const atEdge = sectionsOf(body, within(edgeMm));
  const edge = grownBy(atEdge, seatMm);
  const whole = grownBy(sectionsOf(body, within(thicknessMm)), seatMm);
  const region = single(subtract([plate], edge));
  // Polygons that went through booleans lie on their grid.
  const [, bottomMm] = ringBox(region.outer);
  const step =
    areaOf(subtract(intersect(whole, [plate]), edge)) > LEAST_STEP && edgeMm < thicknessMm;
  const lying: Lying = { plate: gauge, corner: [0, bottomMm], thicknessMm };
  const up = movedBy.bind(null, translation(0, -bottomMm, 0));
  const [y, z]: [Jig['freeDirection'] & object, Jig['freeDirection'] & object] =
    lies === 'fore'
      ? [
          [0, 1, 0],
          [1, 0, 0],
        ]
      : [
          [0, -1, 0],
          [-1, 0, 0],
        ];
  const at = placement(y, [0, 0, 1], z, [stationMm + behind * thicknessMm, 0, bottomMm]);
  return {
    ...printedPlate(kernel, {
      body: up(extruded([region], 0, thicknessMm)),
      cutters: step ? [up(extruded(whole, -OVERSHOOT, thicknessMm - edgeMm))] : [],
      lying,
      setup,
      thinnestMm: step ? edgeMm : thicknessMm,
    }),
    kind: 'section-gauge',
    pattern,
    part: String(number),
    jigToBlank: at,
    freeDirection: [0, -y[1] + 0, 0],
    number,
    stationMm,
    reason: gauge.reason,
    halfBreadthMm: gauge.halfBreadthMm,
    backMm: gauge.backMm,
    bellyMm: gauge.bellyMm,
    lies,
    fullerMm: fuller(shape, stationMm, atEdge),
  };
}

const LEAST_STEP = 0.02; // mm²: a step any narrower lies within the seat's gap
const SLICES = 3; // sections looked at through the thickness of a plate

/** The sections at these stations: of the smooth body and of its mesh, which stands a little outside it. */
function sectionsOf({ shape, mesh }: Body, stations: readonly number[]): Ring[] {
  return stations.map((x) => {
    const [upper, lower] = halves(shape, x);
    const smooth = pathPoints(pathOf(sectionCurve(upper, lower), false), CHORD_MM);
    const port = [...smooth, ...meshCrossings(mesh, 0, x).map(([, y, z]): Point2 => [y, z])];
    // Superellipse halves of one breadth are convex together.
    return convexHull([...port, ...port.map(([y, z]): Point2 => [-y, z])]);
  });
}

/** The room a plate must leave for all these sections. */
const grownBy = (sections: readonly Ring[], seatMm: number): Region[] =>
  offset(union(sections.map(asRegion)), seatMm);

/** How far the sections stand out of the smooth one at a station. */
function fuller(shape: BodyShape, stationMm: number, sections: readonly Ring[]): number {
  const [upper, lower] = halves(shape, stationMm);
  const curve = pathPoints(pathOf(sectionCurve(upper, lower), false), CHORD_MM);
  const smooth = ring([...curve, ...curve.map(([y, z]): Point2 => [-y, z]).reverse()]);
  const outside = sections.flat().filter((p) => !insideRing(p, smooth));
  return outside.reduce((most, p) => Math.max(most, distanceToEdge(p, smooth)), 0);
}

/** Jig coordinates of a profile gauge: X aft, Y up, Z to starboard, half the plate on either side of the center plane. */
function profileJig(
  { kernel, body: { shape }, pattern, setup }: Given,
  gauge: ProfileGauge,
  stretch: Stretch,
  part: string,
): ProfileGaugeJig {
  const { thicknessMm, seatClearanceMm: seatMm } = setup;
  const ring = flatten(gauge.outline.path, CHORD_MM);
  const body = offset([asRegion(flatten(profilePath(shape), CHORD_MM))], seatMm);
  const { fromMm, toMm } = stretch;
  const [, low, , high] = ringBox(ring);
  const here = asRegion(rectRing(fromMm, low, toMm, high));
  const region = single(intersect(subtract([asRegion(ring)], body), [here]));
  const [leftMm, bottomMm] = ringBox(region.outer);
  const plate = onStretch(gauge, stretch);
  return {
    ...printedPlate(kernel, {
      body: movedBy(translation(-leftMm, -bottomMm, 0), extruded([region], 0, thicknessMm)),
      cutters: [],
      lying: { plate, corner: [leftMm, bottomMm], thicknessMm },
      setup,
      thinnestMm: thicknessMm,
    }),
    kind: 'profile-gauge',
    pattern,
    part,
    jigToBlank: placement([1, 0, 0], [0, 0, 1], [0, -1, 0], [leftMm, thicknessMm / 2, bottomMm]),
    freeDirection: [0, 0, gauge.side === 'back' ? -1 : 1],
    side: gauge.side,
    interruptedMm: gauge.interruptedMm,
    ...stretch,
    stationsMm: plate.ticks.map(([[x]]) => x),
  };
}

const CRUMB_MM2 = 0.01; // what is left between two outlines that run together, and no plate

function single(regions: readonly Region[]): Region {
  const pieces = regions.filter((r) => regionArea(r) > CRUMB_MM2);
  if (pieces.length !== 1) throw new Fault(`gauge in ${pieces.length} pieces`);
  return pieces[0];
}

type PlateSolid = {
  readonly body: Csg;
  readonly cutters: readonly Csg[];
  readonly lying: Lying;
  readonly setup: GaugesSetup;
  readonly thinnestMm: number;
};

const WORDS = [
  'Hold the numbered plate against the body at its station, the notch on the datum line; light shows where wood is missing, a rub where it is to come off.',
  'Profile gauges lie along the centerline of back and belly.',
  'They gauge bare wood: sealer and coats come on top.',
];

/** What the solids of all gauges have alike. */
function printedPlate(
  kernel: SolidKernel,
  { body, cutters, lying, setup, thinnestMm }: PlateSolid,
): Omit<Jig, 'kind' | 'pattern' | 'part' | 'jigToBlank' | 'freeDirection'> {
  const { letters } = setup;
  const { sunk, leftOut } = plateLetters(lying, letters);
  const parts = [...grooves(sunk, letters), ...tickGrooves(lying, letters), ...cutters];
  const csg: Csg = parts.length > 0 ? { kind: 'subtract', from: body, parts } : body;
  const mesh = evaluate(kernel, csg);
  return {
    csg,
    mesh,
    workpiece: 'shaped',
    // Behind its edge a plate stands off as far as the body thins or bends over the plate's thickness.
    fit: {
      gapMm: [setup.seatClearanceMm / 2, setup.seatClearanceMm + setup.thicknessMm],
      playMm: [],
      pressed: [],
      tools: [],
    },
    seatMm: setup.seatClearanceMm,
    // Ticks take their depth too, where there is no letter to say so.
    leastWallMm: thinnestMm - (sunk.length === 0 ? letters.depthMm : 0),
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: 0,
    keepWholeMm: [],
    letters: sunk,
    lettersLeftOut: leftOut,
    words: WORDS,
  };
}
