/**
 * The part of maxrects-packer used here. The package's own entry is no module Node can import by
 * name, so its module file is imported by path, which has no types.
 */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  export const PACKING_LOGIC: {
    readonly MAX_AREA: 0;
    readonly MAX_EDGE: 1;
    readonly FILL_WIDTH: 2;
  };
  export class MaxRectsBin {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: {
        readonly smart: boolean;
        readonly pot: boolean;
        readonly square: boolean;
        readonly allowRotation: boolean;
        readonly logic: number;
      },
    );
    /** The box where it lies now; nothing if there is no room. */
    add(
      width: number,
      height: number,
      data: unknown,
    ): { readonly x: number; readonly y: number; readonly rot: boolean } | undefined;
  }
}
