/** What the lure weighs, item by item as bars, and stage by stage as a table. */
import type { Box } from '../../geometry/vec.js';
import type { FloatInput } from './input.js';
import { stroke } from './lure-view.js';
import type { Line, Shape } from './picture.js';
import { fitted, LINE_MM, spelled, words } from './words.js';

type Row = { readonly name: string; readonly massG: number };

/** Heights of a row, mm: as roomy as there is room for, between these. */
const ROWS_MM = [LINE_MM, 6.4] as const;
const TITLE_MM = 8;
/** Columns of the budget, mm, counted from the right: share, grams; and the name from the left. */
const SHARE_MM = 15;
const GRAMS_MM = 16;
const NAME_MM = 34;

/** Items by falling mass; what does not fit is added up in one row; the sum below. */
export function budgetPanel(items: readonly Row[], panel: Box): readonly Shape[] {
  const total = items.reduce((sum, { massG }) => sum + massG, 0);
  const room = panel[3] - TITLE_MM - panel[1];
  const most = Math.floor(room / ROWS_MM[0]) - 1;
  const rows = gathered(items, most);
  const step = Math.min(ROWS_MM[1], room / (rows.length + 1));
  const [grams, share] = [panel[2] - SHARE_MM, panel[2]];
  const [from, to] = [panel[0] + NAME_MM, grams - GRAMS_MM];
  const heaviest = Math.max(...rows.map(({ massG }) => massG), 1e-9);
  const line = (row: Row, i: number, bold: boolean): Shape[] => {
    const y = panel[3] - TITLE_MM - step * (i + 0.72);
    return [
      ...fitted(row.name, panel[0], y, NAME_MM - 2, { bold }),
      words(`${spelled(row.massG, 2)}`, grams, y, { anchor: 'end', bold }),
      words(`${spelled(total > 0 ? (100 * row.massG) / total : 0, 0)} %`, share, y, {
        anchor: 'end',
        bold,
      }),
    ];
  };
  const bars = rows.flatMap((row, i): Shape[] => {
    const y = panel[3] - TITLE_MM - step * (i + 0.72);
    const end = from + ((to - from) * Math.max(0, row.massG)) / heaviest;
    return end - from < 0.05
      ? []
      : [
          {
            kind: 'area',
            points: [
              [from, y - 0.3],
              [end, y - 0.3],
              [end, y + 2.6],
              [from, y + 2.6],
            ],
            role: 'bar',
          },
        ];
  });
  const sumY = panel[3] - TITLE_MM - step * rows.length;
  return [
    words('Mass budget', panel[0], panel[3] - 4, { size: 'title', bold: true }),
    words('g', grams, panel[3] - 4, { anchor: 'end', role: 'faint' }),
    level(from, from, panel[3] - TITLE_MM, sumY),
    ...bars,
    ...rows.flatMap((row, i) => line(row, i, false)),
    level(panel[0], panel[2], sumY, sumY),
    ...line({ name: 'together', massG: total }, rows.length, true),
  ];
}

const level = (x0: number, x1: number, y0: number, y1: number): Line =>
  stroke(
    [
      [x0, y0],
      [x1, y1],
    ],
    'line',
    'hair',
  );

/** At most so many rows by falling mass (ties by name), the lightest put together. */
export function gathered(items: readonly Row[], most: number): readonly Row[] {
  const sorted = [...items].sort(
    (a, b) => b.massG - a.massG || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0),
  );
  if (sorted.length <= most) return sorted;
  const rest = sorted.slice(most - 1);
  const massG = rest.reduce((sum, item) => sum + item.massG, 0);
  return [...sorted.slice(0, most - 1), { name: `${rest.length} others`, massG }];
}

/** Stages that are never left out at the end: the last coat and the rigged lure. */
const LAST_STAGES = 2;

/** Stage by stage: name, grams on the scale, spread. Too many: those before the last coat are left out, and it says how many. */
export function stagesPanel(stages: FloatInput['stages'], panel: Box): readonly Shape[] {
  const room = panel[3] - TITLE_MM - panel[1];
  const most = Math.floor(room / ROWS_MM[0]);
  const first = stages.length <= most ? stages.length : most - LAST_STAGES - 1;
  const last = stages.length <= most ? stages.length : stages.length - LAST_STAGES;
  const step = Math.min(ROWS_MM[1], room / Math.max(1, Math.min(stages.length, most)));
  const y = (i: number) => panel[3] - TITLE_MM - step * (i + 0.72);
  const grams = panel[2] - 15;
  const row = (
    { name, massG, spreadG }: FloatInput['stages'][number],
    at: number,
    bold: boolean,
  ) => [
    ...fitted(name, panel[0], at, grams - 16 - panel[0], { bold }),
    words(spelled(massG, 2), grams, at, { anchor: 'end', bold }),
    words(spelled(spreadG, 2), panel[2], at, { anchor: 'end', bold }),
  ];
  return [
    words('Stages', panel[0], panel[3] - 4, { size: 'title', bold: true }),
    words('g', grams, panel[3] - 4, { anchor: 'end', role: 'faint' }),
    words('± g', panel[2], panel[3] - 4, { anchor: 'end', role: 'faint' }),
    ...(last > first
      ? [words(`${last - first} between`, panel[0], y(first), { role: 'faint' })]
      : []),
    ...stages.flatMap((stage, i): Shape[] => {
      if (i >= first && i < last) return [];
      const at = y(i < first ? i : i - last + first + (last > first ? 1 : 0));
      return row(stage, at, i === stages.length - 1);
    }),
  ];
}
