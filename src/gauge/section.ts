/**
 * Section gauges: plates with the negative of the finished half section. A plate goes on from the
 * side until its two reference edges, which lie in the center plane above the back and under the
 * belly, come to the centerline drawn on the blank; turned over it serves the other side. It gauges
 * bare shaped wood: no coat is allowed for.
 *
 * A plate has a thickness, so its lettered face stands at the station and the plate lies on the side
 * where the body is thinner.
 */
import { nominal } from '../blank/nominal.js';
import { ARC_FIT_MM } from '../blank/profile.js';
import { halves } from '../body/properties.js';
import { type HalfSection, halfSectionMoments } from '../body/section.js';
import type { BodyShape } from '../body/shape.js';
import { pathOf, type Segment } from '../geometry/arcpath.js';
import { arcsAlong, type SmoothCurve } from '../geometry/biarc.js';
import type { Point2 } from '../geometry/vec.js';
import {
  broken,
  lines,
  NOTCH_MM,
  type Plate,
  type PlateName,
  type PlateSizes,
  TICK_MM,
  titleWords,
} from './plate.js';
import type { GaugeStation } from './stations.js';

/** Frame of the plate: x outward from the center plane, y = z of the lure. */
export type SectionGauge = Plate & {
  /** Counts from 1 at the nose. */
  readonly number: number;
  readonly stationMm: number;
  readonly reason: GaugeStation['reason'];
  readonly halfBreadthMm: number;
  readonly backMm: number;
  readonly bellyMm: number;
  /** Where the plate lies, seen from its station. */
  readonly lies: 'fore' | 'aft';
};

/** All plates have the same size, so that a set stacks and its datum notches line up. */
export function sectionGauges(
  shape: BodyShape,
  stations: readonly GaugeStation[],
  sizes: PlateSizes,
  name: PlateName,
): readonly SectionGauge[] {
  const at = stations.map(({ stationMm }) => halves(shape, stationMm));
  const most = (of: (h: (typeof at)[number]) => number) => Math.max(0, ...at.map(of));
  const frame: Frame = {
    widthMm: most(([upper]) => upper.b) + sizes.spineMm,
    topMm: most(([upper]) => upper.h) + sizes.rimMm,
    bottomMm: -most(([, lower]) => lower.h) - sizes.rimMm,
    spineMm: sizes.spineMm,
  };
  return stations.map(({ stationMm, reason }, i): SectionGauge => {
    const [upper, lower] = at[i];
    return {
      ...plateOf(upper, lower, frame),
      texts: textsOf(i + 1, stationMm, name, frame),
      number: i + 1,
      stationMm,
      reason,
      halfBreadthMm: upper.b,
      backMm: upper.h,
      bellyMm: lower.h,
      lies: growsAft(shape, stationMm) ? 'fore' : 'aft',
    };
  });
}

type Frame = {
  readonly widthMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
  readonly spineMm: number;
};

function plateOf(
  upper: HalfSection,
  lower: HalfSection,
  { widthMm, topMm, bottomMm }: Frame,
): Omit<Plate, 'texts'> {
  const rest = lines([
    [0, -lower.h],
    [0, bottomMm],
    [widthMm, bottomMm],
    [widthMm, -NOTCH_MM],
    [widthMm - NOTCH_MM, 0],
    [widthMm, NOTCH_MM],
    [widthMm, topMm],
    [0, topMm],
    [0, upper.h],
  ]);
  const outline = pathOf([...rest, ...sectionCurve(upper, lower)], true);
  const datum: Plate['ticks'][number] = [
    [upper.b, 0],
    [upper.b + TICK_MM, 0],
  ];
  return { outline: nominal(outline), ticks: [datum] };
}

/** The half section from the back down to the belly as arcs, within 0.005 mm of the superellipses. */
export function sectionCurve(upper: HalfSection, lower: HalfSection): Segment[] {
  const down = quarter(upper);
  const up = quarter(lower).map(({ from, to, bulge }): Segment => {
    const [a, b] = [from, to].map(([y, z]): Point2 => [y, -z]);
    return { from: b, to: a, bulge };
  });
  return [...down, ...up.reverse()];
}

/** From (0, h) to (b, 0); straight where there is no height. */
function quarter(half: HalfSection): Segment[] {
  const { b, h, n } = half;
  if (h < ARC_FIT_MM || n === 1) return [{ from: [0, h], to: [b, 0], bulge: 0 }];
  return arcsAlong(superellipse(half), 0, Math.PI / 2, ARC_FIT_MM);
}

/** A quarter over the angle from the z axis, with the derivative of r = (sinⁿ + cosⁿ)^(−1/n). */
const superellipse =
  ({ b, h, n }: HalfSection): SmoothCurve =>
  (t) => {
    const [s, c] = [Math.sin(t), Math.max(0, Math.cos(t))];
    const sum = s ** n + c ** n;
    const r = sum ** (-1 / n);
    const dr = -(r / sum) * (s ** (n - 1) * c - c ** (n - 1) * s);
    return {
      point: [b * r * s, t === Math.PI / 2 ? 0 : h * r * c],
      tangent: [b * (dr * s + r * c), h * (dr * c - r * s)],
    };
  };

const SLOPE_MM = 0.5; // to either side: over so much the growth of the section is looked at

function growsAft(shape: BodyShape, x: number): boolean {
  const area = (at: number) =>
    halves(shape, at).reduce((sum, h) => sum + halfSectionMoments(h).area, 0);
  return area(x + SLOPE_MM) > area(x - SLOPE_MM);
}

/** Number and station over the datum line, name and version under it, on the spine. */
function textsOf(
  number: number,
  stationMm: number,
  name: PlateName,
  { widthMm, topMm, bottomMm, spineMm }: Frame,
): Plate['texts'] {
  const [left, right] = [widthMm - spineMm, widthMm];
  const gap = NOTCH_MM - 1;
  const station = String(Number(stationMm.toFixed(1)));
  const { full, initials } = titleWords(name);
  return [
    {
      breaks: [[`${number}`, `S ${station}`], [`${number} S${station}`]],
      room: [left, gap, right, topMm],
    },
    { breaks: broken(full), instead: broken(initials), room: [left, bottomMm, right, -gap] },
  ];
}
