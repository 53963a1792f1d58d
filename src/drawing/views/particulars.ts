/** The particulars of a body: its sizes in a few lines. */
import type { Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { fitted, LINE_MM, spelled } from '../picture/words.js';
import { heading } from './frame.js';
import type { Greatests } from './greatest.js';
import type { ViewsInput } from './input.js';
import { length, millimeters } from './measure.js';

const TITLE_MM = 5.5;
/** Names in the first column, and shorter ones in a second. */
const NAME_MM = [31, 20] as const;
/** A column of names and values is at least so wide. */
export const LEAST_COLUMN_MM = 76;

const columnsIn = (widthMm: number): number => (widthMm >= 2 * LEAST_COLUMN_MM ? 2 : 1);

const COUNT = 7;

/** Height of the block, mm. */
export const particularsMm = (widthMm: number): number =>
  TITLE_MM + Math.ceil(COUNT / columnsIn(widthMm)) * LINE_MM + 2;

/** `at` is the upper left corner. */
export function particulars(
  { shape, properties, inches }: ViewsInput,
  { height, breadth, section }: Greatests,
  [left, top]: Point2,
  widthMm: number,
): Shape[] {
  const mm = (value: number) => (inches ? length(value, true) : `${millimeters(value)} mm`);
  const [centerX, , centerZ] = properties.centroidMm;
  const side = centerZ < 0 ? 'below' : 'above';
  const rows: readonly (readonly [string, string])[] = [
    ['length', mm(shape.lengthMm)],
    ['greatest height', `${mm(height.mm)} at ${millimeters(height.stationMm)}`],
    ['greatest breadth', `${mm(breadth.mm)} at ${millimeters(breadth.stationMm)}`],
    ['greatest section', `${spelled(section.mm2, 0)} mm² at ${millimeters(section.stationMm)}`],
    ['volume', `${spelled(properties.volumeMm3 / 1000, 1)} cm³`],
    ['center at', `${millimeters(centerX)}, ${millimeters(Math.abs(centerZ))} ${side} datum`],
    ['surface', `${spelled(properties.areaMm2 / 100, 1)} cm²`],
  ];
  const columns = columnsIn(widthMm);
  const perColumn = Math.ceil(COUNT / columns);
  const columnMm = widthMm / columns;
  return [
    ...heading(
      'Particulars',
      'of the finished body, at mm from the nose',
      [left, top - 4],
      widthMm,
    ),
    ...rows.flatMap(([what, value], i) => {
      const column = i < perColumn ? 0 : 1;
      const x = left + column * columnMm;
      const y = top - TITLE_MM - ((i % perColumn) + 0.72) * LINE_MM;
      const nameMm = NAME_MM[column];
      return [
        ...fitted(what, x, y, nameMm - 1),
        ...fitted(value, x + nameMm, y, columnMm - nameMm - (column + 1 < columns ? 2 : 0)),
      ];
    }),
  ];
}
