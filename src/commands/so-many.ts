/** So many of something: `1 blank`, `2 blanks`. */
export const soMany = (count: number, word: string): string =>
  `${count} ${word}${count === 1 ? '' : 's'}`;
