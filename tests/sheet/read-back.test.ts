/** The sheet of a run read back: HTML against build.json, PDF against HTML. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { sheetHtml } from '../../src/formats/sheet-html.js';
import { sheetPdf } from '../../src/formats/sheet-pdf.js';
import { readFaces } from '../../src/io.js';
import { produce } from '../../src/produce.js';
import { sheetFiles } from '../../src/record/sheet-files.js';
import { ordinal } from '../../src/sheet/place.js';
import type { SheetRecord } from '../../src/sheet/record.js';
import { shopSheet } from '../../src/sheet/shop-sheet.js';
import { type Form, shown } from '../../src/sheet/shown.js';
import { type Element, isInside, readHtml, type Text } from './read-html.js';
import { drawnTexts, type PdfPage, readPdf } from './read-pdf.js';
import { ARABIC, CHINESE, HEBREW, MARKUP, type Sample, sampleRun, sampleSingle } from './sample.js';

let sample: Sample;
let single: Sample;
let texts: readonly Text[];
let elements: readonly Element[];
let pages: readonly PdfPage[];

beforeAll(async () => {
  sample = await sampleRun();
  single = await sampleSingle();
  ({ texts, elements } = readHtml(sample.html));
  ({ pages } = await readPdf(sample.pdf));
}, 240_000);

/** The value at a JSON pointer (RFC 6901). */
const at = (record: unknown, pointer: string): unknown =>
  pointer
    .split('/')
    .slice(1)
    .map((key) => key.replace(/~1/g, '/').replace(/~0/g, '~'))
    .reduce((value, key) => (value as Record<string, unknown>)[key], record);

type Shown = {
  readonly from: string;
  readonly form: Form;
  readonly value: string;
  readonly text: string;
};

const shownIn = (all: readonly Text[]): Shown[] =>
  all.flatMap(({ text, inside }) => {
    const element = inside[inside.length - 1];
    if (element?.name !== 'data') return [];
    const { value, 'data-from': from, 'data-form': form } = element.attributes;
    return [{ value, from, form: form as Form, text }];
  });

/** What of the HTML is read: not its looks, not the drawings. */
const isRead = (text: Text): boolean =>
  isInside(text, 'body') && !isInside(text, 'svg') && text.text.trim() !== '';

describe('HTML against build.json', () => {
  test('every number is the value at its pointer, under the formatter', () => {
    for (const { record, html } of [sample, single]) {
      const numbers = shownIn(readHtml(html).texts);
      expect(numbers.length).toBeGreaterThan(100);
      for (const { from, form, value, text } of numbers) {
        const there = at(record, from);
        const number =
          form === 'many'
            ? (there as unknown[]).length
            : form === 'place'
              ? ordinal({ from, value: there })
              : there;
        expect(number, from).toBe(Number(value));
        expect(String(number), from).toBe(value);
        expect(text, `${from} ${form}`).toBe(shown(form, number as number));
      }
    }
  });

  test('no digit stands outside of a number, a typed text and the hash', () => {
    const bare = texts.filter(
      (t) => isRead(t) && !['data', 'bdi', 'code'].some((name) => isInside(t, name)),
    );
    expect(bare.length).toBeGreaterThan(300);
    // Of numerals only the powers of units.
    const numerals = bare
      .map((t) => t.text.replace(/\b(cm²|kg\/m³)/g, ''))
      .filter((t) => /\p{N}/u.test(t));
    expect(numerals).toEqual([]);
  });

  test('the amounts a maker measures stand there', () => {
    const froms = new Set(shownIn(texts).map((n) => n.from));
    const { shop } = sample.record;
    const two = shop.finishes.findIndex((f) => f.parts !== null);
    const weight = shop.patterns.findIndex((p) => p.ballast.some((b) => b.weight !== null));
    expect(Math.min(two, weight)).toBeGreaterThanOrEqual(0);
    for (const pointer of [
      '/shop/timber/0/count',
      '/shop/patterns/0/drilling/0/collarMm',
      '/shop/patterns/0/drilling/0/depthMm',
      '/shop/patterns/0/ballast/0/filledG',
      '/shop/patterns/0/weights/0/lowG',
      '/shop/patterns/0/roundOver/bitMm',
      '/shop/patterns/1/wire/lengthToCutMm',
      '/shop/melt/0/totalG',
      '/shop/weightsToBuy/0/count',
      `/shop/finishes/${two}/pots/0/partAG`,
      `/shop/finishes/${two}/pots/0/partBMl`,
      `/shop/finishes/${two}/perLurePartG/0/partBG`,
      '/shop/hardware/0/count',
      '/shop/patterns/2/tub/rest/noseMm',
      '/shop/patterns/0/tub/trial/0/massG',
      '/shop/patterns/0/tub/says/0/trimDeg',
    ])
      expect(froms, pointer).toContain(pointer);
  });

  test('the parts of a coat on one lure are as the pot’s ratio gives them', () => {
    // By hand: film = area × thickness × 1.15 g/cm³; mixed = film × 1.3 (waste); parts 1 : 1 by volume.
    const { finishes } = sample.record.shop;
    const i = finishes.findIndex((f) => f.name === 'epoxy');
    const { perLure, perLurePartG, parts, wasteRatio, solidsRatio } = finishes[i];
    if (!parts || !perLurePartG) throw new Error('one part');
    const [{ areaMm2, thicknessMm }] = perLure;
    const filmG = areaMm2 * thicknessMm * 1.15e-3;
    const mixG = (filmG * (1 + wasteRatio)) / solidsRatio;
    const aG = (mixG * parts.aByMass) / (parts.aByMass + parts.bByMass);
    const text = (from: string) => shownIn(texts).find((n) => n.from === from)?.text;
    // Shown to 0.01 g, so no further off than half of it.
    const place = `/shop/finishes/${i}/perLurePartG/0`;
    expect(Math.abs(Number(text(`${place}/partAG`)) - aG)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(Number(text(`${place}/partBG`)) - (mixG - aG))).toBeLessThanOrEqual(0.0051);
    expect(perLurePartG[0].partAG).toBeGreaterThan(0);
  });

  test('the hash is that of build.json', () => {
    const whole = createHash('sha256').update(sample.recorded).digest('hex');
    const [hash] = texts.filter((t) => isInside(t, 'code'));
    expect(hash.text).toMatch(/^[0-9a-f]{12}$/);
    expect(whole.startsWith(hash.text)).toBe(true);
  });

  test('typed texts are escaped, shown as they are, and kept apart from what is around them', () => {
    const typed = texts.filter((t) => isInside(t, 'bdi')).map((t) => t.text);
    for (const text of [MARKUP, HEBREW, CHINESE, ARABIC]) expect(typed).toContain(text);
    expect(elements.map((e) => e.name)).not.toContain('script');
  });

  test('nothing runs and nothing is fetched', () => {
    const names = new Set(elements.map((e) => e.name));
    for (const name of ['script', 'link', 'iframe', 'object', 'embed', 'base', 'form'])
      expect(names).not.toContain(name);
    for (const { attributes } of elements) {
      expect(Object.keys(attributes).filter((key) => key.startsWith('on'))).toEqual([]);
      for (const key of ['src', 'href', 'xlink:href'])
        expect(attributes[key] ?? 'data:').toMatch(/^(data:|#)/);
    }
    const styles = texts
      .filter((t) => isInside(t, 'style'))
      .map((t) => t.text)
      .join('\n');
    expect([...styles.matchAll(/url\(([^)]{0,20})/g)].map((m) => m[1])).toEqual([
      'data:font/woff2;base',
      'data:font/woff2;base',
    ]);
    expect(styles).not.toContain('@import');
  });

  test('no two elements have one name, and every reference finds its own', () => {
    const ids = elements.flatMap((e) => e.attributes.id ?? []);
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
    const used = elements.flatMap((e) =>
      Object.values(e.attributes).flatMap((v) =>
        [...v.matchAll(/url\(#([^)]+)\)/g)].map((m) => m[1]),
      ),
    );
    for (const id of used) expect(ids).toContain(id);
  });

  test('tables tell which cells are heads, and repeat them', () => {
    const heads = elements.filter((e) => e.name === 'th');
    expect(heads.length).toBeGreaterThan(40);
    expect(heads.every((e) => e.attributes.scope !== undefined)).toBe(true);
    expect(elements.filter((e) => e.name === 'thead').length).toBe(
      elements.filter((e) => e.name === 'table').length,
    );
  });

  test('a caution stands in every step that can hurt, and each defers to who knows better', () => {
    const sections = ['saw', 'holes', 'ballast', 'shape', 'coats', 'hardware', 'tub-skerry'];
    const deferring = sample.html.match(/<aside class="caution">[\s\S]*?<\/aside>/g) ?? [];
    expect(deferring.length).toBeGreaterThan(sections.length);
    for (const aside of deferring)
      expect(aside).toContain('Local rules, the maker’s data sheet and a qualified person');
    for (const id of sections) {
      const section = sample.html.split(`<section id="${id}"`)[1].split('</section>')[0];
      expect(section, id).toContain('<aside class="caution">');
    }
    const ballast = sample.html.split('<section id="ballast"')[1].split('</section>')[0];
    for (const word of ['damp', 'Fume', 'hands', 'printed plastic', 'banned', 'Tin'])
      expect(ballast).toContain(word);
  });
});

/** What stands between the margins, and what is at the foot of the page. */
const SIDE_PT = (12 * 72) / 25.4;
const FOOT_PT = (15 * 72) / 25.4;
const HEAD_PT = (13 * 72) / 25.4;

/** Numbers of the HTML that stand in the PDF less often. */
function numbersLost(html: readonly Text[], paper: readonly PdfPage[]): readonly string[] {
  const tokens = (text: string): string[] =>
    text.replace(/\u00a0/g, ' ').match(/[+−]?\d[\d./]*(?:\s\d+\/\d+)?/g) ?? [];
  const counted = (list: readonly string[]) => {
    const counts = new Map<string, number>();
    for (const token of list) counts.set(token, (counts.get(token) ?? 0) + 1);
    return counts;
  };
  const inPdf = counted(tokens(paper.flatMap((p) => p.pieces.map((q) => q.text)).join('\n')));
  const numbers = counted(shownIn(html).map((n) => n.text.replace(/\u00a0/g, ' ')));
  expect(numbers.size).toBeGreaterThan(150);
  return [...numbers].filter(([text, n]) => (inPdf.get(text) ?? 0) < n).map(([text]) => text);
}

/** The record of a run as large as so many of its kind. */
function repeated(record: SheetRecord, times: number): SheetRecord {
  const copies = <T>(list: readonly T[]): T[] => Array.from({ length: times }, () => list).flat();
  const { shop, nest } = record;
  return {
    ...record,
    patterns: copies(record.patterns),
    nest: nest && { ...nest, faces: copies(nest.faces) },
    sheets: copies(record.sheets),
    shop: {
      ...shop,
      timber: copies(shop.timber).map((row) => ({ ...row, faces: copies(row.faces) })),
      patterns: copies(shop.patterns).map((p) => ({
        ...p,
        drilling: copies(p.drilling),
        gauges: copies(p.gauges),
        weights: copies(p.weights),
        tub: { ...p.tub, says: copies(p.tub.says) },
      })),
      hardware: copies(shop.hardware),
      finishes: shop.finishes.map((f) => ({
        ...f,
        perLure: copies(f.perLure),
        perLurePartG: f.perLurePartG && copies(f.perLurePartG),
        pots: copies(copies(f.pots)).map((pot) => ({ ...pot, lures: copies(pot.lures) })),
      })),
      timeline: copies(shop.timeline),
    },
  };
}

const repeatedPictures = ({ record }: Sample, times: number) => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="186mm" height="70mm" viewBox="0 0 186 70"><path d="M0,0L186,70"/></svg>';
  return {
    faces: Array.from({ length: times * (record.nest?.faces.length ?? 0) }, () => svg),
    tubs: Array.from({ length: times * record.patterns.length }, () => svg),
  };
};

describe('PDF against HTML', () => {
  test('every number of the HTML stands in the PDF, as often', () => {
    expect(numbersLost(texts, pages)).toEqual([]);
  });

  test('a run of many patterns, with long lists and many pots, loses nothing on the way to paper', async () => {
    const large = repeated(sample.record, 6);
    const sheet = shopSheet(large, repeatedPictures(sample, 6), 'cafe');
    const html = readHtml(await sheetHtml(sheet, readFaces()));
    const paper = await readPdf(await sheetPdf(sheet, readFaces(), 'Letter'));
    expect(shownIn(html.texts).length).toBeGreaterThan(4000);
    expect(numbersLost(html.texts, paper.pages)).toEqual([]);
    // Letter, and nothing under the foot of a page.
    expect(paper.pages[0].width).toBeCloseTo(612, 0);
    for (const { pieces } of paper.pages)
      for (const { y, text } of pieces) expect(y, text).toBeGreaterThan(10);
  });

  test('lures that sink, hang under water or have no rest are told in words', async () => {
    const odd = structuredClone(sample.record) as unknown as {
      shop: { patterns: { tub: Record<string, unknown> }[] };
    };
    const tubs = odd.shop.patterns.map((p) => p.tub);
    Object.assign(tubs[0], { verdict: 'sinks', netG: 2.34, trial: [], says: [], hang: [] });
    Object.assign(tubs[0], {
      rest: { noseMm: null, tailMm: null, trimDeg: 3.4, freeboardMm: null, dryRatio: 0 },
    });
    Object.assign(tubs[1], { verdict: 'suspends', rest: null, band: null });
    tubs[2].trial = [{ noseMm: 1, tailMm: 1, massG: null, stationMm: null, why: 'hardly-afloat' }];
    const sheet = shopSheet(odd as unknown as SheetRecord, repeatedPictures(sample, 1), 'cafe');
    const html = await sheetHtml(sheet, readFaces());
    for (const words of [
      'It sinks.',
      'weighs ',
      'nose up ',
      'It stays where it is let go.',
      'no attitude in which it stays',
      'it hardly floats',
    ])
      expect(html).toContain(words);
    expect(html).not.toMatch(/NaN|undefined|null/);
  });

  test('an unknown code is our fault', () => {
    const odd = structuredClone(sample.record) as unknown as {
      shop: { patterns: { weights: { light: string }[] }[] };
    };
    odd.shop.patterns[0].weights[0].light = 'moonlight';
    expect(() =>
      shopSheet(odd as unknown as SheetRecord, repeatedPictures(sample, 1), 'cafe'),
    ).toThrow(/moonlight/);
  });

  test('every heading and every caution of the HTML stands in the PDF', () => {
    const all = pages
      .map((p) => p.pieces.map((piece) => piece.text).join(' '))
      .join(' ')
      .replace(/\s+/g, '');
    const words = texts.filter(
      (t) =>
        isRead(t) &&
        (isInside(t, 'h2') || isInside(t, 'aside') || isInside(t, 'th')) &&
        !isInside(t, 'bdi'),
    );
    expect(words.length).toBeGreaterThan(100);
    const lost = words.filter((t) => !all.includes(t.text.replace(/\s+/g, '')));
    expect(lost.map((t) => t.text)).toEqual([]);
  });

  test('text stands between the margins', () => {
    expect(pages.length).toBeGreaterThan(10);
    for (const { width, height, pieces } of pages) {
      expect([width, height]).toEqual([expect.closeTo(595.28, 1), expect.closeTo(841.89, 1)]);
      const foot = pieces.filter((p) => p.y < FOOT_PT);
      expect(foot.map((p) => p.text).join(' ')).toMatch(/page \d+ of \d+/);
      for (const { text, x, y, width: wide } of pieces) {
        expect(x, text).toBeGreaterThanOrEqual(SIDE_PT - 0.5);
        expect(x + wide, text).toBeLessThanOrEqual(width - SIDE_PT + 0.5);
        expect(y, text).toBeGreaterThan(10);
        expect(y, text).toBeLessThan(height - HEAD_PT);
      }
    }
  });

  test('no text lies on other text', () => {
    for (const [number, { pieces }] of pages.entries()) {
      pieces.forEach((a, i) => {
        for (const b of pieces.slice(i + 1)) {
          // Letters reach from under the baseline to three quarters of their size over it.
          const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
          const up = Math.min(a.y + 0.7 * a.height, b.y + 0.7 * b.height) - Math.max(a.y, b.y);
          expect(across > 0.5 && up > 0.5, `page ${number + 1}: ${a.text} / ${b.text}`).toBe(false);
        }
      });
    }
  });

  test('letters that no face has stand as code points', () => {
    const all = pages.flatMap((p) => p.pieces);
    expect(all.some((p) => p.text.includes('[U+6F06]'))).toBe(true);
    expect(all.filter((p) => /\p{Script=Han}/u.test(p.text))).toEqual([]);
  });

  test('words from the right stand from the right', async () => {
    const drawn = await drawnTexts(sample.pdf);
    const letters = (word: string) => [...word].sort().join('');
    const lines = drawn.flatMap((page) =>
      page
        .filter((d) => letters(d.text) === letters('לכת'))
        .map(({ y }) => page.filter((d) => Math.abs(d.y - y) < 0.1)),
    );
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) {
      const placeOf = (word: string) =>
        line.find((d) => letters(d.text.trim()) === letters(word))?.x ?? Number.NaN;
      const [first, second] = ['לכת', 'ים'].map(placeOf);
      // The first word is the furthest to the right of its line; the second is left of it or on a later one.
      expect(line.filter((d) => /[\u0590-\u05ff]/.test(d.text)).every((d) => d.x <= first)).toBe(
        true,
      );
      if (!Number.isNaN(second)) expect(second).toBeLessThan(first);
      // Letters of a word as they are drawn, from the left: the last letter first.
      expect(line.find((d) => letters(d.text) === letters('לכת'))?.text).toBe('תכל');
    }
    // A narrow cell: the first line holds the first words, the next one stands under it.
    const broken = lines.filter(
      (line) => !line.some((d) => letters(d.text.trim()) === letters('שקופה')),
    );
    expect(broken.length).toBeGreaterThan(0);
    for (const line of broken) {
      const [{ y }] = line;
      const page = drawn.find((p) => p.includes(line[0])) ?? [];
      const rest = page.find((d) => letters(d.text) === letters('שקופה') && Math.abs(d.y - y) < 20);
      expect(rest?.y).toBeLessThan(y);
    }
  });

  test('a run prints on a few dozen pages, a single lure on a dozen, in less than a megabyte', async () => {
    expect(pages.length).toBeLessThan(40);
    expect((await readPdf(single.pdf)).pages.length).toBeLessThan(15);
    for (const { pdf, html } of [sample, single]) {
      expect(pdf.length).toBeLessThan(1_000_000);
      expect(html.length).toBeLessThan(1_000_000);
    }
  });

  test('it says what it is, and no date', async () => {
    const { info } = await readPdf(sample.pdf);
    expect(info.Title).toBe('Shop sheet: thaw');
    expect(info.CreationDate).toBe('D:19800101000000Z');
  });
});

test('inches stand where the run or the command line wishes them, millimeters always', async () => {
  const inchesIn = (html: string) =>
    shownIn(readHtml(html).texts).filter((n) => n.form.startsWith('inch'));
  expect(inchesIn(sample.html).length).toBeGreaterThan(50);
  expect(inchesIn(single.html)).toEqual([]);
  // 14 mm is 35.28 sixty-fourths of an inch.
  const [depth, inch] = shownIn(texts).filter(
    (n) => n.from === '/shop/patterns/0/drilling/0/depthMm',
  );
  expect([depth.text, inch.text]).toEqual(['14.0', '35/64']);
  const { made } = await produce(join(import.meta.dirname, '../../templates/holm.yaml'), {
    inches: true,
  });
  expect(made?.build.shop.inches).toBe(true);
});

test('the same build gives the same bytes', async () => {
  const again = await sheetFiles(sample.build, sample.recorded, readFaces());
  expect(again.map((f) => f.path)).toEqual(['sheet/shop-sheet.pdf', 'sheet/shop-sheet.html']);
  for (const [i, { bytes }] of again.entries())
    expect(Buffer.compare(bytes, sample.files[i].bytes)).toBe(0);
});

test('letters that paper does not have are told, those of Hebrew and Arabic are not', () => {
  expect(sample.problems.map((p) => [p.code, p.facts.letters])).toEqual([
    ['letters-not-printable', 'U+6F06'],
  ]);
  expect(sample.problems[0].at?.file).toMatch(/skerry\.yaml$/);
});
