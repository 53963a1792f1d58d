/** A pattern of a build → its views, as pictures. */
import type { NamedEye, ViewsInput } from '../drawing/views/input.js';
import { pathPoints } from '../geometry/arcpath.js';
import { add, sub, times } from '../geometry/vec.js';
import { type EyePlace, eyePlaces, screwEye } from '../mass/eyes.js';
import type { Product } from '../pipeline.js';
import { drawnLip, EYE_RADIUS_MM } from './pictures.js';

/** What of the views is not in the product: the hash of its pattern file, the program's name and version, the paper. */
export type Stamp = Pick<ViewsInput, 'hash' | 'tool' | 'inches' | 'sheet'>;

const WIRE_CHORD_MM = 0.02; // far under the finest line of a picture

export function viewsInput(
  { pattern, blank, body, floating, wire }: Product,
  stamp: Stamp,
): ViewsInput {
  const [attitude] = floating.attitudes;
  const { temperatureC, salinityPsu, densityKgM3 } = floating.water;
  return {
    ...stamp,
    name: blank.name,
    version: blank.version,
    note: pattern.note,
    pattern,
    shape: body.shape,
    properties: body.properties,
    blank,
    lip: drawnLip(pattern, blank),
    eyes: eyePlaces(pattern, body.shape).map((place) => namedEye(place, floating)),
    wire: wire && pathPoints(wire.path, WIRE_CHORD_MM),
    roundOverMm: floating.roundOver.bitMm,
    timberDensityKgM3: floating.timber.densityKgM3,
    float: {
      verdict: floating.verdict,
      massG: floating.lure.massG,
      trimDeg: attitude.trimDeg,
      freeboard:
        attitude.dryRatio > 0
          ? { noseMm: attitude.freeboardNoseMm, tailMm: attitude.freeboardTailMm }
          : null,
      water: { temperatureC, salinityPsu, densityKgM3 },
    },
  };
}

function namedEye(
  { name, eye, surface, outward }: EyePlace,
  { piece: { materials } }: Product['floating'],
): NamedEye {
  const { ring, treble, kind } = eye;
  const isScrew = kind === 'screw';
  return {
    name: name === 'tow' || name === 'tail' ? `${name} eye` : name,
    at: add(surface, times(outward, EYE_RADIUS_MM)),
    radiusMm: EYE_RADIUS_MM,
    ring: ring !== null,
    treble: treble !== null,
    surface,
    shankTip: isScrew
      ? sub(surface, times(outward, screwEye(materials, eye.screwEye).shankMm))
      : null,
    parts: [isScrew ? eye.screwEye : 'wire loop', ring, treble].filter((p) => p !== null),
  };
}
