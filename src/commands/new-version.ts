/** A choice of ballast → the next version of its pattern, as a new file. */
import { basename, dirname, join } from 'node:path';
import type { Choice, ChosenHole } from '../ballast/choice.js';
import { isThere, readText, writeNew } from '../io.js';
import type { Pattern } from '../pattern/pattern.js';
import { USUAL_POINT_DEG } from '../pattern/schema.js';
import { readSource } from '../pattern/source.js';
import { nextVersion, rewritten } from '../pattern/version.js';
import { Fault } from '../problem.js';
import { wishText } from './ballast-words.js';
import { type Wished, wishLines } from './wish-line.js';

export type Written =
  | { readonly path: string; readonly version: string }
  | { readonly failure: string };

type Chosen = { readonly wished: Wished; readonly choice: Choice; readonly pattern: Pattern };

/**
 * Writes beside the old file unless another is named; the old one is never touched, and no file is
 * written over. The wish goes along when it came from the line.
 */
export function writeVersion(
  file: string,
  named: string | true,
  { wished, choice, pattern }: Chosen,
): Written {
  const version = nextVersion(pattern.version);
  const path = named === true ? join(dirname(file), `${pattern.name}-${version}.yaml`) : named;
  if (isThere(path))
    return {
      failure: `${path} is there already; nothing was written. Name another: --write FILE.`,
    };
  const text = readText(file);
  if ('code' in text) throw new Fault(`${file} was read and is gone`);
  const source = readSource(file, text.text);
  if (!('data' in source)) throw new Fault(`${file} was read and is no more to be read`);
  const ownScale = source.data.scaleRatio ?? 1;
  const hard = source.data.scaleHardware === true ? pattern.scaleRatio : 1;
  const holes = choice.holes.map((h) => holeLine(h, pattern.scaleRatio, hard));
  const changes = [
    { key: 'version', lines: [`"${version}"`] },
    { key: 'ballast', lines: holes },
    // The size a run orders becomes the new version's own.
    ...(ownScale === pattern.scaleRatio
      ? []
      : [{ key: 'scaleRatio', lines: [String(pattern.scaleRatio)] }]),
    ...(wished.changed ? [{ key: 'wish', lines: wishLines(wished.wish, pattern.scaleRatio) }] : []),
  ];
  const remark = `Version ${version}, from ${pattern.version} in ${basename(file)}: ballast for a lure that ${wishText(wished.wish)}.`;
  const made = rewritten(text.text, source, changes, remark);
  if (!says(made, { version, holes: holes.length }))
    return {
      failure: [
        `${file} is written in a way that cannot be changed safely; nothing was written. Put this into a copy yourself:`,
        ...changes.flatMap(({ key, lines }) => [`${key}:`, ...lines.map((l) => `  ${l}`)]),
      ].join('\n'),
    };
  try {
    writeNew(path, made);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return { failure: `${path} cannot be written (${code}).` };
  }
  return { path, version };
}

/** Whether the new text can be read, and says what it should. */
function says(
  text: string,
  { version, holes }: { readonly version: string; readonly holes: number },
): boolean {
  const source = readSource('', text);
  if (!('data' in source)) return false;
  const { ballast, version: said } = source.data;
  return said === version && Array.isArray(ballast) && ballast.length === holes;
}

/** One hole as a line of the file, in the file's own size. */
function holeLine(hole: ChosenHole, scale: number, hard: number): string {
  const number = (value: number) => String(Math.round(value * 1e4) / 1e4);
  const parts = [
    `stationMm: ${number(hole.stationMm / scale)}`,
    ...(hole.tiltDeg === 0 ? [] : [`tiltDeg: ${number(hole.tiltDeg)}`]),
    `diameterMm: ${number(hole.diameterMm / hard)}`,
    `depthMm: ${number(hole.depthMm / scale)}`,
    ...(hole.pointAngleDeg === USUAL_POINT_DEG
      ? []
      : [`pointAngleDeg: ${number(hole.pointAngleDeg)}`]),
    `metal: ${hole.metal}`,
    ...(hole.pour === 'single' ? ['pour: single'] : []),
    ...(hole.weight === null ? [] : [`weight: ${JSON.stringify(hole.weight)}`]),
  ];
  return `- { ${parts.join(', ')} }`;
}
