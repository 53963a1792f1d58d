import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readFaces } from '../../../src/io.js';
import type { Job } from '../../../src/job.js';
import { load } from '../../../src/load.js';
import { resolvePattern } from '../../../src/pattern/pattern.js';
import type { Product } from '../../../src/pipeline.js';
import { viewFiles } from '../../../src/record/view-files.js';
import { type ReadPage, readPdf } from '../../formats/pdf-reader.js';
import { fileOf, productOf, templatePath } from './sample.js';

const loaded = load(templatePath('first-ice'));
const job = loaded.job as Job;
const sha256 = (name: string) =>
  createHash('sha256')
    .update(readFileSync(templatePath(name)))
    .digest('hex');

test('an order knows its pattern file by the hash that the manifest lists', () => {
  expect(job.orders.map((o) => o.fileSha256)).toEqual(
    ['skerry', 'skerry', 'ghyll', 'holm'].map(sha256),
  );
  for (const { fileSha256 } of job.orders)
    expect(loaded.inputs.map((i) => i.sha256)).toContain(fileSha256);
  const single = load(templatePath('holm'));
  expect(single.job?.orders[0].fileSha256).toBe(sha256('holm'));
});

describe('the view files of a run', () => {
  const products = job.orders.map((order) => productOf(order) as Product);
  const made = () => viewFiles({ products, job }, 'blankwright 9.9.9', readFaces());
  let files: Awaited<ReturnType<typeof viewFiles>>;
  const bytesOf = (path: string): Uint8Array => {
    const file = files.find((f) => f.path === path);
    if (!file) throw new Error(path);
    return file.bytes;
  };
  beforeAll(async () => {
    files = await made();
  });

  test('are a PDF a pattern and an SVG a sheet', () => {
    expect(files.map((f) => f.path)).toEqual(
      ['skerry', 'skerry-130', 'ghyll', 'holm'].flatMap((name) => [
        `views/${name}.pdf`,
        `views/${name}-1.svg`,
        `views/${name}-2.svg`,
      ]),
    );
    for (const { path, kind, format, pattern, bytes } of files) {
      expect(kind).toBe('view');
      expect(path.endsWith(`.${format}`)).toBe(true);
      expect(path.startsWith(`views/${pattern}`)).toBe(true);
      // Four patterns' sheets share the 2 MB of a run's paper with templates and faces.
      expect(bytes.length).toBeLessThan(80_000);
    }
  });

  test('are the same bytes every time', async () => {
    expect(await made()).toEqual(files);
  });

  test('the PDF has A4 pages lying on their long side, with what the SVG says', async () => {
    const { pages } = await readPdf(bytesOf('views/skerry.pdf'));
    expect(pages).toHaveLength(2);
    for (const [i, page] of pages.entries()) {
      // ISO 216: 297 by 210 mm.
      expect(page.widthMm).toBeCloseTo(297, 3);
      expect(page.heightMm).toBeCloseTo(210, 3);
      const said = new Set(page.texts.map((t) => t.text));
      const svg = new TextDecoder().decode(bytesOf(`views/skerry-${i + 1}.svg`));
      const words = [...svg.matchAll(/<text[^>]*>([^<]*)</g)];
      expect(words.length).toBeGreaterThan(60);
      for (const [, text] of words) expect(said).toContain(text);
      expect(said).toContain(sha256('skerry').slice(0, 12));
    }
  });

  test('the PDF is at true size: the bar is 100 mm, the lure as long as it is', async () => {
    const [, page] = (await readPdf(bytesOf('views/ghyll.pdf'))).pages;
    const flat = straight(page).filter(([, y0, , y1]) => y0 === y1);
    const long = (mm: number) => flat.filter(([x0, , x1]) => Math.abs(x1 - x0 - mm) < 1e-4);
    // The bar; and the 125 mm of ghyll, once over it and once as a running dimension under it.
    expect(long(100)).toHaveLength(1);
    expect(long(125)).toHaveLength(2);
  });

  /** Paths of one straight line. */
  const straight = ({ calls }: ReadPage) =>
    calls
      .filter((c) => c.name === 'constructPath')
      .map(({ args }) => Array.from((args[1] as Float32Array[])[0]))
      .filter((path) => path.length === 6)
      .map(([, x0, y0, , x1, y1]) => [x0, y0, x1, y1] as const);

  test('a pattern without a file has no hash', async () => {
    const order = { pattern: resolvePattern(fileOf('holm')), count: 1 };
    const product = productOf(order) as Product;
    const alone = { products: [product], job: { ...job, orders: [order] } };
    const [pdf] = await viewFiles(alone, 'blankwright 9.9.9', readFaces());
    const [page] = (await readPdf(pdf.bytes)).pages;
    expect(page.texts.map((t) => t.text).filter((t) => /^[0-9a-f]{12}$/.test(t))).toEqual([]);
  });
});
