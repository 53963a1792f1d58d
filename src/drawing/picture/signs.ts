/** Small signs that mark a picture: centers, water level, scale bar, dimensions. */
import { cosSinDeg, type Point2 } from '../../geometry/vec.js';
import { stroke } from './lure-view.js';
import type { Area, Line, Shape } from './picture.js';
import { words } from './words.js';

/** Radii of the signs of centers, mm: B is the larger, so that it shows around a G that lies on it. */
const CENTER_MM = 1.5;
const BUOYANCY_MM = 2.2;

/** Center of gravity: a disc with two quarters blackened, as draftsmen mark it. */
export function gravitySign([x, y]: Point2): Shape[] {
  const quarter = (startDeg: number): Area => ({
    kind: 'area',
    points: [
      [x, y],
      ...Array.from({ length: 9 }, (_, i): Point2 => {
        const [c, s] = cosSinDeg(startDeg + (90 * i) / 8);
        return [x + CENTER_MM * c, y + CENTER_MM * s];
      }),
    ],
    role: 'ink',
  });
  return [
    { kind: 'disc', center: [x, y], radiusMm: CENTER_MM, role: 'sheet', pen: 'fine', clear: true },
    quarter(0),
    quarter(180),
  ];
}

/** Center of buoyancy: a ring with a dot. */
export const buoyancySign = (center: Point2): Shape[] => [
  { kind: 'disc', center, radiusMm: BUOYANCY_MM, role: 'sheet', pen: 'fine', clear: true },
  { kind: 'disc', center, radiusMm: 0.6, role: 'ink', pen: null },
];

/** Metacenter: a small diamond. */
export const metacenterSign = ([x, y]: Point2): Shape[] => {
  const d = CENTER_MM;
  const points: Point2[] = [
    [x + d, y],
    [x, y + d],
    [x - d, y],
    [x, y - d],
  ];
  return [
    { kind: 'area', points, role: 'sheet' },
    { ...stroke(points, 'line', 'fine'), closed: true, clear: true },
  ];
};

/** Where the sign of the water level stands, from the left edge of its view: out of the way of labels, mm. */
export const LEVEL_SIGN_MM = 3;

/** Water level: a triangle standing on the surface, two strokes under it. */
export function levelSign([x, y]: Point2): Shape[] {
  const points: Point2[] = [
    [x, y],
    [x + 1.6, y + 2.6],
    [x - 1.6, y + 2.6],
  ];
  const under = [1.1, 0.6].map(
    (half, i): Line => ({
      ...stroke(
        [
          [x - half, y - 0.8 * (i + 1)],
          [x + half, y - 0.8 * (i + 1)],
        ],
        'surface',
        'fine',
      ),
      clear: true,
    }),
  );
  return [
    { kind: 'area', points, role: 'sheet' },
    { ...stroke(points, 'surface', 'fine'), closed: true, clear: true },
    ...under,
  ];
}

/** A bar as long as `trueMm` at the scale, from its left end, with its length behind it. */
export function scaleBar([x, y]: Point2, trueMm: number, scale: number): Shape[] {
  const length = trueMm * scale;
  const half = length / 2;
  const box = (from: number, to: number, role: Area['role']): Area => ({
    kind: 'area',
    points: [
      [from, y],
      [to, y],
      [to, y + 1.4],
      [from, y + 1.4],
    ],
    role,
  });
  return [
    box(x, x + length, 'sheet'),
    box(x, x + half, 'ink'),
    { ...stroke(box(x, x + length, 'sheet').points, 'line', 'fine'), closed: true },
    words(`${trueMm} mm`, x + length + 1.5, y - 0.3),
  ];
}

/** A piece of a circle between two directions, degrees counter-clockwise from the right. */
export function arcLine([x, y]: Point2, radiusMm: number, fromDeg: number, toDeg: number): Line {
  const pieces = Math.max(2, Math.ceil(Math.abs(toDeg - fromDeg) / 3));
  const points = Array.from({ length: pieces + 1 }, (_, i): Point2 => {
    const [c, s] = cosSinDeg(fromDeg + ((toDeg - fromDeg) * i) / pieces);
    return [x + radiusMm * c, y + radiusMm * s];
  });
  return { ...stroke(points, 'line', 'hair'), clear: true };
}
