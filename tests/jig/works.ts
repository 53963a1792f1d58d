/** Shipped and drawn patterns as the jigs take them. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { drawnPattern } from '../../src/bench/drawn-pattern.js';
import { workDoor } from '../../src/bench/jig-door.js';
import type { JigWork } from '../../src/jig/jig.js';
import { type PatternFile, patternSchema } from '../../src/pattern/schema.js';

export const { workOf, setups } = workDoor();

const fileOf = (name: string): PatternFile =>
  patternSchema.parse(
    parse(readFileSync(new URL(`../../templates/${name}.yaml`, import.meta.url), 'utf8')),
  );

/** A shipped pattern, something in its file changed. */
export function shippedWork(name: string, changed: Partial<PatternFile> = {}): JigWork {
  const work = workOf({ ...fileOf(name), ...changed });
  if (!work) throw new Error(`${name} can not be made in wood`);
  return work;
}

/** The first patterns of a seed that can be made in wood. */
export function drawnWorks(seed: number, count: number): JigWork[] {
  const works: JigWork[] = [];
  for (let i = 0; works.length < count && i < 10 * count; i++) {
    const work = workOf(drawnPattern(seed, i));
    if (work) works.push(work);
  }
  return works;
}
