/** One lure at rest on the water, or hanging in it, on one sheet: how it lies, how it rights itself, what it weighs. */
import type { Attitude } from '../../float/attitude.js';
import type { Verdict } from '../../float/verdict.js';
import type { Box } from '../../geometry/vec.js';
import { frontPanel } from './front-panel.js';
import type { FloatInput } from './input.js';
import { hangs } from './lure-view.js';
import { budgetPanel, stagesPanel } from './mass-panel.js';
import { type Picture, SHEET, type Shape, textWidthMm } from './picture.js';
import { rightingPanel } from './righting-panel.js';
import { seenLure } from './seen-lure.js';
import { headed, LEFT, MARGIN_MM, RIGHT, rule, sheet } from './sheet.js';
import { sidePanel, smallView } from './side-panel.js';
import { movingWords, speedWords } from './speed-words.js';
import { sideView } from './view.js';
import { fitted, SIZES, shortened, spelled, words } from './words.js';

/** Heights on the sheet: line under the figures, foot of the views, head of the tables. */
const FIGURES_Y = 168;
const VIEWS: readonly [number, number] = [88, 165];
const TABLES: readonly [number, number] = [MARGIN_MM, 81];
/** Width of the view from ahead, and the gap between columns. */
const FRONT_MM = 70;
const GAP_MM = 10;
/** Most other attitudes that are drawn, and the width of their column. */
const MOST_OTHERS = 2;
const OTHERS_MM = 44;

export function floatPicture(input: FloatInput): Picture {
  const { name, version, attitude, righting, items, stages } = input;
  const front: Box = [RIGHT - FRONT_MM, VIEWS[0], RIGHT, VIEWS[1]];
  const aside = input.others.length > 0 ? OTHERS_MM + GAP_MM : 0;
  const side: Box = [LEFT, VIEWS[0], front[0] - GAP_MM - aside, VIEWS[1]];
  const third = (RIGHT - LEFT - 2 * GAP_MM) / 3;
  const column = (i: number, width = third): Box => {
    const x = LEFT + i * (third + GAP_MM);
    return [x, TABLES[0], x + width, TABLES[1]];
  };
  return {
    title: `${name} ${version} ${hangs(attitude) ? 'hanging in the water' : 'at rest'}`,
    description: told(input),
    ...SHEET,
    shapes: [
      ...sheet(),
      ...head(input),
      ...figures(figuresOf(input)),
      ...sidePanel(input, side),
      ...otherViews(input, [side[2] + GAP_MM, VIEWS[0], front[0] - GAP_MM, VIEWS[1]]),
      ...frontPanel(input, front),
      ...rule(VIEWS[0] - 3),
      ...rightingPanel(
        { righting, gmAcrossMm: attitude.gmAcrossMm, hanging: hangs(attitude) },
        column(0),
      ),
      ...budgetPanel(items, column(1)),
      ...stagesPanel(stages, column(2)),
    ],
  };
}

const VERDICT: Readonly<Record<Verdict, string>> = {
  floats: 'Floats',
  suspends: 'Suspends',
  sinks: 'Sinks',
};

/** The verdict in large letters, name and version at the right: the name over what is about the lure. */
function head({ name, version, verdict, attitude, speed, waterDensityKgM3 }: FloatInput): Shape[] {
  const word = VERDICT[verdict];
  const from = LEFT + textWidthMm(word, SIZES.verdict, true) + 4;
  const going = speed && verdict !== 'floats' ? `, ${movingWords(speed)}` : '';
  const lying = `${hangs(attitude) ? 'hangs ' : ''}${trimWords(attitude)}${heelWords(attitude)}`;
  return headed({
    word,
    from,
    about: `${lying}${going}`,
    name,
    small: `version ${shortened(version, SIZES.note, 36)}, water ${spelled(waterDensityKgM3, 1)} kg/m³`,
  });
}

/** Less than this is level or upright, degrees. */
const LEVEL_DEG = 0.05;

const trimWords = ({ trimDeg }: Attitude): string =>
  Math.abs(trimDeg) < LEVEL_DEG
    ? 'level'
    : `nose ${trimDeg > 0 ? 'up' : 'down'} ${spelled(Math.abs(trimDeg), 1)}°`;

function heelWords({ heelDeg }: Attitude): string {
  const size = Math.abs(heelDeg);
  if (size < LEVEL_DEG) return '';
  if (size > 180 - LEVEL_DEG) return ', belly up';
  return `, heels ${spelled(size, 1)}° to ${heelDeg > 0 ? 'port' : 'starboard'}`;
}

type Figure = {
  readonly value: string;
  readonly meaning: string;
  /** Columns it takes; 1 where it does not say. */
  readonly columns?: number;
};

function figuresOf({ attitude, speed, items }: FloatInput): Figure[] {
  // Afloat it displaces its mass. Under water nothing but the height of B over G rights it, the same across and along.
  const [displaced, stiffness] = hangs(attitude)
    ? [
        [{ value: `${spelled(attitude.displacedG, 2)} g`, meaning: 'displaced' }],
        [{ value: `${spelled(attitude.gmAcrossMm, 2)} mm`, meaning: 'B over G' }],
      ]
    : [
        [{ value: `${spelled(100 * attitude.dryRatio, 1)} %`, meaning: 'above water' }],
        [
          { value: `${spelled(attitude.gmAcrossMm, 2)} mm`, meaning: 'GM across' },
          { value: `${spelled(attitude.gmAlongMm, 1)} mm`, meaning: 'GM along' },
        ],
      ];
  const massG = items.reduce((sum, item) => sum + item.massG, 0);
  return [
    { value: `${spelled(massG, 2)} g`, meaning: 'mass' },
    ...displaced,
    { value: `${spelled(attitude.trimDeg, 1)}°`, meaning: 'trim, + nose up' },
    { value: `${spelled(attitude.heelDeg, 1)}°`, meaning: 'heel, + to port' },
    ...stiffness,
    ...(speed
      ? [{ value: `${spelled(speed.cmS, 0)} cm/s`, meaning: speedWords(speed), columns: 2 }]
      : []),
  ];
}

/** Each figure over its meaning, in columns of equal width. */
function figures(list: readonly Figure[]): Shape[] {
  const columns = list.map((figure) => figure.columns ?? 1);
  const sum = (upTo: number) => columns.slice(0, upTo).reduce((a, b) => a + b, 0);
  const width = (RIGHT - LEFT) / sum(list.length);
  return list.flatMap(({ value, meaning }, i): Shape[] => {
    const x = LEFT + sum(i) * width;
    const room = columns[i] * width - 2;
    return [
      ...fitted(value, x, FIGURES_Y + 8.2, room, { size: 'value', bold: true }),
      ...fitted(meaning, x, FIGURES_Y + 3.2, room, { role: 'faint' }),
    ];
  });
}

/** The other stable attitudes, one above the other. */
function otherViews({ lure, attitude: main, others }: FloatInput, panel: Box): Shape[] {
  if (others.length === 0) return [];
  const drawn = others.slice(0, MOST_OTHERS);
  const top = panel[3] - 6;
  const each = (top - panel[1] + 3) / MOST_OTHERS;
  return [
    words(hangs(main) ? 'Also hangs' : 'Also at rest', panel[0], panel[3] - 4, {
      size: 'title',
      bold: true,
    }),
    ...(others.length > drawn.length
      ? [
          words(`${drawn.length} of ${others.length}`, panel[2], panel[3] - 4, {
            anchor: 'end',
            role: 'faint',
          }),
        ]
      : []),
    ...drawn.flatMap((attitude, i): Shape[] => {
      const foot = top - (i + 1) * each + 3;
      const window: Box = [panel[0], foot + 6, panel[2], top - i * each];
      return [
        ...smallView(seenLure(lure, sideView(attitude.upInBody)), attitude, window),
        ...fitted(
          `trim ${spelled(attitude.trimDeg, 0)}°, heel ${spelled(attitude.heelDeg, 0)}°`,
          panel[0],
          foot + 1.5,
          panel[2] - panel[0],
        ),
      ];
    }),
  ];
}

function told({ name, version, verdict, attitude, items }: FloatInput): string {
  const massG = items.reduce((sum, item) => sum + item.massG, 0);
  const lying = `${trimWords(attitude)}${heelWords(attitude)}`;
  const lure = `${name} ${version} ${verdict}: ${spelled(massG, 2)} g, `;
  if (hangs(attitude))
    return `${lure}hangs ${lying}, B ${spelled(attitude.gmAcrossMm, 2)} mm over G.`;
  return (
    `${lure}${lying}, ${spelled(100 * attitude.dryRatio, 1)} % above water, ` +
    `freeboard ${spelled(attitude.freeboardNoseMm, 1)} mm at the nose and ` +
    `${spelled(attitude.freeboardTailMm, 1)} mm at the tail, ` +
    `GM ${spelled(attitude.gmAcrossMm, 2)} mm across.`
  );
}
