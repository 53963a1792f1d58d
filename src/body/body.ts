/** Pattern → body: the smooth definition and what is computed from it. */
import { type Mesh, meshVolume } from '../geometry/mesh.js';
import { monotoneCurve } from '../geometry/monotone.js';
import type { Pattern } from '../pattern/pattern.js';
import { bodyMesh, finenessFor } from './mesh.js';
import { type BodyProperties, bodyProperties } from './properties.js';
import { type BodyShape, offsetSquared } from './shape.js';

export type Body = {
  readonly shape: BodyShape;
  readonly properties: BodyProperties;
  readonly mesh: Mesh;
  /** The same volume in a twentieth of the triangles, to look for rests in the water with. */
  readonly sketch: Mesh;
};

export function bodyShape(pattern: Pattern): BodyShape {
  const { lengthMm, radii, fullness } = pattern;
  const side = { noseRadiusMm: radii.noseMm, tailRadiusMm: radii.tailMm };
  const plan = {
    ...(radii.planNoseMm === null ? {} : { noseRadiusMm: radii.planNoseMm }),
    ...(radii.planTailMm === null ? {} : { tailRadiusMm: radii.planTailMm }),
  };
  const stations = fullness.map((f) => f.stationMm);
  return {
    lengthMm,
    backSquared: offsetSquared(lengthMm, pattern.back, side),
    bellySquared: offsetSquared(lengthMm, pattern.belly, side),
    halfBreadthSquared: offsetSquared(lengthMm, pattern.halfBreadth, plan),
    upperExponent: monotoneCurve(
      stations,
      fullness.map((f) => f.upper),
    ),
    lowerExponent: monotoneCurve(
      stations,
      fullness.map((f) => f.lower),
    ),
  };
}

export function makeBody(shape: BodyShape): Body {
  const properties = bodyProperties(shape);
  const chord = meshTolerance(properties);
  const within = (chordMm: number) =>
    bodyMesh(shape, finenessFor(shape, chordMm), properties.volumeMm3);
  return { shape, properties, mesh: within(chord), sketch: within(SKETCH * chord) };
}

const SKETCH = 20; // chord error of the sketch in those of the mesh

/**
 * Chord error for the mesh, mm, at any size: 0.003 mm for a lure of 100 mm. The part of an ellipsoid
 * under a tilted waterline is then right to 1e-5 of itself from a tenth of the depth on.
 */
const meshTolerance = ({ volumeMm3, areaMm2 }: BodyProperties): number =>
  (7e-4 * volumeMm3) / areaMm2;

/**
 * What a body must hold, by means that building it does not use: the mesh's volume by three fluxes
 * (along x, y and z; equal only for a closed surface), and the integral.
 */
export function checkBody(body: Body): string[] {
  const fluxes = fluxVolumes(body.mesh);
  const spread = Math.max(...fluxes) - Math.min(...fluxes);
  const { volumeMm3 } = body.properties;
  const ratio = meshVolume(body.mesh) / volumeMm3;
  return [
    ...(spread <= 1e-9 * volumeMm3
      ? []
      : [`body mesh: volumes by x, y and z flux differ by ${spread} mm³`]),
    ...(Math.abs(ratio - 1) <= 1e-9 ? [] : [`body mesh: ${ratio} of the integrated volume`]),
  ];
}

function fluxVolumes({ positions, triangles }: Mesh): readonly [number, number, number] {
  const sums: [number, number, number] = [0, 0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const p = [0, 1, 2].map((k) =>
      positions.subarray(3 * triangles[t + k], 3 * triangles[t + k] + 3),
    );
    for (let axis = 0; axis < 3; axis++) {
      const [u, w] = [(axis + 1) % 3, (axis + 2) % 3];
      const doubled =
        (p[1][u] - p[0][u]) * (p[2][w] - p[0][w]) - (p[2][u] - p[0][u]) * (p[1][w] - p[0][w]);
      sums[axis] += (doubled * (p[0][axis] + p[1][axis] + p[2][axis])) / 6;
    }
  }
  return sums;
}
