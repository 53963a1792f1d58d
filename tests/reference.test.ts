/** The committed reference equals what the schemas and the message catalog give. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FILE_FORMATS } from '../src/file-formats.js';
import { CATALOG, PROBLEM_CODES } from '../src/messages.js';
import { parametersOf } from '../src/pattern/manual.js';
import { referenceFiles } from '../src/reference.js';

const ROOT = join(import.meta.dirname, '..');
const files = referenceFiles();

test.each([...files.keys()])('%s is in step (else: npm run reference)', (path) => {
  expect(readFileSync(join(ROOT, path), 'utf8')).toBe(files.get(path));
});

test('there are schemas for all formats and two pages', () => {
  expect([...files.keys()].sort()).toEqual([
    'docs/parameters.md',
    'docs/problems.md',
    'schema/center-scribe.schema.json',
    'schema/drill-stop.schema.json',
    'schema/drying-comb.schema.json',
    'schema/gauges.schema.json',
    'schema/lip-slot-guide.schema.json',
    'schema/pattern.schema.json',
    'schema/printer.schema.json',
    'schema/run.schema.json',
    'schema/sanding-cradle.schema.json',
    'schema/wire-form.schema.json',
  ]);
});

test('every parameter is described, and every number names its unit', () => {
  const all = FILE_FORMATS.flatMap((f) => parametersOf(f.sections));
  expect(all.length).toBeGreaterThan(100);
  for (const p of all) {
    expect(p.about, p.key).not.toBe('');
    // Counts of things (whole numbers) have no unit; a price is in whatever currency the workshop uses.
    if (p.kind.startsWith('number'))
      expect(p.key, p.key).toMatch(
        /(Mm|Deg|G|Ratio|Exponent|KgM3|C|Psu|CmS|Min|Hours|HoursPerDay|minutes|minutesPerLure|By(Volume|Mass)|priceEach)(\[\])?$/,
      );
  }
});

test('schemas are strict at every level and ask for the right keys', () => {
  const schema = JSON.parse(files.get('schema/pattern.schema.json') ?? '');
  expect(schema.additionalProperties).toBe(false);
  expect(schema.required).toContain('body');
  expect(schema.required).not.toContain('scaleRatio');
  expect(schema.properties.body.properties.offsets.items.additionalProperties).toBe(false);
});

test('no code stands in two parts of the catalog', () => {
  const codes = readdirSync(join(ROOT, 'src/catalog')).flatMap((file) =>
    [
      ...readFileSync(join(ROOT, 'src/catalog', file), 'utf8').matchAll(
        /^ {2}'?([a-z-]+)'?: \{$/gm,
      ),
    ].map(([, code]) => code),
  );
  expect(codes.sort()).toEqual([...PROBLEM_CODES].sort());
});

test('messages have all their parts', () => {
  for (const code of PROBLEM_CODES) {
    for (const part of Object.values(CATALOG[code])) expect(part, code).not.toBe('');
  }
});
