/** Patterns made far enough to be drawn: shipped, scaled, drawn by chance, or changed for a test. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeBody } from '../../../src/body/body.js';
import {
  type Picture,
  SHEET,
  type Shape,
  type Text,
} from '../../../src/drawing/picture/picture.js';
import type { ViewsInput } from '../../../src/drawing/views/input.js';
import { viewSheets } from '../../../src/drawing/views/views.js';
import type { Job, Order } from '../../../src/job.js';
import { load } from '../../../src/load.js';
import { afloat, designed } from '../../../src/lures.js';
import { bentFor } from '../../../src/mass/wire-bent.js';
import { resolvePattern, type Size } from '../../../src/pattern/pattern.js';
import { type PatternFile, patternSchema } from '../../../src/pattern/schema.js';
import { readSource } from '../../../src/pattern/source.js';
import type { Product } from '../../../src/pipeline.js';
import { viewsInput } from '../../../src/record/views.js';

const TEMPLATES = join(import.meta.dirname, '../../../templates');
export const templatePath = (name: string): string => join(TEMPLATES, `${name}.yaml`);

export const STAMP = {
  hash: '0a1b2c3d4e5f',
  tool: 'blankwright 9.9.9',
  inches: false,
  sheet: SHEET,
};

const demo = load(templatePath('first-ice')).job as Job;

/** Everything the views ask of a product; null for a pattern that can not be made in wood. */
export function productOf(order: Order): Product | null {
  const job: Job = { ...demo, orders: [order] };
  const { designs, blanks } = designed(job);
  if (!blanks) return null;
  const [{ shape }] = designs;
  const [blank] = blanks;
  const { pattern } = order;
  const body = makeBody(shape);
  const drawn: Partial<Product> = {
    pattern,
    count: 1,
    body,
    blank,
    floating: afloat(job, 0, { body, blank }),
    wire: bentFor(pattern, shape, job.materials)?.wire ?? null,
  };
  return drawn as Product;
}

/** The pattern file as it is shipped, to be changed. */
export function fileOf(name: string): PatternFile {
  const source = readSource(name, readFileSync(templatePath(name), 'utf8'));
  if (!('data' in source)) throw new Error(JSON.stringify(source));
  return patternSchema.parse(source.data);
}

type Asked = { readonly size?: Size; readonly inches?: boolean };

/** Null for a pattern that can not be made in wood. */
export function inputOf(file: PatternFile, { size = {}, inches = false }: Asked = {}) {
  const product = productOf({ pattern: resolvePattern(file, size), count: 1 });
  return product && viewsInput(product, { ...STAMP, inches });
}

/** Of a pattern that can be made. */
export function madeInput(file: PatternFile, asked: Asked = {}): ViewsInput {
  const input = inputOf(file, asked);
  if (!input) throw new Error(`${file.name} can not be made`);
  return input;
}

/** The lines plan and the arrangement of a shipped pattern. */
export function sheetsOf(name: string, asked: Asked = {}): readonly Picture[] {
  return viewSheets(madeInput(fileOf(name), asked));
}

export const textsOf = ({ shapes }: Picture): readonly Text[] =>
  shapes.filter((s) => s.kind === 'text');

export const wordsOf = (sheets: readonly Picture[]): readonly string[] =>
  sheets.flatMap(textsOf).map(({ text }) => text);

type Line = Extract<Shape, { kind: 'line' }>;
export const linesOf = ({ shapes }: Picture): readonly Line[] =>
  shapes.filter((s) => s.kind === 'line');
