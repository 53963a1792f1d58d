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

/** What of a plan of cuts is told in words. */
type Order = {
  readonly partingCuts: readonly unknown[];
  readonly pieces: readonly { readonly lengthMm: number }[];
  readonly cutOrder: readonly number[];
  readonly reliefCuts: readonly unknown[];
};

/** The order of cutting in words: `FIRST PART AT A, B; THEN SAW 1 TO 9. DASHED: THE BLADE'S WAY IN`. */
export function orderNotes(
  { partingCuts, pieces, cutOrder, reliefCuts }: Order,
  { guidance }: Pick<Cutter, 'guidance'>,
): string[] {
  if (cutOrder.length === 0) return [];
  if (guidance === 'follows')
    return ['CUT IN THE ORDER OF THE FILE: OPENINGS FIRST, THEN OUTLINES'];
  const letters = partingCuts.map((_, k) => cutLetter(k)).join(', ');
  const saw = cutOrder.length === 1 ? 'SAW 1' : `SAW 1 TO ${cutOrder.length}`;
  const relief = reliefCuts.length > 0 ? 'RELIEF CUTS BEFORE THEIR OUTLINE. ' : '';
  const longest = Math.round(Math.max(...pieces.map((p) => p.lengthMm)));
  return [
    `${letters ? `FIRST PART AT ${letters}; THEN ` : ''}${saw}. ${relief}DASHED: THE BLADE'S WAY IN`,
    `LONGEST PIECE IN THE HAND ${longest} MM: SUPPORT BOTH ENDS, STOP THE SAW BEFORE BACKING OUT`,
  ];
}

/** A, B … Z, then A1, B1 … */
export const cutLetter = (index: number): string =>
  String.fromCharCode(65 + (index % 26)) + (index < 26 ? '' : String(Math.floor(index / 26)));

/** Cautions for sheet: clear plastics above all. */
export const sheetCautions = (cutter: Pick<Cutter, 'guidance'>): string[] =>
  cutter.guidance === 'steered'
    ? ['SHEET CHIPS WHEN SAWN: EYE PROTECTION', cutCaution(cutter)]
    : ['CLEAR PLASTIC: POLYCARBONATE GIVES HARMFUL FUME UNDER A LASER', cutCaution(cutter)];

/** The caution that stands where the cut is made. Local rules and the machine's own list come first. */
export const cutCaution = ({ guidance }: Pick<Cutter, 'guidance'>): string =>
  guidance === 'steered'
    ? 'SMALL PARTS: PUSH BLOCK OR JIG, NEVER FINGERS NEAR THE BLADE. LOCAL RULES COME FIRST'
    : "MATERIALS BY THE MACHINE'S OWN LIST; NEVER LASER PVC. LOCAL RULES COME FIRST";
