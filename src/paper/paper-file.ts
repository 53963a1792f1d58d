/** True-scale paper: a file with its pages, and what each page shows of which drawing. */
import type { Page, PageItem } from '../formats/pdf.js';
import type { Box, Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';

export type PaperKind =
  | 'template'
  | 'face'
  | 'gauge'
  | 'round-over-map'
  | 'wire'
  | 'lip'
  | 'printer-check';

/** What a file is and says, whatever paper it is on. */
export type Leaflet = {
  /** Where it is in the set, `.pdf` and all. */
  readonly file: string;
  readonly kind: PaperKind;
  /** Null for what belongs to a run. */
  readonly pattern: string | null;
  readonly title: string;
  /** Null where nothing is cut along its lines. */
  readonly kerf: 'not in it' | null;
  /** Sentences that stand on every page. */
  readonly notes: readonly string[];
};

/** Lines and words at true size, mm, y up, and the box that holds all their ink. */
export type Sketch = { readonly items: readonly PageItem[]; readonly box: Box };

/** A bar to lay a rule on, in the page's frame before correction. */
export type Bar = {
  readonly lengthMm: number;
  readonly fromMm: Point2;
  readonly toMm: Point2;
};

/**
 * A page. A point of the drawing lies on it at atMm + (point − (x0, y0)) from the page's lower left
 * corner, before correction; (x0, y0) is the lower left of the part that the page shows.
 */
export type PaperPage = {
  /** Counts from 1 through the file. */
  readonly number: number;
  /** Of the file's sketches, from 1. */
  readonly sheet: number;
  /** From 1: rows from the top down, columns from the left. */
  readonly row: number;
  readonly column: number;
  readonly drawingMm: Box;
  readonly atMm: Point2;
  /** Register crosses on it, in the frame of the drawing. */
  readonly crossesMm: readonly Point2[];
  readonly bars: readonly Bar[];
  /** Ready to be written, correction and all. */
  readonly page: Page;
};

/** One drawing on as many pages as it needs. */
export type PaperSheet = {
  readonly rows: number;
  readonly columns: number;
  /** What its pages show together. */
  readonly boxMm: Box;
};

export type PaperFile = Leaflet & {
  readonly sheets: readonly PaperSheet[];
  readonly pages: readonly PaperPage[];
};

/** The lines of the page that measures the printer, in the page's frame. */
export type CheckLines = {
  readonly across: readonly [Point2, Point2];
  readonly along: readonly [Point2, Point2];
};

export type Papers = {
  readonly paper: Paper;
  readonly files: readonly PaperFile[];
  readonly checkLines: CheckLines;
};
