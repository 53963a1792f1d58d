/** Lures drawn by chance: slender and deep, round and slab-sided, with and without lip, 40 to 250 mm. */
import type { PatternFile } from '../../src/pattern/schema.js';

export function anyLure(random: () => number): Partial<PatternFile> {
  const between = (low: number, high: number) => low + (high - low) * random();
  const lengthMm = between(40, 250);
  const side = (most: number) => {
    const top = between(0.25, 0.6);
    const shape = between(0.8, 1.6);
    return (s: number) => {
      const way = s < top ? top : 1 - top;
      return most * Math.sqrt(1 - (0.97 * Math.abs(s - top)) / way) ** shape;
    };
  };
  const [back, belly, breadth] = [0.04, 0.05, 0.04].map((low) =>
    side(lengthMm * between(low, 0.16)),
  );
  const stations = [0.05, 0.14, 0.27, 0.4, 0.55, 0.7, 0.84, 0.95];
  const exponent = () => (random() < 0.2 ? 1 : between(1, 12));
  const depthMm = between(0.04, 0.12) * lengthMm;
  return {
    body: {
      lengthMm,
      noseRadiusMm: 0.012 * lengthMm,
      tailRadiusMm: 0.006 * lengthMm,
      offsets: stations.map((s) => ({
        stationRatio: s,
        backMm: back(s),
        bellyMm: belly(s),
        halfBreadthMm: breadth(s),
      })),
      fullness: [
        { stationRatio: 0.1, upperExponent: exponent(), lowerExponent: exponent() },
        { stationRatio: 0.6, upperExponent: exponent(), lowerExponent: exponent() },
      ],
    },
    ballast: [],
    hangers: random() < 0.5 ? [] : [{ stationRatio: between(0.3, 0.7), kind: 'screw' }],
    towEye: undefined,
    tailEye: undefined,
    blockThicknessMm: Math.ceil(2 * breadth(0.4) + 0.15 * lengthMm),
    lip:
      random() < 0.4
        ? undefined
        : {
            widthMm: 16,
            lengthMm: depthMm + 15,
            thicknessMm: 1,
            material: 'polycarbonate',
            angleDeg: between(0, 90),
            cornerRadiusMm: 0,
            slot: { stationRatio: between(0.05, 0.2), depthMm, fitMm: 0.1 },
          },
  };
}
