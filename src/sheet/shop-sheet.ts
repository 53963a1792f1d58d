/**
 * The shop sheet of a build: what is read with dusty hands, in the order of the work. A pure function of
 * the record and its pictures. It computes nothing: every number is a value of the record.
 */
import type { Section, SheetDocument } from './document.js';
import { at, each, type Place, present, whole } from './place.js';
import type { SheetRecord } from './record.js';
import { free, say } from './say.js';
import { ballastSection } from './sections/ballast.js';
import { coatsSection } from './sections/coats.js';
import { hardwareSection } from './sections/hardware.js';
import { headSection } from './sections/head.js';
import { holesSection } from './sections/holes.js';
import { sawOneSection, sawSection } from './sections/saw.js';
import { shapeSection } from './sections/shape.js';
import { timberSection } from './sections/timber.js';
import { timelineSection } from './sections/timeline.js';
import { tubSection } from './sections/tub.js';
import { weightsSection } from './sections/weights.js';
import { TEXTS } from './texts.js';

/** Texts of SVG files. */
export type SheetPictures = {
  /** One a face of the nest, in its order. */
  readonly faces: readonly string[];
  /** One a pattern: the lure in its water. */
  readonly tubs: readonly string[];
};

/** @param hash of build.json, as many of its digits as tell it apart */
export function shopSheet(
  plain: SheetRecord,
  pictures: SheetPictures,
  hash: string,
): SheetDocument {
  const record = whole(plain);
  const steps = stepSections(record, pictures);
  return {
    language: TEXTS.language,
    title: say(TEXTS.head.title, { name: free(at(record, 'name')) }),
    plainTitle: TEXTS.head.title.replace('{name}', plain.name),
    footer: say(TEXTS.footer, { name: free(at(record, 'name')), tool: free(at(record, 'tool')) }),
    pageWords: TEXTS.page,
    inches: plain.shop.inches,
    // The stations of a run have pages of their own, to be hung up there; one lure is made on one bench.
    sections: [
      headSection(record, hash, steps),
      ...(plain.kind === 'run' ? steps : steps.map((s) => ({ ...s, newPage: false }))),
    ],
  };
}

function stepSections(
  record: Place<SheetRecord>,
  { faces, tubs }: SheetPictures,
): readonly Section[] {
  const shop = at(record, 'shop');
  const patterns = each(at(shop, 'patterns'));
  const nest = present(at(record, 'nest'));
  const recorded = each(at(record, 'patterns'));
  const makers: readonly ((step: number) => readonly Section[])[] = [
    (step) => [timberSection(record, step)],
    (step) => [nest ? sawSection(nest, faces, step) : sawOneSection(record, step)],
    (step) => [holesSection(record, step)],
    (step) => [ballastSection(shop, step)],
    (step) => [shapeSection(record, step)],
    (step) => [weightsSection(record, step)],
    (step) => [coatsSection(each(at(shop, 'finishes')), step)],
    (step) => [hardwareSection(shop, step)],
    (step) => [timelineSection(shop, step)],
    (step) =>
      patterns.map((pattern, i) =>
        tubSection({ pattern: recorded[i], shop: pattern, svg: tubs[i] }, step),
      ),
  ];
  return makers.flatMap((make, i) => make(i + 1));
}
