/**
 * A picture as SVG at true size: one unit is one millimeter, y is flipped here and nowhere else.
 * Plain shapes, pixels inside the file and text of a generic face: no script, no style sheet, nothing
 * fetched.
 */
import type { Pen, Picture, Role, Shape } from '../drawing/picture/picture.js';
import type { Point2 } from '../geometry/vec.js';
import { trimmed } from './number.js';
import { CHAIN_MM, DASHES_MM, HATCH, LOOK, WEIGHT_MM } from './picture-look.js';
import { png } from './png.js';
import { beginsAtRight } from './reading-order.js';
import { escaped } from './xml.js';

/** A hundredth of a millimeter is finer than any eye. */
const DECIMALS = 2;

/**
 * The picture as the text of an SVG file.
 * @throws Fault on a number that is not finite and on characters that XML cannot hold.
 */
export function pictureSvg(picture: Picture): string {
  const { widthMm, heightMm, shapes } = picture;
  const [width, height] = [mm(widthMm), mm(heightMm)];
  const place: Place = ([x, y]) => [mm(x), mm(heightMm - y)];
  return `${[
    tag('svg', {
      xmlns: 'http://www.w3.org/2000/svg',
      ...(shapes.some(({ kind }) => kind === 'image') ? { 'xmlns:xlink': XLINK } : {}),
      version: '1.1',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
      'font-family': 'sans-serif',
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
    }),
    `<title>${escaped(picture.title)}</title>`,
    `<desc>${escaped(picture.description)}</desc>`,
    ...hatches(shapes),
    ...shapes.map((shape) => WRITE[shape.kind](shape as never, place)),
    '</svg>',
  ].join('\n')}\n`;
}

/** SVG 1.1 names a picture by it; readers of SVG 2 still know it. */
const XLINK = 'http://www.w3.org/1999/xlink';

type Attributes = Readonly<Record<string, string>>;
type Place = (p: Point2) => readonly [x: string, y: string];
type Writers = {
  readonly [K in Shape['kind']]: (shape: Extract<Shape, { kind: K }>, place: Place) => string;
};

/** One entry a kind: a new kind of shape does not compile until it is written here. */
const WRITE: Writers = {
  area: ({ points, role }, place) =>
    tag('polygon', { points: spelledPoints(points, place), fill: fillOf(role) }, true),
  line: ({ points, role, pen, closed, dashed, chain }, place) =>
    tag(
      closed ? 'polygon' : 'polyline',
      {
        points: spelledPoints(points, place),
        fill: 'none',
        ...strokeOf(role, pen),
        ...(dashed ? { 'stroke-dasharray': DASHES_MM.join(' ') } : {}),
        ...(chain ? { 'stroke-dasharray': CHAIN_MM.join(' ') } : {}),
      },
      true,
    ),
  lines: ({ lines, role, pen, dashed }, place) =>
    tag(
      'path',
      {
        d: lines.map((points) => `M${spelledPoints(points, place)}`).join(''),
        fill: 'none',
        ...strokeOf(role, pen),
        ...(dashed ? { 'stroke-dasharray': DASHES_MM.join(' ') } : {}),
      },
      true,
    ),
  image: ({ at: [x, y], widthMm, heightMm, raster }, place) => {
    const [left, top] = place([x, y + heightMm]);
    const data = Buffer.from(png(raster)).toString('base64');
    return tag(
      'image',
      {
        x: left,
        y: top,
        width: mm(widthMm),
        height: mm(heightMm),
        preserveAspectRatio: 'none',
        'xlink:href': `data:image/png;base64,${data}`,
      },
      true,
    );
  },
  disc: ({ center, radiusMm, role, pen }, place) => {
    const [cx, cy] = place(center);
    const edge = pen ? strokeOf('line', pen) : {};
    return tag('circle', { cx, cy, r: mm(radiusMm), fill: fillOf(role), ...edge }, true);
  },
  text: ({ at, text, sizeMm, anchor, bold, role, turnDeg }, place) => {
    const [x, y] = place(at);
    const attributes = {
      x,
      y,
      'font-size': mm(sizeMm),
      // In a line that runs from the right the start is its right end.
      ...(beginsAtRight(text)
        ? { direction: 'rtl', 'text-anchor': OTHER_END[anchor] }
        : { 'text-anchor': anchor }),
      ...(bold ? { 'font-weight': 'bold' } : {}),
      fill: LOOK[role].tone,
      // With y downward a positive turn is clockwise.
      ...(turnDeg ? { transform: `rotate(${-turnDeg} ${x} ${y})` } : {}),
    };
    return `${tag('text', attributes)}${escaped(text)}</text>`;
  },
};

const OTHER_END = { start: 'end', middle: 'middle', end: 'start' } as const;

const spelledPoints = (points: readonly Point2[], place: Place): string =>
  points.map((p) => place(p).join(',')).join(' ');

const strokeOf = (role: Role, pen: Pen): Attributes => ({
  stroke: LOOK[role].tone,
  'stroke-width': mm(WEIGHT_MM[pen]),
});

const fillOf = (role: Role): string =>
  LOOK[role].hatch ? `url(#${hatchId(role)})` : LOOK[role].tone;

const hatchId = (role: Role): string => `hatch-${role}`;

/** The hatching of the roles that areas and discs use, in order of first use. */
function hatches(shapes: readonly Shape[]): string[] {
  const filled = shapes.flatMap((s) => (s.kind === 'area' || s.kind === 'disc' ? [s.role] : []));
  const patterns = [...new Set(filled)].flatMap((role) => {
    const { tone, hatch } = LOOK[role];
    if (!hatch) return [];
    return [
      tag('pattern', {
        id: hatchId(role),
        patternUnits: 'userSpaceOnUse',
        width: mm(HATCH.stepMm),
        height: mm(HATCH.stepMm),
        patternTransform: `rotate(${hatch.slantDeg})`,
      }) +
        tag('rect', { width: mm(HATCH.stepMm), height: mm(HATCH.stepMm), fill: tone }, true) +
        tag(
          'rect',
          { width: mm(HATCH.widthMm), height: mm(HATCH.stepMm), fill: hatch.tone },
          true,
        ) +
        '</pattern>',
    ];
  });
  return patterns.length > 0 ? [`<defs>${patterns.join('')}</defs>`] : [];
}

const mm = (value: number): string => trimmed(value, DECIMALS);

function tag(name: string, attributes: Attributes, empty = false): string {
  const spelled = Object.entries(attributes).map(([key, value]) => ` ${key}="${value}"`);
  return `<${name}${spelled.join('')}${empty ? '/' : ''}>`;
}
