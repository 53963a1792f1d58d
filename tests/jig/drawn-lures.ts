/** Lures drawn by chance, from 40 to 250 mm, with everything that a drill-stop jig serves. */
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { seededDraws } from '../../src/geometry/random.js';
import type { JigWork } from '../../src/jig/jig.js';
import { resolvePattern } from '../../src/pattern/pattern.js';
import { type PatternFile, patternSchema } from '../../src/pattern/schema.js';
import { MATERIALS } from '../mass/lures.js';

export type DrawnLure = Omit<JigWork, 'blank'> & {
  /** Null when the drawn pattern is not a valid one. */
  readonly blank: JigWork['blank'] | null;
};

export function workOf(file: Partial<PatternFile> & Record<string, unknown>): DrawnLure {
  const pattern = resolvePattern(patternSchema.parse(file));
  const shape = bodyShape(pattern);
  return {
    pattern,
    body: makeBody(shape),
    materials: MATERIALS,
    shapedCgMm: [0, 0, 0], // not asked for by what is drilled
    blank: makeBlank(pattern, shape).blank,
  };
}

const STATIONS = [0.05, 0.16, 0.32, 0.5, 0.7, 0.86, 0.95];
const EYES = ['screw-eye-small', 'screw-eye', 'screw-eye-long', 'screw-eye-large'];

export function drawnLure(seed: number): DrawnLure {
  const draw = seededDraws(seed);
  const between = (a: number, b: number) => a + (b - a) * draw();
  const pick = <T>(items: readonly T[]): T => items[Math.floor(draw() * items.length)];
  const lengthMm = 40 * (250 / 40) ** draw();
  const [back, belly, wide] = [between(0.08, 0.19), between(0.08, 0.2), between(0.06, 0.1)];
  const full = (x: number) => Math.sqrt(x / 0.4) * ((1 - x) / 0.6) ** 0.75;
  const breadthMm = 2 * wide * lengthMm;
  const isWire = draw() < 0.4;
  const eye = () => (isWire ? { kind: 'wire' } : { kind: 'screw', screwEye: pick(EYES) });
  const ballastAt = between(0.25, 0.45);
  const diameterMm = Math.max(2, Math.min(12, Math.round(breadthMm - 6)));
  const second = draw() < 0.4 ? [ballastAt + 0.22] : [];
  return workOf({
    schema: 1,
    kind: 'pattern',
    name: `drawn-${seed}`,
    version: '1.0',
    body: {
      lengthMm,
      noseRadiusMm: 0.04 * lengthMm,
      tailRadiusMm: 0.02 * lengthMm,
      offsets: STATIONS.map((x) => ({
        stationRatio: x,
        backMm: back * lengthMm * full(x),
        bellyMm: belly * lengthMm * full(x),
        halfBreadthMm: wide * lengthMm * full(x),
      })),
      fullness: [{ stationRatio: 0, upperExponent: 2.3, lowerExponent: 2.3 }],
    },
    ballast: [ballastAt, ...second].map((stationRatio) => ({
      stationRatio,
      diameterMm,
      depthMm: between(0.5, 1) * belly * lengthMm,
      pointAngleDeg: pick([118, 135, 180]),
      metal: 'lead',
    })),
    towEye: { ...eye(), heightMm: between(-0.02, 0.02) * lengthMm },
    tailEye: draw() < 0.8 ? { ...eye() } : undefined,
    hangers: [{ ...eye(), stationRatio: ballastAt + between(0.1, 0.18) }],
    throughWire: isWire ? { diameterMm: 1.2, boreMm: 2 } : undefined,
    timber: 'western-redcedar',
    sandingAllowanceMm: 1.5,
    blockThicknessMm: breadthMm + between(1, 6),
    coats: [],
  } as never);
}
