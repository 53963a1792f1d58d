/** Patterns drawn by chance: every proportion, lip, drilling and rigging a maker might ask for. */
import { seededDraws } from '../geometry/random.js';
import { type PatternFile, patternSchema } from '../pattern/schema.js';
import type { Draw } from './drawn-outline.js';

/** Odd, and far from a power of two: neighboring seeds do not share cases. */
const SEED_STEP = 1_000_003;
/** Far from every other case: leaning holes and twists have draws of their own. */
const LEANING = 1_500_000_001;

/**
 * The pattern file with this number; every one can be drawn by itself. It keeps the schema; whether
 * it can be made in wood, the design rules tell.
 */
export function drawnPattern(seed: number, index: number): PatternFile {
  const draw = seededDraws(seed * SEED_STEP + index);
  const lean = seededDraws(seed * SEED_STEP + index + LEANING);
  const between = (low: number, high: number) => low + (high - low) * draw();
  const tenths = (low: number, high: number) => Math.round(10 * between(low, high)) / 10;
  const lengthMm = Math.round(between(40, 250));
  const slender = between(0.07, 0.17);
  const back = lengthMm * slender * between(0.8, 1.1);
  const belly = lengthMm * slender * between(0.8, 1.3);
  const breadth = lengthMm * slender * between(0.55, 0.95);
  const wire = draw() < 0.4;
  const allowance = tenths(0.5, 2.5);
  const kind = wire ? 'wire' : 'screw';
  const file = {
    schema: 1,
    kind: 'pattern',
    name: `drawn-${index}`,
    version: '1.0',
    body: {
      lengthMm,
      noseRadiusMm: round3(lengthMm * slender * between(0.15, 0.45)),
      tailRadiusMm: round3(lengthMm * slender * between(0.06, 0.2)),
      offsets: offsets(draw, { back, belly, breadth }),
      fullness: [
        { stationRatio: 0.15, upperExponent: tenths(1.8, 3), lowerExponent: tenths(1.8, 3) },
        { stationRatio: 0.5, upperExponent: tenths(1.8, 4), lowerExponent: tenths(1.8, 4) },
      ],
    },
    ...(draw() < 0.75 ? { lip: lip(draw, lengthMm, breadth) } : {}),
    ballast: leaning(lean, holes(draw, { lengthMm, belly, breadth, allowance })),
    ...(draw() < 0.9 ? { towEye: { kind, heightMm: tenths(-0.15 * belly, 0.15 * back) } } : {}),
    hangers: hangers(draw, kind),
    ...(draw() < 0.85 ? { tailEye: { kind, heightMm: 0 } } : {}),
    ...(wire ? { throughWire: throughWire(lean) } : {}),
    timber: draw() < 0.5 ? 'western-redcedar' : 'american-basswood',
    sandingAllowanceMm: allowance,
    blockThicknessMm: Math.ceil(2 * breadth + between(0, 4)),
    coats: [{ name: 'epoxy', thicknessMm: 0.15, count: 2 }],
  };
  return patternSchema.parse(file);
}

const round3 = (mm: number): number => Math.round(1000 * mm) / 1000;

const STATIONS = [0.06, 0.2, 0.4, 0.62, 0.8, 0.93] as const;

/** Full between the shoulders, fine toward the tail; now and then a belly that is hollow behind. */
function offsets(draw: Draw, most: { back: number; belly: number; breadth: number }) {
  const fullest = 0.25 + 0.3 * draw();
  const fine = 0.5 + 0.6 * draw();
  const hollow = draw() < 0.2 ? 0.2 + 0.3 * draw() : 0;
  return STATIONS.map((stationRatio) => {
    const t = stationRatio < fullest ? stationRatio / fullest : (1 - stationRatio) / (1 - fullest);
    const share = Math.sqrt(t * (2 - t)) ** (stationRatio < fullest ? 1 : 2 * fine);
    const dent = stationRatio === 0.62 ? 1 - hollow : 1;
    return {
      stationRatio,
      backMm: round3(most.back * share),
      bellyMm: round3(most.belly * share * dent),
      halfBreadthMm: round3(most.breadth * share),
    };
  });
}

function lip(draw: Draw, lengthMm: number, breadth: number) {
  const depthMm = round3(lengthMm * (0.04 + 0.07 * draw()));
  const thicknessMm = [1, 1.5, 2, 3][Math.floor(4 * draw())];
  return {
    widthMm: round3(breadth * (1.5 + draw())),
    lengthMm: round3(depthMm + lengthMm * (0.1 + 0.25 * draw())),
    thicknessMm,
    angleDeg: Math.round(90 * draw()),
    slot: { stationRatio: round3(0.03 + 0.12 * draw()), depthMm },
  };
}

type Wood = { lengthMm: number; belly: number; breadth: number; allowance: number };

function holes(draw: Draw, { lengthMm, belly, breadth, allowance }: Wood) {
  const count = Math.floor(3.5 * draw());
  return Array.from({ length: count }, (_, i) => {
    const widest = Math.min(16, 1.3 * breadth);
    const diameterMm = Math.max(2, Math.round(widest * (0.4 + 0.6 * draw())));
    const stationRatio = round3(0.28 + (0.4 * (i + 0.2 + 0.6 * draw())) / Math.max(1, count));
    const depthMm = round3(allowance + belly * (0.4 + 0.8 * draw()));
    return {
      stationRatio,
      diameterMm,
      depthMm: Math.min(depthMm, lengthMm),
      pointAngleDeg: draw() < 0.5 ? 118 : 135,
      metal: draw() < 0.7 ? 'lead' : 'tin',
    };
  });
}

/** One hole in four leans. */
const leaning = (draw: Draw, upright: ReturnType<typeof holes>) =>
  upright.map((hole) => {
    const [leans, tilt] = [draw() < 0.25, draw()];
    return leans ? { ...hole, tiltDeg: Math.round(60 * tilt - 30) } : hole;
  });

/** Half of the eyes twisted, for which the bore has to be wide. */
function throughWire(draw: Draw) {
  const twistTurns = draw() < 0.5 ? 0 : 1 + Math.floor(4 * draw());
  return { diameterMm: 1.2, boreMm: twistTurns > 0 ? 4 : 2, twistTurns };
}

function hangers(draw: Draw, kind: string) {
  return Array.from({ length: Math.floor(2.4 * draw()) }, (_, i) => ({
    stationRatio: round3(0.4 + 0.3 * i + 0.15 * draw()),
    kind,
  }));
}
