/** Packs the faces of one order; the same face with the same wish is packed once. */

import { clearOf } from './fit.js';
import { type Kit, kitFor } from './kit.js';
import type { FaceSize, NestPart, NestRules } from './nest.js';
import { type Layout, packFace } from './place.js';
import { faceKey } from './stack.js';

export type Packer = {
  readonly kit: Kit;
  /** The best layout found of the wanted outlines, by part, on a face. */
  readonly pack: (face: FaceSize, wanted: readonly number[]) => Layout;
  readonly areaMm2: (part: number) => number;
};

/** What a packer may be given beside its order. */
export type Packing = {
  /** Made for the same parts and rules; left out, it is made anew. */
  readonly kit?: Kit;
  /** Asked while a face is packed; true ends that with the best so far. */
  readonly shouldStop?: (() => boolean) | undefined;
};

export function packerFor(
  parts: readonly NestPart[],
  rules: NestRules,
  { kit = kitFor(parts, rules), shouldStop }: Packing = {},
): Packer {
  const { tries, seed } = rules;
  const areaMm2 = (part: number): number => kit.set.shapes[2 * part].areaMm2;
  const known = new Map<string, Layout>();
  const pack = (face: FaceSize, wanted: readonly number[]): Layout => {
    // More outlines than cover the clear face change nothing, so that a long order asks the same again.
    const { clearLengthMm, clearWidthMm } = clearOf(face);
    const clearMm2 = Math.max(0, clearLengthMm) * Math.max(0, clearWidthMm);
    const most = wanted.map((n, part) => Math.min(n, Math.floor(clearMm2 / areaMm2(part)) + 1));
    const key = [faceKey(face), ...most].join('|');
    const layout = known.get(key) ?? packFace(kit, { face, wanted: most, tries, seed, shouldStop });
    known.set(key, layout);
    return layout;
  };
  return { kit, pack, areaMm2 };
}
