/** One problem code, in words; `{name}` is replaced by the problem's fact of that name. */
export type Entry = {
  readonly severity: 'error' | 'warning';
  /** What is wrong, with the number found. */
  readonly what: string;
  /** The limit that was passed. */
  readonly limit: string;
  /** Where that limit comes from. */
  readonly from: string;
  readonly fix: string;
  /** For `explain`: what the code means. */
  readonly about: string;
};
