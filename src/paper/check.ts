/**
 * Judges finished pages by what is written on them, as one would who prints them on the printer that was
 * measured and lays them together. It shares nothing with what laid them out.
 */
import type { PageItem } from '../formats/pdf.js';
import { pathPoints } from '../geometry/arcpath.js';
import { type Box, boxOf, type Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';
import type { PaperFile, PaperPage, Papers } from './paper-file.js';
import { textBox } from './words.js';

/** (x, y) ↦ (a·x + c·y + e, b·x + d·y + f). */
type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** What stands on a page: a line or text where it is written, or the window with the drawing in it. */
type Mark = {
  readonly points: readonly Point2[];
  /** Half the breadth of its ink. */
  readonly half: number;
  readonly isLine: boolean;
  readonly isText: boolean;
  /** Of a window: what is in it and how it is moved onto the page. */
  readonly group: { readonly item: Group; readonly onto: Matrix } | null;
};

type Group = Extract<PageItem, { kind: 'group' }>;

const NEAR_MM = 1e-6; // far above what arithmetic loses on a page, far below any printer
const STILL: Matrix = [1, 0, 0, 1, 0, 0];

/** What is wrong with the pages; empty when nothing is. */
export function checkPapers({ paper, files, checkLines }: Papers): string[] {
  const wrong = files.flatMap((file) => [
    ...file.pages.flatMap((page) => pageFlaws(file, page, paper)),
    ...file.sheets.flatMap((_, i) => sheetFlaws(file, i + 1, paper)),
  ]);
  const checks = files.filter((f) => f.kind === 'printer-check');
  const [check] = checks.flatMap((f) => f.pages);
  if (checks.length !== 1) return [...wrong, `${checks.length} pages that measure the printer`];
  const lines = marksOf(check.page.items, STILL).filter((m) => m.isLine);
  return [
    ...wrong,
    ...Object.entries(checkLines).flatMap(([way, [from, to]]) => {
      const want = way === 'across' ? paper.check.acrossMm : paper.check.alongMm;
      const drawn = lines.some(({ points: [p, q] }) => same(p, from) && same(q, to));
      return drawn && Math.abs(Math.hypot(to[0] - from[0], to[1] - from[1]) - want) < NEAR_MM
        ? []
        : [`the line ${way} is not ${want} mm`];
    }),
  ];
}

function pageFlaws(file: PaperFile, page: PaperPage, paper: Paper): string[] {
  const { widthMm, heightMm, items } = page.page;
  const marks = marksOf(items, STILL);
  const windows = marks.filter((m) => m.group !== null);
  const others = marks.filter((m) => m.group === null);
  const print = printing(page, paper, file.kind === 'printer-check');
  const where = `${file.file} page ${page.number}`;
  const clear: Box = [
    paper.marginMm,
    paper.marginMm,
    widthMm - paper.marginMm,
    heightMm - paper.marginMm,
  ];
  const off = marks.filter(({ points, half }) =>
    [points, points.map(print)].some((at) => !holds(clear, grownBox(boxOf(at), half))),
  );
  const over = windows.flatMap((w) =>
    others.filter((o) => overlap(boxOf(w.points), grownBox(boxOf(o.points), o.half))),
  );
  const texts = others.filter((o) => o.isText).map((o) => boxOf(o.points));
  const crowded = texts.filter((a, i) => texts.some((b, k) => k > i && overlap(a, b)));
  return [
    ...(crowded.length > 0 ? [`${where}: ${crowded.length} texts over others`] : []),
    ...(off.length > 0 ? [`${where}: ${off.length} things off the printable part`] : []),
    ...(over.length > 0 ? [`${where}: ${over.length} things over the drawing`] : []),
    ...[100, 101.6]
      .filter((mm) => !others.some((o) => o.isLine && isLevel(o.points.map(print), mm)))
      .map((mm) => `${where}: no bar of ${mm} mm`),
    ...windows.flatMap((w) => windowFlaws(w, page, print).map((flaw) => `${where}: ${flaw}`)),
    ...(windows.length === (file.kind === 'printer-check' ? 0 : 1)
      ? []
      : [`${where}: ${windows.length} windows`]),
  ];
}

/** Where a printer puts a point of a page; a turned page goes through it across. */
function printing(
  { page: { widthMm, heightMm } }: PaperPage,
  { acrossMm, check, printed }: Paper,
  isTrue: boolean,
): (p: Point2) => Point2 {
  const across = isTrue ? 1 : printed.acrossMm / check.acrossMm;
  const along = isTrue ? 1 : printed.alongMm / check.alongMm;
  const [ex, ey] = widthMm === acrossMm ? [across, along] : [along, across];
  return ([x, y]) => [widthMm / 2 + ex * (x - widthMm / 2), heightMm / 2 + ey * (y - heightMm / 2)];
}

/** The window shows what the page says, at true size where it says; crosses are drawn in it, whole. */
function windowFlaws(
  { group }: Mark,
  { drawingMm, atMm, crossesMm }: PaperPage,
  print: (p: Point2) => Point2,
): string[] {
  if (!group) return [];
  const { item, onto } = group;
  const [x0, y0, x1, y1] = drawingMm;
  const asked: readonly [Point2, Point2][] = [
    [[x0, y0], atMm],
    [
      [x1, y1],
      [atMm[0] + x1 - x0, atMm[1] + y1 - y0],
    ],
  ];
  const isTrue = asked.every(([p, q]) => same(print(applied(onto, p)), q));
  const shows = item.window?.every((v, i) => v === drawingMm[i]);
  const middles = item.items.flatMap((inner) => {
    if (inner.kind !== 'path' || inner.path.vertices.length !== 2) return [];
    const [p, q] = inner.path.vertices;
    return [
      {
        at: [(p.x + q.x) / 2, (p.y + q.y) / 2] as const,
        box: boxOf([
          [p.x, p.y],
          [q.x, q.y],
        ]),
      },
    ];
  });
  const undrawn = crossesMm.filter(
    (c) => middles.filter((m) => same(m.at, c) && holds(drawingMm, m.box)).length < 2,
  );
  return [
    ...(isTrue && shows ? [] : ['the drawing does not lie where it is said to']),
    ...(undrawn.length > 0 ? [`${undrawn.length} register crosses are not whole on it`] : []),
  ];
}

/** The windows of a drawing hold all of it; neighbors share the overlap and its crosses. */
function sheetFlaws(file: PaperFile, sheet: number, { overlapMm }: Paper): string[] {
  const { rows, columns, boxMm } = file.sheets[sheet - 1];
  const pages = file.pages.filter((p) => p.sheet === sheet);
  const where = `${file.file} drawing ${sheet}`;
  if (pages.length !== rows * columns) return [`${where}: ${pages.length} pages`];
  const at = (row: number, column: number) =>
    pages.find((p) => p.row === row && p.column === column);
  const joins = pages.flatMap((page) => [
    { page, next: at(page.row, page.column + 1), axis: 0 as const },
    { page, next: at(page.row + 1, page.column), axis: 1 as const },
  ]);
  const unshared = joins.filter(
    ({ page, next, axis }) => next && !isShared(page, next, axis, overlapMm),
  );
  const lost = pages.flatMap(inkBoxes).filter((box) => !holds(boxMm, box)).length;
  return [
    ...(covers(
      boxMm,
      pages.map((p) => p.drawingMm),
    )
      ? []
      : [`${where}: a part of it is on no page`]),
    ...(unshared.length > 0
      ? [`${where}: ${unshared.length} joins without overlap or crosses`]
      : []),
    ...(lost > 0 && file.kind !== 'printer-check' ? [`${where}: ${lost} lines beyond it`] : []),
  ];
}

/** Overlap as wide as asked, and in it the same crosses, two unless it is too short for two. */
function isShared(a: PaperPage, b: PaperPage, axis: 0 | 1, overlapMm: number): boolean {
  const [p, q] = [a.drawingMm, b.drawingMm];
  const zone: Box = [
    Math.max(p[0], q[0]),
    Math.max(p[1], q[1]),
    Math.min(p[2], q[2]),
    Math.min(p[3], q[3]),
  ];
  const wide = zone[2 + axis] - zone[axis];
  const long = zone[3 - axis] - zone[1 - axis];
  const inZone = (page: PaperPage) => page.crossesMm.filter((c) => holds(zone, [...c, ...c]));
  const [mine, others] = [inZone(a), inZone(b)];
  const both = mine.filter((c) => others.some((d) => same(c, d)));
  return (
    Math.abs(wide - overlapMm) < NEAR_MM && both.length >= (long > SHORT_MM + 2 * overlapMm ? 2 : 1)
  );
}

const SHORT_MM = 25; // an edge with room for one cross only

/** Every cell between all edges of all windows lies in one of them. */
function covers(box: Box, windows: readonly Box[]): boolean {
  const cuts = (low: 0 | 1): number[] => {
    const all = [box, ...windows].flatMap((w) => [w[low], w[low + 2]]);
    return all
      .map((v) => Math.min(box[low + 2], Math.max(box[low], v)))
      .sort((a, b) => a - b)
      .filter((v, i, list) => i === 0 || v - list[i - 1] > NEAR_MM);
  };
  const middles = (list: readonly number[]) => list.slice(1).map((v, i) => (v + list[i]) / 2);
  const ys = middles(cuts(1));
  return middles(cuts(0)).every((x) =>
    ys.every((y) => windows.some((w) => x > w[0] && x < w[2] && y > w[1] && y < w[3])),
  );
}

function inkBoxes({ page }: PaperPage): Box[] {
  return marksOf(page.items, STILL).flatMap(({ group }) =>
    group ? marksOf(group.item.items, STILL).map((m) => grownBox(boxOf(m.points), m.half)) : [],
  );
}

const CHORD_MM = 0.01;

/** Everything written, through all groups but those with a window. */
function marksOf(items: readonly PageItem[], onto: Matrix): Mark[] {
  const at = (points: readonly Point2[]) => points.map((p) => applied(onto, p));
  return items.flatMap((item): Mark[] => {
    if (item.kind === 'path') {
      const points = at(pathPoints(item.path, CHORD_MM));
      const isLine = item.path.vertices.length === 2;
      const half = (item.pen?.widthMm ?? 0) / 2;
      return [{ points, half, isLine, isText: false, group: null }];
    }
    if (item.kind === 'group') {
      const inner = times(onto, item.matrix);
      if (!item.window) return marksOf(item.items, inner);
      const points = cornersOf(item.window).map((p) => applied(inner, p));
      return [{ points, half: 0, isLine: false, isText: false, group: { item, onto: inner } }];
    }
    const points = at(cornersOf(boxOfItem(item)));
    return [{ points, half: 0, isLine: false, isText: item.kind === 'text', group: null }];
  });
}

function boxOfItem(item: Exclude<PageItem, { kind: 'path' | 'group' }>): Box {
  if (item.kind === 'text') return textBox(item);
  if (item.kind === 'image')
    return [item.at[0], item.at[1], item.at[0] + item.widthMm, item.at[1] + item.heightMm];
  const { center, radius } = item.circle;
  return [center[0] - radius, center[1] - radius, center[0] + radius, center[1] + radius];
}

const cornersOf = ([x0, y0, x1, y1]: Box): Point2[] => [
  [x0, y0],
  [x1, y1],
];

const applied = ([a, b, c, d, e, f]: Matrix, [x, y]: Point2): Point2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

/** First the second, then the first. */
const times = ([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix => [
  a * p + c * q,
  b * p + d * q,
  a * r + c * s,
  b * r + d * s,
  a * t + c * u + e,
  b * t + d * u + f,
];

const same = (p: Point2, q: Point2): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < NEAR_MM;

const isLevel = ([p, q]: readonly Point2[], lengthMm: number): boolean =>
  Math.abs(p[1] - q[1]) < NEAR_MM && Math.abs(Math.abs(q[0] - p[0]) - lengthMm) < NEAR_MM;

const grownBox = ([x0, y0, x1, y1]: Box, by: number): Box => [x0 - by, y0 - by, x1 + by, y1 + by];

const holds = (outer: Box, [x0, y0, x1, y1]: Box): boolean =>
  x0 >= outer[0] - NEAR_MM &&
  y0 >= outer[1] - NEAR_MM &&
  x1 <= outer[2] + NEAR_MM &&
  y1 <= outer[3] + NEAR_MM;

const overlap = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
