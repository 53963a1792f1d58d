/** Pictures as the pages of a PDF at true size: the same looks as in SVG, text in faces that go with the file. */
import type { Pen as LinePen, Picture, Role, Shape } from '../drawing/picture/picture.js';
import { polyline } from '../geometry/arcpath.js';
import { hatchLines } from '../geometry/hatch.js';
import { circleRing } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { type Faces, type PageItem, type Pen, pdf } from './pdf.js';
import { CHAIN_MM, DASHES_MM, HATCH, LOOK, WEIGHT_MM } from './picture-look.js';
import { png } from './png.js';

/** One page a picture, in their order. @throws Fault on no pictures and on a number that is not finite */
export const picturesPdf = (
  pictures: readonly Picture[],
  { title, faces }: { readonly title: string; readonly faces: Faces },
): Promise<Uint8Array> =>
  pdf(
    pictures.map(({ widthMm, heightMm, shapes }) => ({
      widthMm,
      heightMm,
      items: shapes.flatMap((shape) => ITEMS[shape.kind](shape as never, heightMm)),
    })),
    { title, faces },
  );

/** Of a disc, for the ends of its stripes. */
const SEGMENTS = 48;

type Makers = {
  readonly [K in Shape['kind']]: (
    shape: Extract<Shape, { kind: K }>,
    sheetHeightMm: number,
  ) => readonly PageItem[];
};

/** One entry a kind: a new kind of shape does not compile until it is drawn here. */
const ITEMS: Makers = {
  area: ({ points, role }, height) => filled(points, role, height),
  line: ({ points, role, pen, closed, dashed, chain }) => {
    const dashMm = dashed ? DASHES_MM : chain ? CHAIN_MM : null;
    return [traced(points, penOf(role, pen, dashMm), closed)];
  },
  lines: ({ lines, role, pen, dashed }) =>
    lines.map((points) => traced(points, penOf(role, pen, dashed ? DASHES_MM : null))),
  image: ({ at, widthMm, heightMm, raster }) => [
    { kind: 'image', at, widthMm, heightMm, png: png(raster) },
  ],
  disc: ({ center, radiusMm, role, pen }, height) => [
    ...hatched(circleRing(center, radiusMm, { segments: SEGMENTS }), role, height, () => ({
      kind: 'circle',
      circle: { center, radius: radiusMm },
      pen: null,
      fill: LOOK[role].tone,
    })),
    ...(pen
      ? [
          {
            kind: 'circle',
            circle: { center, radius: radiusMm },
            pen: penOf('line', pen, null),
          } as const,
        ]
      : []),
  ],
  text: ({ at, text, sizeMm, anchor, bold, role, turnDeg }) => [
    { kind: 'text', at, text, sizeMm, anchor, bold, tone: LOOK[role].tone, turnDeg: turnDeg ?? 0 },
  ],
};

const traced = (points: readonly Point2[], pen: Pen, closed = false): PageItem => ({
  kind: 'path',
  path: polyline(points, closed),
  pen,
});

const penOf = (role: Role, pen: LinePen, dashMm: readonly number[] | null): Pen => ({
  widthMm: WEIGHT_MM[pen],
  tone: LOOK[role].tone,
  ...(dashMm ? { dashMm } : {}),
});

const filled = (points: readonly Point2[], role: Role, height: number): PageItem[] =>
  hatched(points, role, height, () => ({
    kind: 'path',
    path: polyline(points, true),
    pen: null,
    fill: LOOK[role].tone,
  }));

/** The ground, and over it the stripes where an SVG has them: counted from the sheet's upper left corner. */
function hatched(
  outline: readonly Point2[],
  role: Role,
  height: number,
  ground: () => PageItem,
): PageItem[] {
  const { hatch } = LOOK[role];
  if (!hatch) return [ground()];
  const angle = (hatch.slantDeg * Math.PI) / 180;
  const lines = hatchLines(outline, {
    slantDeg: 90 - hatch.slantDeg,
    step: HATCH.stepMm,
    shift: height * Math.sin(angle) - HATCH.widthMm / 2,
  });
  const pen = { widthMm: HATCH.widthMm, tone: hatch.tone };
  return [ground(), ...lines.map((ends) => traced(ends, pen))];
}
