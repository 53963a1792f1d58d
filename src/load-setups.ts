/** Jig set-ups and the printer file: those a run names, or those that come with the program. */
import { z } from 'zod';
import { type Printer, printerSections } from './jig/printer.js';
import { JIG_FORMS, type JigSetups } from './jig/set-ups.js';
import type { JigSetup } from './jig/setup.js';
import { readForm } from './pattern/form.js';
import type { Source } from './pattern/source.js';
import { Fault, type KeyPath, type Problem, problem } from './problem.js';
import { beside, type Reader, wrongKind } from './reader.js';

type Setups = { readonly setups: JigSetups; readonly problems: readonly Problem[] };

const PRINTER = 'jigs/printer.yaml';

/** The set-ups a run names, and no others; without such a list those that come with the program. */
export function readSetups(
  reader: Reader,
  named: { readonly source: Source; readonly files: readonly string[] } | null,
): Setups {
  const usual = (name: string): Read => {
    const read = readSetup(reader.shipped(name));
    if (read.problems.length > 0) throw new Fault(`${name}: ${JSON.stringify(read.problems)}`);
    return read;
  };
  const reads = named
    ? namedOnes(reader, named)
    : JIG_FORMS.map(({ kind }) => usual(`jigs/${kind}.yaml`));
  const printer = reads.find((r) => r.printer)?.printer ?? (usual(PRINTER).printer as Printer);
  const byKind = Object.fromEntries(
    reads.flatMap(({ setup }) => (setup ? [[setup.jig, setup]] : [])),
  );
  return {
    setups: { asked: named !== null, printer, byKind },
    problems: reads.flatMap((r) => r.problems),
  };
}

/** What one file says. */
type Read = {
  readonly setup?: JigSetup;
  readonly printer?: Printer;
  readonly problems: readonly Problem[];
};

function namedOnes(
  reader: Reader,
  { source, files }: { readonly source: Source; readonly files: readonly string[] },
): Read[] {
  const seen = new Set<string>();
  return files.map((file, i): Read => {
    const path: KeyPath = ['jigs', i];
    const at = source.placeOf(path);
    const opened = reader.source(beside(source.file, file));
    const read = 'problems' in opened ? { problems: opened.problems } : readSetup(opened);
    const problems = read.problems.map((p) => (p.at ? p : { ...p, path, at }));
    const called = calledOf(read);
    if (called && seen.has(called))
      problems.push({ ...problem('jig-named-twice', path, { jig: called }), at });
    if (called) seen.add(called);
    return { ...read, problems };
  });
}

function calledOf({ setup, printer }: Read): string | null {
  if (printer) return 'printer';
  return JIG_FORMS.find(({ kind }) => kind === setup?.jig)?.called ?? null;
}

/** Which jig a set-up file is about, when it is none that there is: names those there are. */
const anyJig = {
  jig: z.enum(JIG_FORMS.map(({ kind }) => kind)).describe('Which jig this sets up.'),
};

function readSetup(source: Source): Read {
  if (source.data.kind === 'printer') {
    const { sections, problems } = readForm(source, printerSections);
    return problems.length > 0 ? { problems } : { printer: sections as Printer, problems };
  }
  if (source.data.kind !== 'jig') return { problems: [wrongKind(source, 'jig')] };
  const kind = JIG_FORMS.find((k) => k.kind === source.data.jig);
  if (!kind) {
    const { problems } = readForm(source, anyJig);
    return { problems: problems.filter((p) => p.path[0] === 'jig') };
  }
  const { sections, problems } = readForm(source, kind.sections);
  return problems.length > 0 ? { problems } : { setup: sections as JigSetup, problems };
}
