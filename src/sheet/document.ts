/**
 * The shop sheet as a document, before any page is made of it: sections in the order of the work, of
 * headings, paragraphs, tables, cautions, pictures, boxes to tick and lines to write on. It knows no file
 * format; writers in `formats/` decide looks and nothing else.
 */
import type { Form } from './shown.js';

/** A number of the record as it is shown. */
export type Quantity = {
  readonly kind: 'quantity';
  /** JSON pointer of the value in build.json. */
  readonly from: string;
  /** As it stands there; of a list its length, of a place in a list that place. */
  readonly value: number;
  readonly form: Form;
  readonly text: string;
  /** Symbol of the unit, or none where the head of a column has it. */
  readonly unit: string;
  /** A length in inches as well, shown where the document says so. */
  readonly inches: { readonly form: Form; readonly text: string } | null;
};

export type Inline =
  /** Fixed text out of `texts.ts`. */
  | { readonly kind: 'words'; readonly text: string; readonly strong?: true }
  /** What somebody typed: names, notes. Shown as it is, markup and all, in either direction. */
  | { readonly kind: 'free'; readonly text: string; readonly strong?: true }
  /** Digits of a file's hash. */
  | { readonly kind: 'hash'; readonly text: string }
  | (Quantity & { readonly strong?: true })
  /** A box to tick. */
  | { readonly kind: 'tick' }
  /** A line to write on. */
  | { readonly kind: 'line'; readonly widthMm: number };

export type Inlines = readonly Inline[];

export type Column = {
  readonly head: Inlines;
  readonly align: 'start' | 'end' | 'middle';
  /** Width against the other columns. */
  readonly share: number;
};

export type Table = {
  readonly kind: 'table';
  /** Stands over the table, again on every page it goes on to. */
  readonly title: Inlines | null;
  readonly columns: readonly Column[];
  /** A cell without inlines is there to be written in. */
  readonly rows: readonly (readonly Inlines[])[];
  /** Rows high enough to write in. */
  readonly forWriting: boolean;
  /** Width of the page it takes, a share of one. */
  readonly share: number;
};

export type Picture = {
  readonly kind: 'picture';
  /** Text of an SVG file. */
  readonly svg: string;
  /** For who cannot see it. */
  readonly told: Inlines;
  readonly caption: Inlines | null;
  /** On the page, at the most. */
  readonly mostHeightMm: number;
};

export type Figure = {
  readonly label: Inlines;
  readonly value: Inlines;
  /** Under the value, small. */
  readonly detail: Inlines;
};

export type Block =
  | { readonly kind: 'heading'; readonly inlines: Inlines }
  | { readonly kind: 'paragraph'; readonly inlines: Inlines }
  /** Free text of several lines. */
  | { readonly kind: 'note'; readonly label: Inlines; readonly lines: readonly string[] }
  /** Short items with a box each, running on in lines. */
  | { readonly kind: 'list'; readonly title: Inlines; readonly items: readonly Inlines[] }
  /** What can hurt in the step that follows. */
  | { readonly kind: 'caution'; readonly title: Inlines; readonly items: readonly Inlines[] }
  /** A few large figures side by side. */
  | { readonly kind: 'figures'; readonly figures: readonly Figure[] }
  | Table
  | Picture
  /** Not torn apart by the end of a page; it must fit on one. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[] };

export type Section = {
  /** For links inside the file. */
  readonly id: string;
  /** Step of the work, from 1; null for what is none. */
  readonly step: number | null;
  /** In the list of steps; sections of one step share it. */
  readonly name: Inlines;
  readonly heading: Inlines;
  /** Begins on a page of its own, to be hung up where the step is done. */
  readonly newPage: boolean;
  readonly blocks: readonly Block[];
};

export type SheetDocument = {
  /** Language of the texts, as HTML tells it. */
  readonly language: string;
  readonly title: Inlines;
  /** The same without looks, for the title of a file. */
  readonly plainTitle: string;
  /** At the foot of every page, beside its number. */
  readonly footer: Inlines;
  /** `page {page} of {pages}`, in the document's language. */
  readonly pageWords: string;
  readonly inches: boolean;
  readonly sections: readonly Section[];
};
