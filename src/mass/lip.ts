/** The lip: a flat plate in its slot, partly in the body and partly outside. */

import type { LipSlot } from '../blank/slot.js';
import type { BodyShape } from '../body/shape.js';
import type { Mesh } from '../geometry/mesh.js';
import { type Point3, quarterLeft } from '../geometry/vec.js';
import type { Lip } from '../pattern/pattern.js';
import { type Cell, cellsMesh } from './cells.js';
import { fromInertia, type Moments, NOTHING, summed } from './moments.js';
import {
  faceSums,
  halfWidthAt,
  isPlain,
  meanHalfMm,
  type PlateBands,
  plateBands,
  stopsOf,
} from './plate.js';
import { inSlot, insideStrip, type StripLine, stripLines } from './strip.js';

export type LipParts = {
  /** The whole plate, per mm³. */
  readonly plate: Moments;
  /** Wood of the finished body that the slot takes away, right across, per mm³. */
  readonly slot: Moments;
  /** The slot beside the plate, which glue fills, per mm³. */
  readonly room: Moments;
  /** The part of the plate outside the body. */
  readonly outsideMm3: number;
  /** That part as boxes along the plate, of exactly its volume; null when there is none. */
  readonly outside: Mesh | null;
};

const STRETCHES = 12; // boxes to a side over the part of the plate that runs inside the body
const LEAST_MM = 1e-6; // a sliver narrower than this is left out of the boxes

/**
 * The plate has its inner end on the slot's, in the middle of the slot. Over the slot's depth it
 * reaches beyond the body's sides if it is wider; those parts keep water out too. The body is the
 * bare one: a coat's film, which runs into the corner, is not taken off the plate. Rounds and hole are
 * boxes of their very areas.
 */
export function lipParts(shape: BodyShape, slot: LipSlot, lip: Lip): LipParts {
  const { lengthMm, thicknessMm } = lip;
  const farMm = 2 * shape.lengthMm;
  const plate = plateBands(lip);
  const slotLines = stripLines(shape, slot, { thicknessMm: slot.widthMm, farMm });
  const lines = stripLines(shape, slot, { thicknessMm, farMm: lengthMm });
  const stops = isPlain(plate) ? [] : stopsOf(plate);
  const stretches = stretchesOf(Math.max(...lines.map((l) => l.reachMm))).flatMap((s) =>
    split(s, stops),
  );
  const inside = stretches.map((s) => insidePlate({ shape, slot, lines }, plate, s));
  const slotMoments = insideSlot(shape, slot, slotLines);
  const within = summed(inside.map((m) => [1, m]));
  const outMm = stretches[stretches.length - 1].toMm;
  const ahead = lengthMm - outMm > LEAST_MM ? split({ fromMm: outMm, toMm: lengthMm }, stops) : [];
  const cells = [
    ...stretches.flatMap((s, i) => besideBody(slot, lip, { ...s, plate, inside: inside[i] })),
    ...ahead.flatMap((s) => aheadOfBody(slot, lip, { ...s, plate })),
  ];
  return {
    plate: isPlain(plate) ? cuboid(slot, lip) : plateMoments(slot, lip, plate),
    slot: slotMoments,
    room: summed([
      [1, slotMoments],
      [-1, within],
    ]),
    outsideMm3: cells.reduce((sum, c) => sum + cellVolume(c), 0),
    outside: cells.length > 0 ? cellsMesh(cells) : null,
  };
}

type Stretch = { readonly fromMm: number; readonly toMm: number };

/** Stretches from the inner end to a place, shorter toward the surface, where the breadth changes fast. */
const stretchesOf = (reachMm: number): Stretch[] =>
  Array.from({ length: STRETCHES }, (_, i) => {
    const at = (k: number) => (k === STRETCHES ? 1 : Math.sin((Math.PI / 2) * (k / STRETCHES)));
    return { fromMm: reachMm * at(i), toMm: reachMm * at(i + 1) };
  });

/** A stretch in parts that end at the stops within it. */
function split({ fromMm, toMm }: Stretch, stops: readonly number[]): Stretch[] {
  const inner = stops.filter((s) => s > fromMm + LEAST_MM && s < toMm - LEAST_MM);
  const ends = [fromMm, ...inner.filter((s, i) => i === 0 || s - inner[i - 1] > LEAST_MM), toMm];
  return ends.slice(1).map((end, i) => ({ fromMm: ends[i], toMm: end }));
}

type Crossed = {
  readonly shape: BodyShape;
  readonly slot: LipSlot;
  readonly lines: readonly StripLine[];
};

/** The plate inside the body over one stretch, less its hole. */
function insidePlate({ shape, slot, lines }: Crossed, plate: PlateBands, s: Stretch): Moments {
  const within = (bands: PlateBands['bands']) =>
    insideStrip(shape, slot, { lines, ...s, halfWidthAt: (along) => halfWidthAt(bands, along) });
  const whole = within(plate.bands);
  if (meanHalfMm(plate.hole, s.fromMm, s.toMm) === 0) return whole;
  return summed([
    [1, whole],
    [-1, within(plate.hole)],
  ]);
}

function insideSlot(shape: BodyShape, slot: LipSlot, lines: readonly StripLine[]): Moments {
  const reach = Math.max(...lines.map((l) => l.reachMm));
  return summed(
    stretchesOf(reach).map((s) => [
      1,
      insideStrip(shape, slot, { lines, ...s, halfWidthAt: () => Number.POSITIVE_INFINITY }),
    ]),
  );
}

type PlateStretch = Stretch & { readonly plate: PlateBands };

/**
 * The plate beside the body over one stretch: a box to each side, from the mean breadth outward. What a
 * hole takes there counts to the body.
 */
function besideBody(
  slot: LipSlot,
  lip: Lip,
  { fromMm, toMm, plate, inside }: PlateStretch & { readonly inside: Moments },
): Cell[] {
  const edge = meanHalfMm(plate.bands, fromMm, toMm);
  const hole = meanHalfMm(plate.hole, fromMm, toMm);
  const mean = inside.amount / (2 * lip.thicknessMm * (toMm - fromMm)) + hole;
  return mean + LEAST_MM < edge ? bothSides(slot, lip, { fromMm, toMm, mean, edge }) : [];
}

/** The plate ahead of the body over one stretch: one box, or one to each side of the hole. */
function aheadOfBody(slot: LipSlot, lip: Lip, { fromMm, toMm, plate }: PlateStretch): Cell[] {
  const edge = meanHalfMm(plate.bands, fromMm, toMm);
  const mean = meanHalfMm(plate.hole, fromMm, toMm);
  if (edge <= LEAST_MM) return [];
  return mean > 0
    ? bothSides(slot, lip, { fromMm, toMm, mean, edge })
    : [cell(slot, lip, { fromMm, toMm, lowY: -edge, highY: edge })];
}

const bothSides = (
  slot: LipSlot,
  lip: Lip,
  { fromMm, toMm, mean, edge }: Stretch & { readonly mean: number; readonly edge: number },
): Cell[] => [
  cell(slot, lip, { fromMm, toMm, lowY: mean, highY: edge }),
  cell(slot, lip, { fromMm, toMm, lowY: -edge, highY: -mean }),
];

function cell(
  slot: LipSlot,
  { thicknessMm }: Lip,
  { fromMm, toMm, lowY, highY }: Stretch & { readonly lowY: number; readonly highY: number },
): Cell {
  const [x, z] = inSlot(slot, fromMm, -thicknessMm / 2);
  const [qx, qz] = quarterLeft(slot.outward);
  const [ox, oz] = slot.outward;
  const long = toMm - fromMm;
  return {
    corner: [x, lowY, z],
    edges: [
      [thicknessMm * qx, 0, thicknessMm * qz],
      [long * ox, 0, long * oz],
      [0, highY - lowY, 0],
    ],
  };
}

/** The box's edges are square to each other. */
const cellVolume = ({ edges }: Cell): number =>
  edges.reduce((product, edge: Point3) => product * Math.hypot(...edge), 1);

/** A rectangle of plate, in closed form. */
function cuboid(slot: LipSlot, { widthMm: w, lengthMm: l, thicknessMm: t }: Lip): Moments {
  const amount = w * l * t;
  if (!(amount > 0)) return NOTHING;
  const [along, across, wide] = [l * l, t * t, w * w].map((square) => (amount * square) / 12);
  return turned(slot, { amount, centerMm: l / 2, along, across, wide });
}

/** Any other plate, from the sums over its face. */
function plateMoments(slot: LipSlot, { thicknessMm: t }: Lip, plate: PlateBands): Moments {
  const { area, along, alongSquared, acrossSquared } = faceSums(plate);
  const centerMm = along / area;
  return turned(slot, {
    amount: area * t,
    centerMm,
    along: t * (alongSquared - area * centerMm ** 2),
    across: (area * t ** 3) / 12,
    wide: t * acrossSquared,
  });
}

/** ∫x², ∫z² and ∫xz of a plate whose length points outward, by turning its own axes. */
function turned(
  slot: LipSlot,
  {
    amount,
    centerMm,
    along,
    across,
    wide,
  }: Record<'amount' | 'centerMm' | 'along' | 'across' | 'wide', number>,
): Moments {
  const [ox, oz] = slot.outward;
  const [xx, zz] = [along * ox * ox + across * oz * oz, along * oz * oz + across * ox * ox];
  return fromInertia(amount, inSlot(slot, centerMm, 0), {
    xx: wide + zz,
    yy: xx + zz,
    zz: xx + wide,
    xz: (along - across) * ox * oz,
  });
}
