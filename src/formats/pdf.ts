/**
 * Pages at true size as PDF: millimeters from the lower left corner of a page, y up, turned into points
 * here and nowhere else. The door to pdfkit for whatever is drawn. Text is set in the faces that are
 * given, embedded as far as it is used; the same pages give the same bytes.
 */
import PDFDocument from 'pdfkit';
import {
  type ArcPath,
  arcOf,
  type Circle,
  type Segment,
  segmentsOf,
  sweep,
} from '../geometry/arcpath.js';
import type { Box, Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { shownPieces } from './reading-order.js';

/** Contents of TrueType files. */
export type Faces = { readonly regular: Uint8Array; readonly bold: Uint8Array };

/** Points of 1/72 inch in a millimeter. */
export const POINTS_PER_MM = 72 / 25.4;

/** A line of so many millimeters in a tone of CSS (`#rrggbb`), dashed by lengths of marks and gaps by turns. */
export type Pen = {
  readonly widthMm: number;
  readonly tone: string;
  readonly dashMm?: readonly number[];
};

export type PageItem =
  | {
      readonly kind: 'path';
      readonly path: ArcPath;
      readonly pen: Pen | null;
      /** Tone of the inside; left out or null: not filled. */
      readonly fill?: string | null;
    }
  | {
      readonly kind: 'circle';
      readonly circle: Circle;
      readonly pen: Pen | null;
      readonly fill?: string | null;
    }
  | {
      readonly kind: 'text';
      /** On the baseline, at the end the anchor names. */
      readonly at: Point2;
      readonly text: string;
      /** Size of the letters as printers count it. */
      readonly sizeMm: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly bold?: boolean;
      readonly tone: string;
      /** Counter-clockwise about `at`. */
      readonly turnDeg?: number;
    }
  | {
      readonly kind: 'image';
      /** Lower left corner. */
      readonly at: Point2;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly png: Uint8Array;
    }
  | {
      /** Items in a frame of their own, moved onto the page, and no more of them than the window shows. */
      readonly kind: 'group';
      /** (x, y) ↦ (a·x + c·y + e, b·x + d·y + f), mm. */
      readonly matrix: readonly [a: number, b: number, c: number, d: number, e: number, f: number];
      /** In the frame of the items; null: all is shown. */
      readonly window: Box | null;
      readonly items: readonly PageItem[];
    };

export type Page = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly PageItem[];
};

/**
 * A document of true-size pages. Viewers are told not to scale it when it is printed.
 * @throws Fault on no pages or a number that is not finite.
 */
export async function pdf(
  pages: readonly Page[],
  { title, faces }: { readonly title: string; readonly faces: Faces },
): Promise<Uint8Array> {
  if (pages.length === 0) throw new Fault(`no pages in ${title}`);
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    // No face of the library's own is read.
    font: null as unknown as string,
    info: { Title: title, ...UNDATED },
  });
  const whole = collected(doc);
  doc.registerFont('regular', Buffer.from(faces.regular));
  doc.registerFont('bold', Buffer.from(faces.bold));
  unscaled(doc);
  for (const { widthMm, heightMm, items } of pages) {
    doc.addPage({ size: [points(widthMm), points(heightMm)], margin: 0 });
    doc.save();
    // Millimeters with y up, against the library's points with y down.
    doc.transform(POINTS_PER_MM, 0, 0, -POINTS_PER_MM, 0, points(heightMm));
    for (const item of items) drawn(doc, item);
    doc.restore();
  }
  doc.end();
  return whole;
}

type Doc = InstanceType<typeof PDFDocument>;

/** Same bytes on every day: the date is the one DOS counts from. */
export const UNDATED = {
  CreationDate: new Date(Date.UTC(1980, 0, 1)),
  ModDate: new Date(Date.UTC(1980, 0, 1)),
} as const;

const points = (mm: number): number => {
  if (!Number.isFinite(mm)) throw new Fault(`number ${mm} on a page`);
  return mm * POINTS_PER_MM;
};

/** The bytes of a document, once it is ended. */
export function collected(doc: Doc): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
}

/** PDF 32000-1:2008, 12.2: /PrintScaling /None. The library has no option for it. */
export function unscaled(doc: Doc): void {
  const own = doc as unknown as { _root: { data: Record<string, unknown> } };
  own._root.data.ViewerPreferences = doc.ref({ PrintScaling: 'None' });
}

function drawn(doc: Doc, item: PageItem): void {
  switch (item.kind) {
    case 'path':
      traced(doc, item.path);
      inked(doc, item);
      return;
    case 'circle':
      doc.circle(...(item.circle.center as [number, number]), finite(item.circle.radius));
      inked(doc, item);
      return;
    case 'text':
      written(doc, item);
      return;
    case 'image': {
      const [x, y] = item.at;
      doc.save();
      doc.transform(1, 0, 0, -1, finite(x), finite(y + item.heightMm));
      doc.image(Buffer.from(item.png), 0, 0, { width: item.widthMm, height: item.heightMm });
      doc.restore();
      return;
    }
    case 'group': {
      doc.save();
      doc.transform(
        ...(item.matrix.map(finite) as [number, number, number, number, number, number]),
      );
      if (item.window) {
        const [minX, minY, maxX, maxY] = item.window;
        doc.rect(minX, minY, maxX - minX, maxY - minY).clip();
      }
      for (const inner of item.items) drawn(doc, inner);
      doc.restore();
    }
  }
}

const finite = (value: number): number => {
  if (!Number.isFinite(value)) throw new Fault(`number ${value} on a page`);
  return value;
};

function inked(
  doc: Doc,
  { pen, fill }: { readonly pen: Pen | null; readonly fill?: string | null },
): void {
  if (pen) {
    doc.lineWidth(pen.widthMm).lineCap('round').lineJoin('round');
    // The library takes a list of lengths; its types know of one only.
    if (pen.dashMm) doc.dash([...pen.dashMm] as unknown as number, {});
    else doc.undash();
  }
  if (pen && fill) doc.fillAndStroke(fill, pen.tone);
  else if (pen) doc.stroke(pen.tone);
  else if (fill) doc.fill(fill);
}

function traced(doc: Doc, path: ArcPath): void {
  const segments = segmentsOf(path);
  const { x, y } = path.vertices[0];
  doc.moveTo(finite(x), finite(y));
  for (const segment of segments) {
    if (segment.bulge === 0) doc.lineTo(finite(segment.to[0]), finite(segment.to[1]));
    else curved(doc, segment);
  }
  if (path.closed) doc.closePath();
}

/** Largest angle one Bézier curve stands for: it then leaves a circle by 4e-6 of its radius. */
const MOST_TURN = Math.PI / 4;

/** An arc as cubic curves, their handles 4/3·tan(θ/4) of the radius long. */
function curved(doc: Doc, segment: Segment): void {
  const { center, radius } = arcOf(segment);
  const whole = sweep(segment.bulge);
  const pieces = Math.ceil(Math.abs(whole) / MOST_TURN);
  const turn = whole / pieces;
  const handle = (4 / 3) * Math.tan(turn / 4) * radius;
  const start = Math.atan2(segment.from[1] - center[1], segment.from[0] - center[0]);
  for (let i = 0; i < pieces; i++) {
    const [a, b] = [start + i * turn, start + (i + 1) * turn];
    const on = (angle: number): Point2 => [
      center[0] + radius * Math.cos(angle),
      center[1] + radius * Math.sin(angle),
    ];
    const [from, to] = [on(a), i === pieces - 1 ? segment.to : on(b)];
    doc.bezierCurveTo(
      finite(from[0] - handle * Math.sin(a)),
      finite(from[1] + handle * Math.cos(a)),
      finite(to[0] + handle * Math.sin(b)),
      finite(to[1] - handle * Math.cos(b)),
      finite(to[0]),
      finite(to[1]),
    );
  }
}

function written(
  doc: Doc,
  { at, text, sizeMm, anchor, bold, tone, turnDeg }: Extract<PageItem, { kind: 'text' }>,
): void {
  const pieces = shownPieces(text);
  doc.font(bold ? 'bold' : 'regular').fontSize(sizeMm);
  // One piece that begins at its place needs no measuring, which is slow.
  const isPlaced = anchor === 'start' && pieces.length === 1;
  const widths = isPlaced ? [0] : pieces.map((piece) => doc.widthOfString(piece));
  const width = widths.reduce((sum, w) => sum + w, 0);
  const turn = ((turnDeg ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  doc.save();
  // The library writes with y down.
  doc.transform(cos, sin, sin, -cos, finite(at[0]), finite(at[1]));
  doc.fillColor(tone);
  let left = anchor === 'start' ? 0 : anchor === 'end' ? -width : -width / 2;
  pieces.forEach((piece, i) => {
    doc.text(piece, left, 0, { lineBreak: false, baseline: 'alphabetic' });
    left += widths[i];
  });
  doc.restore();
}
