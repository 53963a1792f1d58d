/** A lure in its water as plain data, for `float --json` and the record of a build. */

import type { Floating, FloatingHole } from '../afloat/floating.js';
import { immersedParts } from '../afloat/parts.js';
import { toldSpeed } from '../afloat/told-speed.js';
import { wishSeen } from '../afloat/wish.js';
import type { ChosenHole } from '../ballast/choice.js';
import type { HoleSensitivity, TimberSensitivity } from '../ballast/sensitivities.js';

/** Lengths in mm, masses in g, angles in degrees, in the frame of the lure: x aft, y to port, z up. */
export function floatData(f: Floating): Readonly<Record<string, unknown>> {
  const { pattern, lure, timber, water } = f;
  const immersed = immersedParts(f);
  return {
    name: pattern.name,
    version: pattern.version,
    lengthMm: pattern.lengthMm,
    timber: { name: pattern.timber, ...timber },
    water: { temperatureC: water.temperatureC, salinityPsu: water.salinityPsu },
    waterDensityKgM3: water.densityKgM3,
    volumeMm3: f.piece.design.body.properties.volumeMm3,
    massG: lure.massG,
    spreadG: lure.spreadG,
    cgMm: lure.cgMm,
    inertiaGMm2: lure.inertiaGMm2,
    displacedWholeMm3: f.solid.volumeMm3,
    verdict: f.verdict,
    wish: wishSeen(f),
    speed: toldSpeed(f.speed, pattern),
    items: lure.items,
    stages: f.stages,
    holes: f.holes,
    roundOverMm: f.roundOver.bitMm,
    roundOver: f.roundOver,
    attitudes: f.attitudes.map((a) => ({ ...a, immersed: immersed(a) })),
    righting: f.righting,
    sensitivity: f.slips && sensitivityData(f.holes, f.slips),
  };
}

/** What a slip does: each hole with its station and depth, then timber and, where it is told, water. */
export const sensitivityData = (
  holes: readonly Pick<FloatingHole | ChosenHole, 'stationMm'>[],
  {
    perHole,
    perTimber,
    ...water
  }: {
    readonly perHole: readonly HoleSensitivity[];
    readonly perTimber: TimberSensitivity;
  } & object,
) => ({
  holes: holes.map(({ stationMm }, i) => ({ stationMm, ...perHole[i] })),
  ...perTimber,
  ...water,
});
