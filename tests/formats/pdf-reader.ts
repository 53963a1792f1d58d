/** Reads PDF with pdfjs-dist, for tests: what stands on a page in mm from its lower left, y up. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Box, Point2 } from '../../src/geometry/vec.js';

const MM = 25.4 / 72;
const CALLS = new Map(Object.entries(OPS).map(([name, code]) => [code as number, name]));

export type ReadPath = {
  /** Corners and, where it is curved, 16 points to each curve. */
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** Null: not drawn along. */
  readonly penMm: number | null;
  readonly dashMm: readonly number[];
  readonly stroke: string;
  readonly fill: string | null;
  /** The window it is seen through; null: the whole page. */
  readonly window: Box | null;
};

export type ReadText = {
  readonly text: string;
  readonly at: Point2;
  readonly sizeMm: number;
  readonly turnDeg: number;
  readonly widthMm: number;
};

export type ReadPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly paths: readonly ReadPath[];
  readonly texts: readonly ReadText[];
  /** Calls of the page's drawing, by the names of pdf.js, with their arguments. */
  readonly calls: readonly { readonly name: string; readonly args: readonly unknown[] }[];
};

export type ReadPdf = {
  readonly title: string;
  readonly printScaling: unknown;
  readonly dates: readonly string[];
  readonly pages: readonly ReadPage[];
};

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const doc = await task.promise;
  const info = (await doc.getMetadata()).info as Record<string, string>;
  const preferences = (await doc.getViewerPreferences()) as Record<string, unknown> | null;
  const pages: ReadPage[] = [];
  for (let i = 1; i <= doc.numPages; i++) {
    const page = await doc.getPage(i);
    const [x0, y0, x1, y1] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    pages.push({
      widthMm: (x1 - x0) * MM,
      heightMm: (y1 - y0) * MM,
      paths: pathsOf(fnArray, argsArray),
      texts: items.flatMap((item) => ('str' in item && item.str.trim() ? [textOf(item)] : [])),
      calls: fnArray.map((code, k) => ({
        name: CALLS.get(code) ?? String(code),
        args: argsArray[k] ?? [],
      })),
    });
  }
  await task.destroy();
  return {
    title: info.Title,
    printScaling: preferences?.PrintScaling,
    dates: [info.CreationDate, info.ModDate],
    pages,
  };
}

function textOf(item: { str: string; transform: number[]; width: number }): ReadText {
  const [a, b, , , e, f] = item.transform;
  return {
    text: item.str,
    at: [e * MM, f * MM],
    sizeMm: Math.hypot(a, b) * MM,
    turnDeg: (Math.atan2(b, a) * 180) / Math.PI,
    widthMm: item.width * MM,
  };
}

type Matrix = readonly number[];
type State = {
  readonly matrix: Matrix;
  readonly penMm: number;
  readonly dash: readonly number[];
  readonly stroke: string;
  readonly fill: string;
  readonly window: Box | null;
};

function pathsOf(operators: readonly number[], args: readonly unknown[]): ReadPath[] {
  let state: State = {
    matrix: [MM, 0, 0, MM, 0, 0],
    penMm: 1,
    dash: [],
    stroke: '#000000',
    fill: '#000000',
    window: null,
  };
  const stack: State[] = [];
  const paths: ReadPath[] = [];
  let clips = false;
  operators.forEach((operator, i) => {
    const given = args[i] as unknown[];
    switch (operator) {
      case OPS.save:
        stack.push(state);
        break;
      case OPS.restore:
        state = stack.pop() ?? state;
        break;
      case OPS.transform:
        state = { ...state, matrix: product(state.matrix, given as number[]) };
        break;
      case OPS.setLineWidth:
        state = { ...state, penMm: given[0] as number };
        break;
      case OPS.setDash:
        state = { ...state, dash: given[0] as number[] };
        break;
      case OPS.setStrokeRGBColor:
        state = { ...state, stroke: String(given[0]) };
        break;
      case OPS.setFillRGBColor:
        state = { ...state, fill: String(given[0]) };
        break;
      case OPS.clip:
      case OPS.eoClip:
        clips = true;
        break;
      case OPS.constructPath: {
        const [paint, [data]] = given as [number, [ArrayLike<number>]];
        const { points, closed } = traced(data, state.matrix);
        if (clips) state = { ...state, window: meet(state.window, boxOf(points)) };
        else paths.push(pathOf(paint, points, closed, state));
        clips = false;
      }
    }
  });
  return paths;
}

function pathOf(paint: number, points: Point2[], closed: boolean, state: State): ReadPath {
  const scale = Math.sqrt(Math.abs(det(state.matrix)));
  const strokes = [OPS.stroke, OPS.closeStroke, OPS.fillStroke, OPS.closeFillStroke];
  const fills = [OPS.fill, OPS.eoFill, OPS.fillStroke, OPS.closeFillStroke];
  return {
    points,
    closed,
    penMm: strokes.includes(paint) ? state.penMm * scale : null,
    dashMm: state.dash.map((v) => v * scale),
    stroke: state.stroke,
    fill: fills.includes(paint) ? state.fill : null,
    window: state.window,
  };
}

const CURVE_POINTS = 16;

/** pdf.js keeps a path as one list: 0 move, 1 line, 2 curve, 4 close, each with its numbers behind it. */
function traced(data: ArrayLike<number>, matrix: Matrix): { points: Point2[]; closed: boolean } {
  const points: Point2[] = [];
  let closed = false;
  const at = (k: number): Point2 => [data[k], data[k + 1]];
  let last: Point2 = [0, 0];
  for (let k = 0; k < data.length; ) {
    const kind = data[k++];
    if (kind === 4) {
      closed = true;
    } else if (kind === 2) {
      const [a, b, c] = [at(k), at(k + 2), at(k + 4)];
      for (let s = 1; s <= CURVE_POINTS; s++)
        points.push(onCurve([last, a, b, c], s / CURVE_POINTS));
      last = c;
      k += 6;
    } else if (kind === 0 || kind === 1) {
      last = at(k);
      points.push(last);
      k += 2;
    } else throw new Error(`path of kind ${kind}`);
  }
  return { points: points.map((p) => applied(matrix, p)), closed };
}

function onCurve(ends: readonly Point2[], t: number): Point2 {
  const u = 1 - t;
  const weights = [u ** 3, 3 * u * u * t, 3 * u * t * t, t ** 3];
  return [0, 1].map((k) => ends.reduce((sum, p, i) => sum + weights[i] * p[k], 0)) as [
    number,
    number,
  ];
}

const det = ([a, b, c, d]: Matrix): number => a * d - b * c;

const applied = ([a, b, c, d, e, f]: Matrix, [x, y]: Point2): Point2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

const product = ([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix => [
  a * p + c * q,
  b * p + d * q,
  a * r + c * s,
  b * r + d * s,
  a * t + c * u + e,
  b * t + d * u + f,
];

const boxOf = (points: readonly Point2[]): Box => [
  Math.min(...points.map((p) => p[0])),
  Math.min(...points.map((p) => p[1])),
  Math.max(...points.map((p) => p[0])),
  Math.max(...points.map((p) => p[1])),
];

const meet = (a: Box | null, b: Box): Box =>
  a === null
    ? b
    : [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.min(a[2], b[2]), Math.min(a[3], b[3])];
