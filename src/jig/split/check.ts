/** Judges a split by its pieces, put back where they were cut from, without asking how planes and places were chosen. */
import { meshBox, meshFlaws, meshVolume } from '../../geometry/mesh.js';
import { type Csg, holeAlongZ, movedBy, segmentsAround } from '../../solid/csg.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { measure, sharedVolume } from '../../solid/measure.js';
import { placement } from '../../solid/placement.js';
import { BORE_CHORD } from './across.js';
import { boreDepthMm, boreRadiusMm, type Joint, type Split, type SplitOrder } from './split.js';

export type SplitFlawCode =
  | 'mesh-open'
  | 'not-one-piece'
  | 'not-on-bed'
  | 'off-bed'
  | 'volume-differs'
  | 'not-of-the-whole'
  | 'pieces-overlap'
  | 'dowel-does-not-go-in'
  | 'wall-thin'
  | 'cut-where-whole';

/** What was measured, and the limit it passed; number of the piece or of the joint, from 0. */
export type SplitFlaw = {
  readonly code: SplitFlawCode;
  readonly at: number;
  readonly measured: number;
  readonly limit: number;
};

/** Of the whole's volume: rounding of coordinates to 32-bit floats is a tenth of it. */
const VOLUME_ERROR = 1e-5;

export function checkSplit(kernel: SolidKernel, order: SplitOrder, split: Split): SplitFlaw[] {
  const open = split.pieces.flatMap(({ mesh }, at) => {
    const { openEdges, degenerate } = meshFlaws(mesh.positions, mesh.triangles);
    return flaw(openEdges + degenerate > 0, 'mesh-open', at, openEdges + degenerate, 0);
  });
  // An open mesh cannot be measured further.
  if (open.length > 0) return open;
  return [
    ...split.pieces.flatMap((_, at) => pieceFlaws(kernel, order, split, at)),
    ...split.joints.flatMap((joint, at) => jointFlaws(kernel, order, split, joint, at)),
    ...volumeFlaws(order, split),
  ];
}

function pieceFlaws(
  kernel: SolidKernel,
  { mesh, bed }: SplitOrder,
  { pieces }: Split,
  at: number,
): SplitFlaw[] {
  const piece: Csg = { kind: 'mesh', mesh: pieces[at].mesh };
  const [min, [x, y, z]] = meshBox(pieces[at].mesh);
  const off = Math.max(...min.map(Math.abs));
  const over = Math.min(Math.max(x - bed.xMm, y - bed.yMm), Math.max(y - bed.xMm, x - bed.yMm));
  const parts = measure(kernel, piece).pieces;
  const own = meshVolume(pieces[at].mesh);
  const slack = VOLUME_ERROR * meshVolume(mesh);
  const outside = own - sharedVolume(kernel, inPlace(pieces[at]), { kind: 'mesh', mesh });
  return [
    ...flaw(parts !== 1, 'not-one-piece', at, parts, 1),
    ...flaw(off > 0, 'not-on-bed', at, off, 0),
    ...flaw(over > 0, 'off-bed', at, over, 0),
    ...flaw(z > bed.zMm, 'off-bed', at, z, bed.zMm),
    ...flaw(outside > slack, 'not-of-the-whole', at, outside, slack),
    ...pieces.slice(0, at).flatMap((other) => {
      const shared = sharedVolume(kernel, inPlace(pieces[at]), inPlace(other));
      return flaw(shared > slack, 'pieces-overlap', at, shared, slack);
    }),
  ];
}

const inPlace = ({ mesh, toWhole }: Split['pieces'][number]): Csg =>
  movedBy(toWhole, { kind: 'mesh', mesh });

function jointFlaws(
  kernel: SolidKernel,
  { mesh, dowel, keepWholeMm }: SplitOrder,
  { pieces }: Split,
  { xMm, dowels }: Joint,
  at: number,
): SplitFlaw[] {
  const barred = keepWholeMm.some(([from, to]) => from <= xMm && xMm <= to);
  return [
    ...flaw(barred, 'cut-where-whole', at, xMm, xMm),
    ...dowels.flatMap((middle) => {
      const half = dowel.lengthMm / 2;
      const pin = rod(middle, dowel.diameterMm / 2, half);
      const inTheWay = [pieces[at], pieces[at + 1]].map((p) =>
        sharedVolume(kernel, pin, inPlace(p)),
      );
      const blocked = Math.max(...inTheWay);
      const slack = VOLUME_ERROR * meshVolume(mesh);
      const wall = dowel.wallMm;
      const sleeve = rod(middle, boreRadiusMm(dowel) + wall, boreDepthMm(dowel) + wall);
      const needed = measure(kernel, sleeve).volumeMm3;
      const bare = needed - sharedVolume(kernel, sleeve, { kind: 'mesh', mesh });
      return [
        ...flaw(blocked > slack, 'dowel-does-not-go-in', at, blocked, slack),
        ...flaw(bare > slack, 'wall-thin', at, bare, slack),
      ];
    }),
    ...dowels.slice(1).flatMap((b, i) => {
      const a = dowels[i];
      const apart = Math.hypot(b[1] - a[1], b[2] - a[2]) - 2 * boreRadiusMm(dowel);
      return flaw(apart < dowel.wallMm, 'wall-thin', at, apart, dowel.wallMm);
    }),
  ];
}

/** A rod along x round this point. */
function rod(middle: Joint['dowels'][number], radius: number, halfLength: number): Csg {
  const ends = { fromZ: -halfLength, toZ: halfLength, tolerance: BORE_CHORD };
  return movedBy(placement([0, 1, 0], [0, 0, 1], [1, 0, 0], middle), holeAlongZ(radius, ends));
}

/** The pieces and what was bored out of them are the whole: a bore is a regular prism, n r² tan(π/n) by its length. */
function volumeFlaws({ mesh, dowel }: SplitOrder, { pieces, joints }: Split): SplitFlaw[] {
  const radius = boreRadiusMm(dowel);
  const sides = segmentsAround(radius, BORE_CHORD);
  const bore = sides * radius ** 2 * Math.tan(Math.PI / sides) * 2 * boreDepthMm(dowel);
  const bores = joints.reduce((sum, { dowels }) => sum + dowels.length * bore, 0);
  const sum = pieces.reduce((total, piece) => total + meshVolume(piece.mesh), bores);
  const error = Math.abs(sum / meshVolume(mesh) - 1);
  return flaw(!(error <= VOLUME_ERROR), 'volume-differs', -1, error, VOLUME_ERROR);
}

const flaw = (
  wrong: boolean,
  code: SplitFlawCode,
  at: number,
  measured: number,
  limit: number,
): SplitFlaw[] => (wrong ? [{ code, at, measured, limit }] : []);
