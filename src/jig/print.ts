/** From a jig to what is printed: one part where the bed is large enough, else pieces with dowels. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { along3 } from '../geometry/vec3.js';
import type { SolidKernel } from '../solid/kernel.js';
import type { Jig, JigProblem } from './jig.js';
import type { Sunk } from './letters.js';
import type { Bed, Printer } from './printer.js';
import { bedOf, type JigSetup } from './setup.js';
import { splitForBed } from './split/make.js';
import { dowelCount, type Split, type SplitOrder, type SplitProblem } from './split/split.js';

/** One solid as the printer gets it, resting on z = 0, no coordinate negative. */
export type PrintedPart = {
  /** Which piece of the jig, counted from 1; empty where it is whole. */
  readonly piece: string;
  readonly mesh: Mesh;
  readonly sizeMm: Point3;
  readonly volumeMm3: number;
  readonly massG: number;
};

/** Names the files of a part: pattern, kind, which of several, which piece. */
export const partName = ({ pattern, kind, part }: Jig, { piece }: PrintedPart): string =>
  [pattern, kind, part, piece].filter((word) => word !== '').join('-');

export type Printed = {
  readonly parts: readonly PrintedPart[];
  /** Pins that join the pieces; 0 where there is one. */
  readonly dowels: number;
  /** What was split and how, for its judge; null where it was not. */
  readonly split: { readonly order: SplitOrder; readonly made: Split } | null;
  readonly problems: readonly JigProblem[];
};

/** A jig that fits the bed along or across is printed whole; a longer one in as few pieces as can be. */
export function printed(kernel: SolidKernel, jig: Jig, setup: JigSetup, printer: Printer): Printed {
  const bed = bedOf(setup, printer);
  const part = (piece: string, mesh: Mesh, sizeMm: Point3, volumeMm3: number): PrintedPart => ({
    piece,
    mesh,
    sizeMm,
    volumeMm3,
    massG: volumeMm3 * printer.plasticDensityKgM3 * 1e-6,
  });
  if (fits(jig.sizeMm, bed)) {
    const whole = part('', jig.mesh, jig.sizeMm, jig.volumeMm3);
    return { parts: [whole], dowels: 0, split: null, problems: [] };
  }
  const { split, order, problem } = splitWhole(kernel, jig, bed, printer);
  if (!split) return { parts: [], dowels: 0, split: null, problems: [tooLarge(jig, bed, problem)] };
  return {
    parts: split.pieces.map((p, i) => part(String(i + 1), p.mesh, p.sizeMm, p.volumeMm3)),
    dowels: dowelCount(split),
    split: { order, made: split },
    problems: [],
  };
}

function fits([x, y, z]: Point3, { xMm, yMm, zMm }: Bed): boolean {
  const lies = (a: number, b: number) => a <= xMm && b <= yMm;
  return (lies(x, y) || lies(y, x)) && z <= zMm;
}

/** Cut beside guides, notches and letters; through letters if there is no other way. */
function splitWhole(kernel: SolidKernel, jig: Jig, bed: Bed, { dowel }: Printer) {
  const letters = jig.letters.map(reachOfLetters);
  const orders = [[...jig.keepWholeMm, ...letters], jig.keepWholeMm].map(
    (keepWholeMm): SplitOrder => ({ mesh: jig.mesh, bed, dowel, keepWholeMm }),
  );
  const [beside, through] = orders;
  const first = splitForBed(kernel, beside);
  if (first.split || first.problem.code !== 'split-no-plane' || letters.length === 0)
    return { ...first, order: beside };
  return { ...splitForBed(kernel, through), order: through };
}

/** From one X to another, as far as the ink of a text goes. */
function reachOfLetters({ face, box }: Sunk): readonly [number, number] {
  const xs = [box.left, box.right].flatMap((r) =>
    [box.bottom, box.top].map((u) => along3(along3(face.origin, r, face.right), u, face.up)[0]),
  );
  return [Math.min(...xs), Math.max(...xs)];
}

function tooLarge({ sizeMm: [x, y, z] }: Jig, bed: Bed, problem: SplitProblem | null): JigProblem {
  const needs = { needXMm: x, needYMm: y, needZMm: z };
  const has = { bedXMm: bed.xMm, bedYMm: bed.yMm, bedZMm: bed.zMm };
  if (problem?.code !== 'split-no-plane')
    return { code: 'jig-bed-too-small', path: [], facts: { ...needs, ...has } };
  return { code: 'jig-cannot-split', path: [], facts: { ...needs, ...has, ...problem.facts } };
}
