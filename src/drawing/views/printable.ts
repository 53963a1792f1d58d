/** Names and notes of the maker as they can be put on paper. */
import type { ViewsInput } from './input.js';

/** Any text in one line, without what no file can hold: control characters and halves of letters give way to a sign for what is missing. */
export const printable = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .trim()
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is replaced
    .replace(/[\u0000-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu, '\ufffd');

/** Everything in it that a maker may have written. */
export const printableInput = (input: ViewsInput): ViewsInput => {
  const { pattern } = input;
  return {
    ...input,
    name: printable(input.name),
    version: printable(input.version),
    note: printable(input.note),
    pattern: {
      ...pattern,
      timber: printable(pattern.timber),
      lip: pattern.lip && { ...pattern.lip, material: printable(pattern.lip.material) },
      coats: pattern.coats.map((coat) => ({ ...coat, name: printable(coat.name) })),
    },
    eyes: input.eyes.map((eye) => ({ ...eye, parts: eye.parts.map(printable) })),
  };
};
