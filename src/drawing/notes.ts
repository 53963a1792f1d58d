/** Lines of notes under a drawing, printable ASCII: what to take, and what can hurt. */
import type { Cutter } from '../pattern/run.js';

/** Stacks put together alike, and the blocks that go into one. */
type Mix = {
  readonly copies: number;
  readonly blocks: readonly { readonly block: string; readonly count: number }[];
};

/** Which blocks are taped into the stacks of a face: `2 STACKS OF 2 BOATHOUSE-CEDAR`. */
export const stackNotes = (mixes: readonly Mix[]): string[] =>
  mixes.map(({ copies, blocks }) => {
    const piles = blocks.map(({ block, count }) => `${count} ${block}`).join(' + ');
    return `${copies} STACK${copies === 1 ? '' : 'S'} OF ${piles}`.toUpperCase();
  });

/** Cautions for sheet: clear plastics above all. */
export const sheetCautions = (cutter: Pick<Cutter, 'guidance'>): string[] =>
  cutter.guidance === 'steered'
    ? ['SHEET CHIPS WHEN SAWN: EYE PROTECTION', cutCaution(cutter)]
    : ['POLYCARBONATE CUTS BADLY UNDER A LASER AND GIVES HARMFUL FUME', cutCaution(cutter)];

/** The caution that stands where the cut is made. Local rules and the machine's own list come first. */
export const cutCaution = ({ guidance }: Pick<Cutter, 'guidance'>): string =>
  guidance === 'steered'
    ? 'SMALL PARTS: PUSH BLOCK OR JIG, NEVER FINGERS NEAR THE BLADE. LOCAL RULES COME FIRST'
    : "MATERIALS BY THE MACHINE'S OWN LIST; NEVER LASER PVC. LOCAL RULES COME FIRST";
