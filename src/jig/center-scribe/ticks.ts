/** The places on a sawn blank's edge that get a tick: where lines of the finished lure leave it. */
import type { Blank } from '../../blank/blank.js';
import type { Ring } from '../../geometry/ring.js';
import { add, cross, dot, type Point2, quarterLeft, sub, times, unit } from '../../geometry/vec.js';
import type { Pattern } from '../../pattern/pattern.js';

export type Tick = {
  /** What stands beside it. */
  readonly letter: string;
  readonly what: string;
  /** On the edge of the sawn blank, side view. */
  readonly at: Point2;
  /** Unit, out of the blank along the line that is marked, or square to the edge where that is too flat. */
  readonly outward: Point2;
};

/** From nose to tail: tow eye, lip, ballast, hangers, tail eye. Ballast and hangers are counted if there are several. */
export function ticksOf(pattern: Pattern, blank: Blank): Tick[] {
  const { towEye, tailEye } = pattern;
  const { slot, holes, hangers, lengthMm } = blank;
  const counted = (letter: string, i: number, all: readonly unknown[]) =>
    all.length > 1 ? `${letter}${i + 1}` : letter;
  const middle = lengthMm / 2;
  const lines: (Omit<Tick, 'at'> & { readonly from: Point2 })[] = [
    ...(towEye
      ? [
          {
            letter: 'T',
            what: 'tow eye',
            from: [middle, towEye.heightMm] as const,
            outward: [-1, 0] as const,
          },
        ]
      : []),
    ...(slot ? [{ letter: 'L', what: 'lip', from: slot.end, outward: slot.outward }] : []),
    ...holes.map(({ stationMm }, i) => ({
      letter: counted('B', i, holes),
      what: 'ballast',
      from: [stationMm, 0] as const,
      outward: [0, -1] as const,
    })),
    ...hangers.map(({ stationMm }, i) => ({
      letter: counted('H', i, hangers),
      what: 'hanger',
      from: [stationMm, 0] as const,
      outward: [0, -1] as const,
    })),
    ...(tailEye
      ? [
          {
            letter: 'E',
            what: 'tail eye',
            from: [middle, tailEye.heightMm] as const,
            outward: [1, 0] as const,
          },
        ]
      : []),
  ];
  return lines.flatMap(({ from, ...rest }) => {
    const left = leaves(blank.profileRing, from, rest.outward);
    if (!left) return [];
    const steep = dot(rest.outward, left.normal) >= LEAST_SLOPE;
    return [{ ...rest, at: left.at, outward: steep ? rest.outward : left.normal }];
  });
}

/** A line that leaves the edge flatter than this (sine) is ticked square to the edge: an oblique notch would leave a blade of plastic. */
export const LEAST_SLOPE = 0.35;

/** The last place where a ray crosses the outline, and the edge's way out there; null if it never does. */
export function leaves(
  outline: Ring,
  from: Point2,
  outward: Point2,
): { readonly at: Point2; readonly normal: Point2 } | null {
  let far = 0;
  let last: Point2 | null = null;
  outline.forEach((p, i) => {
    const edge = sub(outline[(i + 1) % outline.length], p);
    const across = cross(outward, edge);
    if (Math.abs(across) < 1e-12) return;
    const start = sub(p, from);
    const along = cross(start, edge) / across;
    const share = cross(start, outward) / across;
    if (share < 0 || share >= 1 || along <= far) return;
    far = along;
    last = edge;
  });
  // Outlines run counter-clockwise: out is to the right.
  return last && { at: add(from, times(outward, far)), normal: times(quarterLeft(unit(last)), -1) };
}
