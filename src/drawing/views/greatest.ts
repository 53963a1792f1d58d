/** Where a body is highest, broadest and fullest. */
import { halves } from '../../body/properties.js';
import { halfSectionMoments } from '../../body/section.js';
import { type BodyShape, knotsOf, offsetAt } from '../../body/shape.js';

export type Greatest = { readonly stationMm: number; readonly mm: number };

export type Greatests = {
  /** Back over belly at one station. */
  readonly height: Greatest;
  /** From side to side. */
  readonly breadth: Greatest;
  /** Of the section of greatest area; mm² in `mm2`. */
  readonly section: { readonly stationMm: number; readonly mm2: number };
};

export function greatests(shape: BodyShape): Greatests {
  const heightMm = (x: number) => offsetAt(shape.backSquared, x) + offsetAt(shape.bellySquared, x);
  const breadthMm = (x: number) => 2 * offsetAt(shape.halfBreadthSquared, x);
  const areaMm2 = (x: number) =>
    halves(shape, x).reduce((sum, half) => sum + halfSectionMoments(half).area, 0);
  const at = (of: (x: number) => number): Greatest => {
    const stationMm = peak(of, knotsOf(shape));
    return { stationMm, mm: of(stationMm) };
  };
  const section = at(areaMm2);
  return {
    height: at(heightMm),
    breadth: at(breadthMm),
    section: { stationMm: section.stationMm, mm2: section.mm },
  };
}

/** Looks between two neighboring knots. */
const LOOKS = 8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 40; // shrinks the last look by 4e-9

/** The first of the highest among the looks, refined between its neighbors; a knot that is as high is taken as it is. */
function peak(of: (x: number) => number, knots: readonly number[]): number {
  const looks = knots.flatMap((x, i) =>
    i === 0
      ? [x]
      : Array.from(
          { length: LOOKS },
          (_, k) => knots[i - 1] + ((x - knots[i - 1]) * (k + 1)) / LOOKS,
        ),
  );
  const best = looks.reduce((b, x, i) => (of(x) > of(looks[b]) ? i : b), 0);
  let [a, b] = [looks[Math.max(0, best - 1)], looks[Math.min(looks.length - 1, best + 1)]];
  for (let i = 0; i < STEPS; i++) {
    const [p, q] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
    if (of(p) >= of(q)) b = q;
    else a = p;
  }
  const refined = (a + b) / 2;
  return of(refined) > of(looks[best]) * (1 + 1e-12) ? refined : looks[best];
}
