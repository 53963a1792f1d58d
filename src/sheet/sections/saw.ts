/** How each face is sawn, with its picture. */
import { caution, heading, paragraph, together } from '../blocks.js';
import type { Block, Inline, Inlines, Section } from '../document.js';
import { at, each, type Place } from '../place.js';
import type { RecordedFace, RecordedNest, SheetRecord } from '../record.js';
import { count, free, joined, many, mm, placed, say, strong } from '../say.js';
import { TEXTS } from '../texts.js';

const { saw } = TEXTS;

/** A single pattern: one blank, and its lip. */
export const sawOneSection = (record: Place<SheetRecord>, step: number): Section =>
  section(step, [
    paragraph(say(saw.single)),
    caution(TEXTS.cautions.saw),
    ...(record.value.shop.hardware.some(({ what }) => what === 'lip')
      ? [caution(TEXTS.cautions.sheets)]
      : []),
  ]);

/** @param pictures one a face, as SVG */
export function sawSection(
  nest: Place<RecordedNest>,
  pictures: readonly string[],
  step: number,
): Section {
  const { guidance } = nest.value.saw;
  return section(step, [
    paragraph(say(guidance === 'steered' ? saw.steered : saw.follows)),
    caution(TEXTS.cautions.saw),
    ...(guidance === 'follows' ? [caution(TEXTS.cautions.sheets)] : []),
    ...each(at(nest, 'faces')).flatMap((face, i) => faceBlocks(face, pictures[i], guidance)),
  ]);
}

const section = (step: number, blocks: readonly Block[]): Section => ({
  id: 'saw',
  step,
  name: say(saw.heading),
  heading: say(saw.heading),
  newPage: true,
  blocks,
});

/** Tallest picture of a face: as it is drawn. */
const MOST_HEIGHT_MM = 110;

function faceBlocks(
  face: Place<RecordedFace>,
  svg: string,
  guidance: RecordedNest['saw']['guidance'],
): readonly Block[] {
  const id = count(at(face, 'id'));
  return [
    together(
      heading(say(saw.face, { id })),
      {
        kind: 'picture',
        svg,
        told: say(saw.told, { id }),
        caption: null,
        mostHeightMm: MOST_HEIGHT_MM,
      },
      paragraph(counts(face)),
      paragraph(size(face)),
      ...(guidance === 'steered' ? route(face) : []),
    ),
  ];
}

const counts = (face: Place<RecordedFace>): Inlines => [
  ...say(saw.counts, {
    outlines: many(at(face, 'placements')),
    layers: count(at(face, 'layers')),
    copies: count(at(face, 'copies')),
  }),
  ...joined(
    each(at(face, 'stacks')).map((stack) =>
      strong(
        say(saw.stack, {
          copies: count(at(stack, 'copies')),
          blocks: joined(
            each(at(stack, 'blocks')).map((block) =>
              say(saw.block, { count: count(at(block, 'count')), block: free(at(block, 'block')) }),
            ),
            TEXTS.comma,
          ),
        }),
      ),
    ),
    TEXTS.comma,
  ),
];

const size = (face: Place<RecordedFace>): Inlines =>
  say(saw.size, {
    length: mm(at(face, 'lengthMm'), 'given', ''),
    width: mm(at(face, 'widthMm'), 'given', ''),
    thickness: mm(at(face, 'thicknessMm'), 'given'),
    height: mm(at(face, 'stackHeightMm'), 'given'),
  });

/** Parting and relief cuts, the lengths in the hand, and the outlines in their order, each with its box. */
function route(face: Place<RecordedFace>): readonly Block[] {
  const parting = at(face, 'partingCuts');
  const relief = at(face, 'reliefCuts');
  const pieces = joined(
    each(at(face, 'pieces')).map((piece) => [mm(at(piece, 'lengthMm'), 'fixed-0')]),
    TEXTS.comma,
  );
  const slots = { pieces };
  return [
    paragraph(
      parting.value.length === 0
        ? say(saw.whole, slots)
        : say(saw.parting, { ...slots, cuts: many(parting) }),
    ),
    ...(relief.value.length === 0 ? [] : [paragraph(say(saw.relief, { cuts: many(relief) }))]),
    { kind: 'list', title: say(saw.order), items: inOrder(face) },
  ];
}

const inOrder = (face: Place<RecordedFace>): readonly Inlines[] => {
  const placements = each(at(face, 'placements'));
  return each(at(face, 'cutOrder')).map((cut): readonly Inline[] => [
    { ...placed(cut), strong: true },
    ...say(TEXTS.space),
    free(at(placements[cut.value], 'pattern')),
  ]);
};
