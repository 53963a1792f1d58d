/** The lip plate along its length: how wide it is, what its hole takes, and what that amounts to. */
import type { Plate } from '../blank/lip-outline.js';
import { UNIT_RULE } from '../geometry/quadrature.js';

/** A stretch of one half of the plate: as wide as `baseMm`, with an arc on it or taken from it. */
type Band = {
  readonly fromMm: number;
  readonly toMm: number;
  readonly baseMm: number;
  /** Center and radius of the arc along the plate; +1 adds its height to the base, −1 takes it off. */
  readonly arc: { readonly atMm: number; readonly radiusMm: number; readonly sign: 1 | -1 } | null;
};

/** A plate and its hole, by ways from the inner end. */
export type PlateBands = { readonly bands: readonly Band[]; readonly hole: readonly Band[] };

export function plateBands(plate: Plate): PlateBands {
  const { widthMm, lengthMm, slotDepthMm, cornerRadiusMm: r, tab, eyeHole } = plate;
  const side = widthMm / 2;
  const inner: Band[] = tab ? tabBands(tab, slotDepthMm) : [];
  const tipMm = lengthMm - r;
  const bands: Band[] = [
    ...inner,
    { fromMm: tab ? slotDepthMm : 0, toMm: tipMm, baseMm: side, arc: null },
    {
      fromMm: tipMm,
      toMm: lengthMm,
      baseMm: side - r,
      arc: { atMm: tipMm, radiusMm: r, sign: 1 },
    },
  ];
  const hole: Band[] = eyeHole
    ? [disk(slotDepthMm + eyeHole.forwardMm, eyeHole.diameterMm / 2)]
    : [];
  return { bands: bands.filter((b) => b.toMm > b.fromMm), hole };
}

function tabBands(
  { widthMm, insideRadiusMm: f }: NonNullable<Plate['tab']>,
  depthMm: number,
): Band[] {
  const half = widthMm / 2;
  const arc = { atMm: depthMm - f, radiusMm: f, sign: -1 } as const;
  return [
    { fromMm: 0, toMm: depthMm - f, baseMm: half, arc: null },
    { fromMm: depthMm - f, toMm: depthMm, baseMm: half + f, arc },
  ];
}

const disk = (atMm: number, radiusMm: number): Band => ({
  fromMm: atMm - radiusMm,
  toMm: atMm + radiusMm,
  baseMm: 0,
  arc: { atMm, radiusMm, sign: 1 },
});

/** True for a rectangle without a hole. */
export const isPlain = ({ bands, hole }: PlateBands): boolean =>
  bands.length === 1 && bands[0].arc === null && hole.length === 0;

/** Half the width that bands have at a place; 0 beyond them. */
export function halfWidthAt(bands: readonly Band[], alongMm: number): number {
  const band = bands.find((b) => b.fromMm <= alongMm && alongMm <= b.toMm);
  if (!band) return 0;
  const { baseMm, arc } = band;
  if (!arc) return baseMm;
  return baseMm + arc.sign * Math.sqrt(Math.max(0, arc.radiusMm ** 2 - (alongMm - arc.atMm) ** 2));
}

/** Mean of that from one place to another, both within one band or outside all; exact. */
export function meanHalfMm(bands: readonly Band[], fromMm: number, toMm: number): number {
  const middle = (fromMm + toMm) / 2;
  const band = bands.find((b) => b.fromMm <= middle && middle <= b.toMm);
  if (!band) return 0;
  const { baseMm, arc } = band;
  if (!arc) return baseMm;
  const areaTo = (x: number) => {
    const [r, way] = [arc.radiusMm, x - arc.atMm];
    const share = Math.min(1, Math.max(-1, way / r));
    return (r * r * (share * Math.sqrt(1 - share * share) + Math.asin(share))) / 2;
  };
  return baseMm + (arc.sign * (areaTo(toMm) - areaTo(fromMm))) / (toMm - fromMm);
}

const SLICES = 16; // to half a turn of an arc

/** Where boxes along the plate have to end for each to be within one band, and arcs in short slices. */
export const stopsOf = ({ bands, hole }: PlateBands): number[] =>
  [...bands, ...hole]
    .flatMap(({ fromMm, toMm, arc }) => [
      fromMm,
      toMm,
      ...(arc
        ? Array.from(
            { length: SLICES - 1 },
            (_, i) => arc.atMm + arc.radiusMm * Math.sin(Math.PI * ((i + 1) / SLICES - 0.5)),
          ).filter((s) => s > fromMm && s < toMm)
        : []),
    ])
    .sort((a, b) => a - b);

/** Sums over the face of a plate: area, and moments along it from the inner end and across from the middle. */
export type FaceSums = {
  readonly area: number;
  readonly along: number;
  readonly alongSquared: number;
  readonly acrossSquared: number;
};

/** The face less its hole. Along arcs the points go by the angle, where all is smooth: exact to rounding. */
export function faceSums({ bands, hole }: PlateBands): FaceSums {
  const sum = { area: 0, along: 0, alongSquared: 0, acrossSquared: 0 };
  const signed = [...bands.map((b) => [1, b] as const), ...hole.map((b) => [-1, b] as const)];
  for (const [sign, band] of signed) {
    for (const { s, weight } of pointsOf(band)) {
      const half = halfWidthAt([band], s);
      const strip = sign * weight * 2 * half;
      sum.area += strip;
      sum.along += strip * s;
      sum.alongSquared += strip * s * s;
      sum.acrossSquared += (strip * half * half) / 3;
    }
  }
  return sum;
}

function pointsOf({ fromMm, toMm, arc }: Band): { readonly s: number; readonly weight: number }[] {
  if (!arc)
    return UNIT_RULE.map(({ t, weight }) => ({
      s: fromMm + (toMm - fromMm) * t,
      weight: weight * (toMm - fromMm),
    }));
  const angle = (s: number) => Math.asin(Math.min(1, Math.max(-1, (s - arc.atMm) / arc.radiusMm)));
  const [a, b] = [angle(fromMm), angle(toMm)];
  return UNIT_RULE.map(({ t, weight }) => {
    const theta = a + (b - a) * t;
    return {
      s: Math.min(toMm, Math.max(fromMm, arc.atMm + arc.radiusMm * Math.sin(theta))),
      weight: weight * (b - a) * arc.radiusMm * Math.cos(theta),
    };
  });
}
