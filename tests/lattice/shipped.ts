/** The outlines of the shipped patterns. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape } from '../../src/body/body.js';
import type { Ring } from '../../src/geometry/ring.js';
import { readForm } from '../../src/pattern/form.js';
import { resolvePattern } from '../../src/pattern/pattern.js';
import { type PatternFile, patternSections } from '../../src/pattern/schema.js';
import { readSource } from '../../src/pattern/source.js';

const TEMPLATES = join(import.meta.dirname, '../../templates');

/** Name and outline of every pattern in templates/; files of another kind have other sections. */
export function shippedOutlines(): { readonly name: string; readonly outline: Ring }[] {
  const files = readdirSync(TEMPLATES).filter((f) => f.endsWith('.yaml'));
  return files.flatMap((file) => {
    const source = readSource(file, readFileSync(join(TEMPLATES, file), 'utf8'));
    const { sections, problems } = readForm(source as never, patternSections);
    if (problems.length > 0) return [];
    const pattern = resolvePattern(sections as PatternFile);
    const { blank } = makeBlank(pattern, bodyShape(pattern));
    return blank ? [{ name: file.replace('.yaml', ''), outline: blank.outlineRing }] : [];
  });
}
