/** Bodies in space as a sheet to look at: two views side by side, shaded under sharp lines, with labels, scale and captions. */
import { add, type Box, type Point2, type Point3, sub, times } from '../../geometry/vec.js';
import type { LineKind } from '../../shade/lines.js';
import { type Model, modelOf } from '../../shade/model.js';
import type { Scene } from '../../shade/scene.js';
import { seenBox, shaded } from '../../shade/shade.js';
import { axesOf, type View, viewedAt } from '../../shade/view.js';
import { type Flag, flagged, isOver, rowsMm } from './flags.js';
import type { Pen, Picture, Role, Shape } from './picture.js';
import { SHEET, textWidthMm } from './picture.js';
import { scaleBar, scaleFor, scaleWords } from './scale-bar.js';
import { headed, LEFT, MARGIN_MM, RIGHT, rule, sheet } from './sheet.js';
import { fitted, LINE_MM, SIZES, shortened, words, wrapped } from './words.js';

export type SolidsView = {
  /** Above the view: from where it is seen, and what is shown. */
  readonly caption: string;
  readonly scene: Scene;
  readonly view: View;
  /** What is named, at points of the scene. */
  readonly labels: readonly { readonly text: string; readonly at: Point3 }[];
};

export type SolidsInput = {
  /** One word or two, in large letters: what is shown. */
  readonly word: string;
  readonly about: string;
  readonly name: string;
  /** Under the name. */
  readonly small: string;
  readonly views: readonly [SolidsView, SolidsView];
  /** Sentences at the foot, each on a line of its own. */
  readonly captions: readonly string[];
};

const PIXELS_PER_MM = 5; // 127 to the inch: tones only, the lines over them are sharp at any size
const TOP_Y = 180;
const BETWEEN_MM = 8;
/** Most of the head that the large letters take. */
const WORD_MM = 130;
const CAPTION_MM = 7;
const BAR_MM = { left: LEFT + 2, wide: 112, high: 14 } as const;

const LINES: Readonly<Record<LineKind, { role: Role; pen: Pen; dashed?: true }>> = {
  crease: { role: 'ink', pen: 'hair' },
  seam: { role: 'ink', pen: 'hair' },
  outline: { role: 'ink', pen: 'fine' },
  ghost: { role: 'faint', pen: 'hair', dashed: true },
  way: { role: 'ink', pen: 'hair', dashed: true },
};

/** Both views have one scale, the largest that has room for both. */
export function solidsPicture(input: SolidsInput): Picture {
  const captions = input.captions.flatMap((c) =>
    wrapped(c, SIZES.note, RIGHT - LEFT - BAR_MM.wide),
  );
  const footMm = Math.max(BAR_MM.high, captions.length * LINE_MM);
  const panels = panelsOver(MARGIN_MM + footMm + 4);
  const views = readied(input.views, panels);
  const word = shortened(input.word, SIZES.verdict, WORD_MM, true);
  const scale = Math.min(...views.map(({ size, room }) => scaleFor(size, room)));
  return {
    title: `${input.name}: ${input.word}`,
    description: `${input.about} ${input.views.map(({ caption }) => caption).join('; ')}.`,
    ...SHEET,
    shapes: [
      ...sheet(),
      ...headed({ ...input, word, from: LEFT + textWidthMm(word, SIZES.verdict, true) + 5 }),
      ...views.flatMap((view) => drawn(view, scale)),
      ...rule(MARGIN_MM + footMm + 2),
      ...scaleBar([BAR_MM.left, MARGIN_MM + footMm - 6]),
      words(`Scale ${scaleWords(scale)}`, BAR_MM.left, MARGIN_MM + footMm - 13, {
        size: 'title',
        bold: true,
      }),
      ...captions.map((line, i) =>
        words(line, LEFT + BAR_MM.wide, MARGIN_MM + footMm - (i + 0.8) * LINE_MM),
      ),
    ],
  };
}

const panelsOver = (lowY: number): readonly [Box, Box] => {
  const half = (RIGHT - LEFT - BETWEEN_MM) / 2;
  return [
    [LEFT, lowY, LEFT + half, TOP_Y],
    [RIGHT - half, lowY, RIGHT, TOP_Y],
  ];
};

type Ready = SolidsView & {
  readonly model: Model;
  readonly panel: Box;
  /** Of all that is seen, mm of the scene. */
  readonly box: Box;
  readonly size: Point2;
  /** Left for it between caption and rows of labels, mm of paper. */
  readonly room: Point2;
  readonly overMm: number;
};

/** A scene that both views show is made ready once. */
function readied(views: readonly SolidsView[], panels: readonly Box[]): Ready[] {
  const models = new Map(views.map(({ scene }) => [scene, modelOf(scene)]));
  return views.map((view, i): Ready => {
    const panel = panels[i];
    const model = models.get(view.scene) ?? modelOf(view.scene);
    const box = seenBox(model, view.view);
    const axes = axesOf(view.view);
    const over = view.labels.filter(({ at }) => isOver(viewedAt(axes, at), box)).length;
    const [overMm, underMm] = [rowsMm(over), rowsMm(view.labels.length - over)];
    const room: Point2 = [panel[2] - panel[0], panel[3] - panel[1] - CAPTION_MM - overMm - underMm];
    return { ...view, model, panel, box, size: [box[2] - box[0], box[3] - box[1]], room, overMm };
  });
}

function drawn(ready: Ready, scale: number): Shape[] {
  const { caption, model, view, labels, panel, box, size, room, overMm } = ready;
  const { raster, box: pixels, lines, at } = shaded(model, view, 1 / (PIXELS_PER_MM * scale));
  // In the middle of its room.
  const corner: Point2 = [
    panel[0] + (room[0] - scale * size[0]) / 2,
    panel[3] - CAPTION_MM - overMm - (room[1] + scale * size[1]) / 2,
  ];
  const placed = (p: Point2): Point2 => add(corner, times(sub(p, [box[0], box[1]]), scale));
  const kinds: readonly LineKind[] = ['ghost', 'crease', 'seam', 'outline', 'way'];
  const end = placed([box[2], box[3]]);
  return [
    ...fitted(caption, panel[0], panel[3] - SIZES.title, panel[2] - panel[0], {
      size: 'title',
      bold: true,
    }),
    {
      kind: 'image',
      at: placed([pixels[0], pixels[1]]),
      widthMm: raster.columns / PIXELS_PER_MM,
      heightMm: raster.rows / PIXELS_PER_MM,
      raster,
    },
    ...kinds.flatMap((kind): Shape[] => {
      const some = lines
        .filter((line) => line.kind === kind)
        .map(({ points }) => points.map(placed));
      return some.length === 0 ? [] : [{ kind: 'lines', lines: some, ...LINES[kind] }];
    }),
    ...flagged(
      labels.map(({ text, at: point }): Flag => ({ text, at: placed(at(point)) })),
      [...corner, ...end],
      panel,
    ),
  ];
}
