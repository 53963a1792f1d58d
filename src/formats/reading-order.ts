/**
 * Text that runs from right to left, for writers that set pieces one after the other from the left. The
 * one door to bidi-js (Unicode Standard Annex 9).
 */
import bidiFactory from 'bidi-js';

/** Its types tell of a default export that Node does not see. */
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

/** Letters and marks of Hebrew, Arabic and the scripts between them. */
const RTL = '\\u0590-\\u08ff\\ufb1d-\\ufdff\\ufe70-\\ufefc';
const RTL_WORD = new RegExp(`^[${RTL}]+$`);
/** What is turned as one: a word of such a script, a number or word of another, any sign alone. */
const PIECES = new RegExp(`[${RTL}]+|[\\p{L}\\p{M}\\p{N}.,:/+-]+|.`, 'gsu');

/**
 * The pieces of one line as they stand on the page from the left: brackets turned round where the text
 * runs from the right. A word of a right-to-left script is a piece of its own and stays as spoken: whoever
 * shapes it turns its letters.
 */
export function shownPieces(text: string): readonly string[] {
  if (!runsFromRight(text)) return [text];
  const { levels } = bidi.getEmbeddingLevels(text);
  const pieces = [...text.matchAll(PIECES)].map(({ 0: piece, index }): Placed => {
    const level = levels[index];
    const mirrored = level % 2 === 1 ? bidi.getMirroredCharacter(piece) : null;
    return { text: mirrored ?? piece, level };
  });
  return joined(reordered(pieces).map((p) => p.text));
}

/** True for text that is read from the right as a whole: its first letter is of such a script. */
export const beginsAtRight = (text: string): boolean =>
  bidi.getEmbeddingLevels(text).paragraphs[0]?.level === 1;

/** True for text that has words that run from the right. */
export const runsFromRight = (text: string): boolean => new RegExp(`[${RTL}]`).test(text);

/**
 * A text as lines, each of which is set with `shownPieces`: a text that runs from the right must be broken
 * before it is turned round. Broken between words where the width is spent; a word wider than a line has a
 * line of its own.
 */
export function brokenLines(
  text: string,
  widthOf: (text: string) => number,
  most: number,
): readonly string[] {
  return text.split(/\s+/).reduce<string[]>((lines, word) => {
    const last = lines.length - 1;
    const longer = last < 0 ? word : `${lines[last]} ${word}`;
    if (last >= 0 && widthOf(longer) <= most) lines[last] = longer;
    else lines.push(word);
    return lines;
  }, []);
}

type Placed = { readonly text: string; readonly level: number };

/** Rule L2: from the highest level down to 1, each run at that level or above is turned round. */
function reordered(pieces: readonly Placed[]): readonly Placed[] {
  const highest = Math.max(...pieces.map((p) => p.level));
  const downward = Array.from({ length: highest }, (_, i) => highest - i);
  return downward.reduce<readonly Placed[]>((order, level) => {
    const runs = order.reduce<Placed[][]>((found, piece) => {
      const last = found[found.length - 1];
      if (last && last[0].level >= level === piece.level >= level) last.push(piece);
      else found.push([piece]);
      return found;
    }, []);
    return runs.flatMap((run) => (run[0].level >= level ? run.reverse() : run));
  }, pieces);
}

const joined = (texts: readonly string[]): readonly string[] =>
  texts.reduce<string[]>((found, text) => {
    const last = found.length - 1;
    if (last >= 0 && !RTL_WORD.test(text) && !RTL_WORD.test(found[last])) found[last] += text;
    else found.push(text);
    return found;
  }, []);
