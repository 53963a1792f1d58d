/** The lip: a flat plate in its slot, partly in the body and partly outside. */

import type { LipSlot } from '../blank/slot.js';
import type { BodyShape } from '../body/shape.js';
import type { Mesh } from '../geometry/mesh.js';
import { type Point3, quarterLeft } from '../geometry/vec.js';
import type { Lip } from '../pattern/pattern.js';
import { type Cell, cellsMesh } from './cells.js';
import { fromInertia, type Moments, NOTHING, summed } from './moments.js';
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
 * The plate is a rectangle with its inner end on the slot's, in the middle of the slot. Over the
 * slot's depth it reaches beyond the body's sides if it is wider; those parts keep water out too.
 * The body is the bare one: a coat's film, which runs into the corner, is not taken off the plate.
 */
export function lipParts(shape: BodyShape, slot: LipSlot, lip: Lip): LipParts {
  const { lengthMm, thicknessMm } = lip;
  const farMm = 2 * shape.lengthMm;
  const slotLines = stripLines(shape, slot, { thicknessMm: slot.widthMm, farMm });
  const lines = stripLines(shape, slot, { thicknessMm, farMm: lengthMm });
  const stretches = stretchesOf(Math.max(...lines.map((l) => l.reachMm)));
  const inside = stretches.map((s) =>
    insideStrip(shape, slot, { lines, ...s, halfWidthMm: lip.widthMm / 2 }),
  );
  const slotMoments = insideSlot(shape, slot, slotLines);
  const within = summed(inside.map((m) => [1, m]));
  const cells = stretches.flatMap((s, i) => besideBody(slot, lip, { ...s, inside: inside[i] }));
  const outMm = stretches[stretches.length - 1].toMm;
  const ahead = lengthMm - outMm;
  if (ahead > LEAST_MM)
    cells.push(
      cell(slot, lip, {
        fromMm: outMm,
        toMm: lengthMm,
        lowY: -lip.widthMm / 2,
        highY: lip.widthMm / 2,
      }),
    );
  const plate = plateMoments(slot, lip);
  const outside = cells.length > 0 ? cellsMesh(cells) : null;
  return {
    plate,
    slot: slotMoments,
    room: summed([
      [1, slotMoments],
      [-1, within],
    ]),
    outsideMm3: cells.reduce((sum, c) => sum + cellVolume(c), 0),
    outside,
  };
}

type Stretch = { readonly fromMm: number; readonly toMm: number };

/** Stretches from the inner end to a place, shorter toward the surface, where the breadth changes fast. */
const stretchesOf = (reachMm: number): Stretch[] =>
  Array.from({ length: STRETCHES }, (_, i) => {
    const at = (k: number) => (k === STRETCHES ? 1 : Math.sin((Math.PI / 2) * (k / STRETCHES)));
    return { fromMm: reachMm * at(i), toMm: reachMm * at(i + 1) };
  });

function insideSlot(shape: BodyShape, slot: LipSlot, lines: readonly StripLine[]): Moments {
  const reach = Math.max(...lines.map((l) => l.reachMm));
  return summed(
    stretchesOf(reach).map((s) => [
      1,
      insideStrip(shape, slot, { lines, ...s, halfWidthMm: Number.POSITIVE_INFINITY }),
    ]),
  );
}

/** The plate beside the body over one stretch: a box to each side, from the mean breadth outward. */
function besideBody(
  slot: LipSlot,
  lip: Lip,
  { fromMm, toMm, inside }: Stretch & { readonly inside: Moments },
): Cell[] {
  const edge = lip.widthMm / 2;
  const mean = inside.amount / (2 * lip.thicknessMm * (toMm - fromMm));
  if (!(edge - mean > LEAST_MM)) return [];
  return [
    cell(slot, lip, { fromMm, toMm, lowY: mean, highY: edge }),
    cell(slot, lip, { fromMm, toMm, lowY: -edge, highY: -mean }),
  ];
}

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

function plateMoments(slot: LipSlot, { widthMm: w, lengthMm: l, thicknessMm: t }: Lip): Moments {
  const amount = w * l * t;
  if (!(amount > 0)) return NOTHING;
  const [ox, oz] = slot.outward;
  const [along, across, wide] = [l * l, t * t, w * w].map((square) => (amount * square) / 12);
  // ∫x², ∫z² and ∫xz of a plate whose length points along (ox, oz), by turning its own axes.
  const [xx, zz] = [along * ox * ox + across * oz * oz, along * oz * oz + across * ox * ox];
  const center = inSlot(slot, l / 2, 0);
  return fromInertia(amount, center, {
    xx: wide + zz,
    yy: xx + zz,
    zz: xx + wide,
    xz: (along - across) * ox * oz,
  });
}
