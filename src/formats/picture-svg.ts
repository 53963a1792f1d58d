/**
 * A picture as SVG at true size: one unit is one millimeter, y is flipped here and nowhere else.
 * Tones, line weights and hatching of the roles are chosen here, geometry is not. Plain shapes,
 * pixels inside the file and text of a generic face: no script, no style sheet, nothing fetched.
 */
import type { Pen, Picture, Role, Shape } from '../drawing/picture/picture.js';
import type { Point2 } from '../geometry/vec.js';
import { trimmed } from './number.js';
import { png } from './png.js';
import { escaped } from './xml.js';

/** A hundredth of a millimeter is finer than any eye. */
const DECIMALS = 2;

type Look = {
  readonly tone: string;
  /** Lines over the tone, slanting up to the right or down. */
  readonly hatch?: { readonly tone: string; readonly slantDeg: 45 | -45 };
};

/** Lightness (L*) beside each tone: areas that meet differ by 8 or more. */
const LOOK: Readonly<Record<Role, Look>> = {
  sheet: { tone: '#ffffff' }, // 100
  ink: { tone: '#1f2426' }, // 14
  faint: { tone: '#6b7173' }, // 47
  line: { tone: '#3a4144' }, // 27
  water: { tone: '#dbe7ea' }, // 91
  surface: { tone: '#2f5563' }, // 34
  wood: { tone: '#e9d9bd' }, // 87
  wetWood: { tone: '#b9a583' }, // 69
  lip: { tone: '#f2f5f5' }, // 96
  wetLip: { tone: '#c4d3d7' }, // 84
  metal: { tone: '#5b6064' }, // 40
  bar: { tone: '#9db1b5' }, // 71
  grid: { tone: '#cdd3d5' }, // 84
  good: { tone: '#e7efe6', hatch: { tone: '#6f9176', slantDeg: 45 } }, // 94, 57
  warn: { tone: '#f6e3da', hatch: { tone: '#a5532f', slantDeg: -45 } }, // 92, 45
};

/** Line weights, mm. */
const WEIGHT: Readonly<Record<Pen, string>> = { hair: '0.15', fine: '0.3', bold: '0.7' };
const DASHES = '2 1.2';
const HATCH_MM = '1.6';

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
  line: ({ points, role, pen, closed, dashed }, place) =>
    tag(
      closed ? 'polygon' : 'polyline',
      {
        points: spelledPoints(points, place),
        fill: 'none',
        ...strokeOf(role, pen),
        ...(dashed ? { 'stroke-dasharray': DASHES } : {}),
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
        ...(dashed ? { 'stroke-dasharray': DASHES } : {}),
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
  text: ({ at, text, sizeMm, anchor, bold, role }, place) => {
    const [x, y] = place(at);
    const attributes = {
      x,
      y,
      'font-size': mm(sizeMm),
      'text-anchor': anchor,
      ...(bold ? { 'font-weight': 'bold' } : {}),
      fill: LOOK[role].tone,
    };
    return `${tag('text', attributes)}${escaped(text)}</text>`;
  },
};

const spelledPoints = (points: readonly Point2[], place: Place): string =>
  points.map((p) => place(p).join(',')).join(' ');

const strokeOf = (role: Role, pen: Pen): Attributes => ({
  stroke: LOOK[role].tone,
  'stroke-width': WEIGHT[pen],
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
        width: HATCH_MM,
        height: HATCH_MM,
        patternTransform: `rotate(${hatch.slantDeg})`,
      }) +
        tag('rect', { width: HATCH_MM, height: HATCH_MM, fill: tone }, true) +
        tag('rect', { width: '0.3', height: HATCH_MM, fill: hatch.tone }, true) +
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
