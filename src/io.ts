/** The only file access of the program: read a text, look at an output folder, write a whole set. */
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Problem, problem } from './problem.js';

export type OutputFile = { readonly path: string; readonly bytes: Uint8Array };

/** A parameter file is a page or two; more than this is a mistake. */
const LARGEST_TEXT_BYTES = 1 << 20;

export const sha256 = (bytes: Uint8Array | string): string =>
  createHash('sha256').update(bytes).digest('hex');

/** Reads a UTF-8 text; a byte order mark is dropped. What stands in the way is a problem, not an exception. */
export function readText(
  path: string,
): { readonly text: string; readonly sha256: string } | Problem {
  let bytes: Buffer;
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return problem('file-is-folder', [], { path });
    if (stat.size > LARGEST_TEXT_BYTES) {
      return {
        ...problem('file-too-large', [], { bytes: stat.size, limitBytes: LARGEST_TEXT_BYTES }),
        at: start(path),
      };
    }
    bytes = readFileSync(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return problem('file-missing', [], { path });
    return problem('file-unreadable', [], { path, reason: code ?? String(error) });
  }
  const bad = firstNonText(bytes);
  if (bad !== null) return { ...problem('file-binary', [], { byte: bad }), at: start(path) };
  return { text: bytes.toString('utf8').replace(/^\uFEFF/, ''), sha256: sha256(bytes) };
}

const start = (file: string) => ({ file, line: 1, column: 1 });

/** Index of the first byte that is no UTF-8 text (a NUL counts), or null. */
function firstNonText(bytes: Buffer): number | null {
  const nul = bytes.indexOf(0);
  if (nul >= 0) return nul;
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return null;
  } catch {
    const redone = Buffer.from(bytes.toString('utf8'), 'utf8');
    let i = 0;
    while (i < bytes.length && bytes[i] === redone[i]) i++;
    return i;
  }
}

/** Where a table, set-up or schema is that comes with the program: beside src/ or dist/. */
export const shippedPath = (name: string): string =>
  fileURLToPath(new URL(`../${name}`, import.meta.url));

export const isThere = (path: string): boolean => existsSync(path);

/** The faces text is set in: DejaVu Sans Condensed, free to embed. */
export function readFaces(): { readonly regular: Uint8Array; readonly bold: Uint8Array } {
  const face = (name: string) =>
    readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  return { regular: face('DejaVuSansCondensed'), bold: face('DejaVuSansCondensed-Bold') };
}

/** Writes one new file and its folder. Refuses to overwrite (error code EEXIST). */
export function writeNew(path: string, text: string): void {
  makeFolder(dirname(path));
  writeFileSync(path, text, { flag: 'wx' });
}

const MANIFEST = 'manifest.json';

/** The folder meant, links followed; also when it is not there yet. */
function realFolder(dir: string): string {
  const path = resolve(dir);
  return existsSync(path) ? realpathSync(path) : path;
}

/** Why a set may not be written into a folder, before anything is computed; null when it may. */
export function outputProblem(dir: string): Problem | null {
  const target = realFolder(dir);
  if (!existsSync(target)) {
    const file = existingAncestor(target);
    return statSync(file).isDirectory() ? null : problem('output-is-file', [], { path: file });
  }
  if (!statSync(target).isDirectory()) return problem('output-is-file', [], { path: target });
  const path = dir === '' ? '.' : dir;
  try {
    const listed = listedFiles(target);
    for (const name of filesBelow(target)) {
      if (name === MANIFEST && listed.size > 0) continue;
      const known = listed.get(name);
      if (known === undefined) return problem('output-not-ours', [], { path, name });
      if (known !== sha256(readFileSync(join(target, name))))
        return problem('output-changed', [], { path, name });
    }
  } catch (error) {
    return unwritable(path, error);
  }
  // The folder is exchanged for a new one, which would pull the ground from under the shell in it.
  const here = `${process.cwd()}${sep}`;
  return here.startsWith(`${target}${sep}`) ? problem('output-is-here', [], { path }) : null;
}

function existingAncestor(path: string): string {
  let at = path;
  while (!existsSync(at)) at = dirname(at);
  return at;
}

/** Files an earlier build of ours lists, with their hashes; none when there is no manifest of ours. */
function listedFiles(dir: string): ReadonlyMap<string, string> {
  const path = join(dir, MANIFEST);
  if (!existsSync(path)) return new Map();
  try {
    type Listed = {
      readonly tool?: unknown;
      readonly files?: readonly { path?: unknown; sha256?: unknown }[];
    };
    const manifest = JSON.parse(readFileSync(path, 'utf8')) as Listed | null;
    if (manifest?.tool !== 'blankwright' || !Array.isArray(manifest.files)) return new Map();
    return new Map(manifest.files.map((f) => [String(f?.path), String(f?.sha256)]));
  } catch {
    return new Map();
  }
}

function filesBelow(dir: string): string[] {
  return readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(dir, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/**
 * Writes a set of files as the whole content of a folder. They are written beside it first; then the
 * old folder steps aside, the new one takes its name, and the old one goes. A failure at any moment
 * leaves the old set or the new one, never a mixture. Whoever calls it sees to it that an interrupt
 * waits until it is done.
 */
export function writeSet(dir: string, files: readonly OutputFile[]): Problem | null {
  const target = realFolder(dir);
  const fresh = join(dirname(target), `.${basename(target)}.new-${process.pid}`);
  const old = join(dirname(target), `.${basename(target)}.old-${process.pid}`);
  const giveUp = () => rmSync(fresh, { recursive: true, force: true });
  try {
    for (const { path, bytes } of files) writeDurably(join(fresh, path), bytes);
    const hadOld = existsSync(target);
    if (hadOld) renameSync(target, old);
    try {
      renameSync(fresh, target);
    } catch (error) {
      if (hadOld) renameSync(old, target);
      throw error;
    }
    if (hadOld) rmSync(old, { recursive: true, force: true });
    return null;
  } catch (error) {
    return unwritable(dir, error);
  } finally {
    giveUp();
  }
}

function writeDurably(path: string, bytes: Uint8Array): void {
  makeFolder(dirname(path));
  const fd = openSync(path, 'w');
  try {
    for (let done = 0; done < bytes.length; ) done += writeSync(fd, bytes, done);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/**
 * Makes a folder and those above it that are missing. Node's own recursive form never returns where
 * the system says "no such file" for a folder that cannot be made, as under /proc.
 */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  mkdirSync(path);
}

const unwritable = (path: string, error: unknown): Problem =>
  problem('output-unwritable', [], {
    path,
    reason: (error as NodeJS.ErrnoException).code ?? String(error),
  });
