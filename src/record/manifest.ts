/** What a set of files is and what it was made from, by hashes: no dates, so that the same input gives the same bytes. */

import { recordText } from './build-json.js';
import type { MadeFile } from './file-set.js';

export type Hashed = { readonly path: string; readonly sha256: string };

/**
 * `{tool, version, inputs: [{path, sha256}], files: [{path, kind, format, sha256, pattern?}]}`. Paths
 * of inputs are relative to the folder of the file that was built; those under `blankwright/` come
 * with the program.
 */
export function manifestText(
  tool: { readonly name: string; readonly version: string },
  inputs: readonly Hashed[],
  files: readonly MadeFile[],
  hash: (bytes: Uint8Array) => string,
): string {
  return recordText({
    tool: tool.name,
    version: tool.version,
    inputs: inputs.map(({ path, sha256 }) => ({ path, sha256 })),
    files: files.map(({ path, kind, format, pattern, bytes }) => ({
      path,
      kind,
      format,
      sha256: hash(bytes),
      ...(pattern === undefined ? {} : { pattern }),
    })),
  });
}
