/** Blocks to get out of the pile, and the tape between them. */
import type { NestFace } from '../nest/nest.js';
import type { Tape, TimberToGet } from './shop.js';
import type { ShopWork } from './work.js';

/** In the run's order of blocks; blocks that no stack takes are left on the pile. */
export function timberToGet({ nest, blocks }: Pick<ShopWork, 'nest' | 'blocks'>): TimberToGet[] {
  const faces = nest?.faces ?? [];
  return blocks.flatMap(({ name, timber, lengthMm, widthMm, thicknessMm }) => {
    const using = faces.filter((face) => taken(face, name) > 0);
    const heights = [...new Set(using.map((f) => f.layers))].sort((a, b) => b - a);
    return heights.map((layersPerStack): TimberToGet => {
      const like = using.filter((f) => f.layers === layersPerStack);
      return {
        block: name,
        timber,
        lengthMm,
        widthMm,
        thicknessMm,
        count: like.reduce((sum, face) => sum + taken(face, name), 0),
        layersPerStack,
        faces: like.map((f) => f.id),
      };
    });
  });
}

/** Blocks of an entry in all stacks of a face. */
const taken = ({ stacks }: NestFace, block: string): number =>
  stacks.reduce(
    (sum, mix) =>
      sum +
      mix.blocks.reduce((s, share) => s + (share.block === block ? share.count : 0), 0) *
        mix.copies,
    0,
  );

/** Between any two blocks of a stack lies one joint, as long and as wide as the face. */
export function tapeFor({ nest }: Pick<ShopWork, 'nest'>): Tape | null {
  const taped = (nest?.faces ?? []).filter((f) => f.layers > 1);
  if (taped.length === 0) return null;
  const sum = (of: (face: NestFace) => number): number =>
    taped.reduce((s, f) => s + f.copies * (f.layers - 1) * of(f), 0);
  return {
    joints: sum(() => 1),
    lengthMm: sum((f) => f.lengthMm),
    areaMm2: sum((f) => f.lengthMm * f.widthMm),
  };
}
