/** A hash as it stands on paper: as many of its digits as tell two builds or two files apart at the bench. */
export const shortHash = (hash: string): string => hash.slice(0, DIGITS);

const DIGITS = 12;
