/** Tables, shapes and lures for the tests of the mass budget. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeBlank } from '../../src/blank/make.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { type BodyShape, offsetSquared } from '../../src/body/shape.js';
import { monotoneCurve } from '../../src/geometry/monotone.js';
import type { LureDesign } from '../../src/mass/budget.js';
import { readForm } from '../../src/pattern/form.js';
import { type Pattern, resolvePattern } from '../../src/pattern/pattern.js';
import { type PatternFile, patternSections } from '../../src/pattern/schema.js';
import { readSource } from '../../src/pattern/source.js';
import { bladeTable } from '../../src/tables/blades.js';
import {
  bitTable,
  coatTable,
  fittingTable,
  type Materials,
  materialsOf,
  metalTable,
  plateTable,
  weightTable,
} from '../../src/tables/materials.js';
import { stepTable } from '../../src/tables/steps.js';
import { timberTable } from '../../src/tables/timbers.js';

const ROOT = join(import.meta.dirname, '../..');

export function dataOf(path: string): Record<string, unknown> {
  const source = readSource(path, readFileSync(join(ROOT, path), 'utf8'));
  if (!('data' in source)) throw new Error(`${path}: ${JSON.stringify(source)}`);
  return source.data;
}

export const MATERIALS: Materials = materialsOf({
  ...timberTable.parse(dataOf('shared/timbers.yaml')),
  ...metalTable.parse(dataOf('shared/metals.yaml')),
  ...plateTable.parse(dataOf('shared/plates.yaml')),
  ...coatTable.parse(dataOf('shared/coats.yaml')),
  ...fittingTable.parse(dataOf('shared/fittings.yaml')),
  ...weightTable.parse(dataOf('shared/weights.yaml')),
  ...bitTable.parse(dataOf('shared/bits.yaml')),
  ...bladeTable.parse(dataOf('shared/blades.yaml')),
  ...stepTable.parse(dataOf('shared/steps.yaml')),
});

export const TIMBER = { densityKgM3: 358, spreadKgM3: 36 };

/** A pattern of tests/mass/patterns by its name, with the keys that a test changes of it. */
export function patternOf(name: string, change: Partial<PatternFile> = {}): Pattern {
  const path = `tests/mass/patterns/${name}.yaml`;
  const source = readSource(path, readFileSync(join(ROOT, path), 'utf8'));
  if (!('data' in source)) throw new Error(path);
  const { sections, problems } = readForm(source, patternSections);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  return resolvePattern({ ...(sections as PatternFile), ...change });
}

export function designOf(pattern: Pattern): LureDesign & {
  readonly blank: NonNullable<ReturnType<typeof makeBlank>['blank']>;
} {
  const shape = bodyShape(pattern);
  const { blank, problems } = makeBlank(pattern, shape);
  if (!blank) throw new Error(JSON.stringify(problems));
  return { pattern, body: makeBody(shape), blank };
}

const constant = (value: number) => monotoneCurve([0], [value]);

/** A long bar of one section all along: half-breadth b, back and belly offsets, exponent n. Its ends are cut square. */
export const bar = ({
  b,
  back,
  belly,
  n = 2,
  lengthMm = 100,
}: {
  b: number;
  back: number;
  belly: number;
  n?: number;
  lengthMm?: number;
}): BodyShape => ({
  lengthMm,
  backSquared: constant(back ** 2),
  bellySquared: constant(belly ** 2),
  halfBreadthSquared: constant(b ** 2),
  upperExponent: constant(n),
  lowerExponent: constant(n),
});

/** An ellipsoid with half-axes a, b, c: offsets at stations, true rounds at the ends. */
export function ellipsoid(a: number, b: number, c: number): BodyShape {
  const side = (r: number) =>
    offsetSquared(
      2 * a,
      [0.1, 0.3, 0.5, 0.7, 0.9].map((s) => ({
        stationMm: 2 * a * s,
        offsetMm: r * Math.sqrt(1 - (2 * s - 1) ** 2),
      })),
      { noseRadiusMm: (r * r) / a, tailRadiusMm: (r * r) / a },
    );
  return {
    lengthMm: 2 * a,
    backSquared: side(c),
    bellySquared: side(c),
    halfBreadthSquared: side(b),
    upperExponent: constant(2),
    lowerExponent: constant(2),
  };
}

export const rel = (got: number, want: number): number => Math.abs(got / want - 1);

/** Counted pseudo-random numbers from 0 to 1 (mulberry32), so that a sample is the same everywhere. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
