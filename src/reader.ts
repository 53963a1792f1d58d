/** Reads each file once and remembers what was read, by paths that do not depend on the machine. */

import { dirname, isAbsolute, join, relative, sep } from 'node:path';
import { readText, shippedPath } from './io.js';
import { readSource, type Source } from './pattern/source.js';
import { Fault, type Problem, problem } from './problem.js';
import { bladeTable } from './tables/blades.js';
import {
  bitTable,
  coatTable,
  fittingTable,
  type Materials,
  materialsOf,
  metalTable,
  plateTable,
  weightTable,
} from './tables/materials.js';
import { stepTable } from './tables/steps.js';
import { timberTable } from './tables/timbers.js';

/** A file that went into the job. `path` is relative to the folder of the file named. */
export type Input = { readonly path: string; readonly sha256: string };

export type Failed = { readonly problems: readonly Problem[] };
export type Reader = {
  readonly source: (path: string) => Source | Failed;
  /** A table or set-up that comes with the program. */
  readonly shipped: (name: string) => Source;
  readonly inputs: () => Input[];
  /** Of a file that was read; '' of any other. */
  readonly sha256Of: (path: string) => string;
};

export function makeReader(main: string): Reader {
  const read = new Map<string, Source | Failed>();
  const inputs: Input[] = [];
  const hashes = new Map<string, string>();
  const open = (path: string, name: string): Source | Failed => {
    const text = readText(path);
    if ('code' in text) return { problems: [text] };
    inputs.push({ path: name, sha256: text.sha256 });
    hashes.set(path, text.sha256);
    const source = readSource(path, text.text);
    return 'data' in source ? source : { problems: source };
  };
  const once = (path: string, name: string): Source | Failed => {
    const known = read.get(path);
    if (known) return known;
    const source = open(path, name);
    read.set(path, source);
    return source;
  };
  return {
    source: (path) => once(path, relative(dirname(main), path).split(sep).join('/')),
    shipped: (name) => {
      const source = once(shippedPath(name), `blankwright/${name}`);
      if ('problems' in source)
        throw new Fault(`${name}, which comes with the program, cannot be read`);
      return source;
    },
    sha256Of: (path) => hashes.get(path) ?? '',
    inputs: () => [...inputs].sort((a, b) => (a.path < b.path ? -1 : 1)),
  };
}

/** What a schema does, whichever library it is made with. */
type Schema<T> = {
  readonly safeParse: (
    data: unknown,
  ) => { success: true; data: T } | { success: false; error: { readonly message: string } };
};

/** The tables of `shared/`. */
export function readMaterials(reader: Reader): Materials {
  const table = <T>(name: string, schema: Schema<T>): T => {
    const file = `shared/${name}.yaml`;
    const read = schema.safeParse(reader.shipped(file).data);
    if (!read.success) throw new Fault(`${file}: ${read.error.message}`);
    return read.data;
  };
  return materialsOf({
    ...table('timbers', timberTable),
    ...table('metals', metalTable),
    ...table('plates', plateTable),
    ...table('coats', coatTable),
    ...table('fittings', fittingTable),
    ...table('weights', weightTable),
    ...table('bits', bitTable),
    ...table('blades', bladeTable),
    ...table('steps', stepTable),
  });
}

/** A path named in a file, from the folder of that file unless it is absolute. */
export const beside = (file: string, named: string): string =>
  isAbsolute(named) ? named : join(dirname(file), named);

/** The problem of a file of one kind where another is needed. */
export const wrongKind = (source: Source, wanted: string): Problem =>
  problem('wrong-kind', [], {
    file: source.file,
    kind: String(source.data.kind ?? 'nameless'),
    wanted,
  });
