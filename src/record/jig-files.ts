/** The files of a pattern's jigs: each part as STL, the set laid out on the bed as 3MF, pictures. */
import { stl } from '../formats/stl.js';
import { type ThreemfPart, type ThreemfSet, threemf } from '../formats/threemf.js';
import { threemfComplaints } from '../formats/threemf-check.js';
import { utf8 } from '../formats/utf8.js';
import { checkJigFile } from '../jig/check.js';
import type { Jig } from '../jig/jig.js';
import { JIG_KINDS } from '../jig/kinds.js';
import { laidOut } from '../jig/lay-out.js';
import { type PrintedPart, partName } from '../jig/print.js';
import type { Printer } from '../jig/printer.js';
import type { ReadyJig } from '../jig/set.js';
import { assertNone, Fault } from '../problem.js';
import { assemblySheet, kindSheet, type PicturedWork } from './jig-pictures.js';
import { solidsSvg } from './pictures.js';

export type JigFile = {
  readonly path: string;
  readonly kind: 'jig' | 'picture';
  readonly format: 'stl' | '3mf' | 'svg';
  readonly bytes: Uint8Array;
};

/** The STL of each printed part. */
export const jigPaths = (ready: ReadyJig): string[] =>
  ready.parts.map((part) => `jigs/${partName(ready.jig, part)}.stl`);

type Named = { readonly name: string; readonly part: PrintedPart };

/** What a pattern's jigs are printed and read from. `tool`: name and version of the program. */
export function jigFiles(
  jigs: readonly ReadyJig[],
  { work, printer, tool }: { work: PicturedWork; printer: Printer; tool: string },
): JigFile[] {
  if (jigs.length === 0) return [];
  const named = jigs.flatMap((ready) =>
    ready.parts.map((part): Named => ({ name: partName(ready.jig, part), part })),
  );
  const title = `${work.name} ${work.version}`;
  const mf = (path: string, parts: readonly ThreemfPart[]): JigFile => ({
    path,
    kind: 'jig',
    format: '3mf',
    bytes: threemfOf({ title, description: `Jigs for ${title}`, application: tool, parts }),
  });
  return [
    ...named.map(
      ({ name, part }): JigFile => ({
        path: `jigs/${name}.stl`,
        kind: 'jig',
        format: 'stl',
        bytes: jigStl(name, part),
      }),
    ),
    ...setFiles(named, printer, work.name).map(({ path, parts }) => mf(path, parts)),
    ...pictures(
      jigs.map(({ jig }) => jig),
      work,
    ),
  ];
}

/** A part's STL, read back by another reader before it is let out. */
function jigStl(name: string, part: PrintedPart): Uint8Array {
  const bytes = stl(part.mesh, name);
  const { flaws } = checkJigFile(part, bytes);
  if (flaws.length > 0) throw new Fault(`${name}: ${JSON.stringify(flaws)}`);
  return bytes;
}

function threemfOf(set: ThreemfSet): Uint8Array {
  const bytes = threemf(set);
  assertNone(threemfComplaints(set, bytes));
  return bytes;
}

/** One file a bed; the first has no number when there is no second. */
function setFiles(named: readonly Named[], printer: Printer, pattern: string) {
  const beds = laidOut(
    named.map(({ part }) => part),
    printer,
  );
  return beds.map((laid, i) => ({
    path: `jigs/${pattern}-set${beds.length > 1 ? `-${i + 1}` : ''}.3mf`,
    parts: laid.map(({ part, at }): ThreemfPart => {
      const { name, part: printed } = named[part];
      return { name, mesh: printed.mesh, at };
    }),
  }));
}

function pictures(jigs: readonly Jig[], work: PicturedWork): JigFile[] {
  const kinds = [...new Set(jigs.map((j) => j.kind))];
  const of = (kind: string) => jigs.filter((j) => j.kind === kind);
  const picture = (name: string, sheet: Parameters<typeof solidsSvg>[0]): JigFile => ({
    path: `jigs/${work.name}-${name}.svg`,
    kind: 'picture',
    format: 'svg',
    bytes: utf8(solidsSvg(sheet)),
  });
  const [guide, drill] = ['lip-slot-guide', 'drill-stop'].map((kind) => of(kind)[0]);
  return [
    ...kinds.map((kind) => picture(kind, kindSheet(of(kind), calledOf(kind), work))),
    ...(guide && drill
      ? [
          picture(
            'assembly',
            assemblySheet([guide, drill], [calledOf(guide.kind), calledOf(drill.kind)], work),
          ),
        ]
      : []),
  ];
}

/** What a kind is called; one that has no set-up of its own name is called by its own words. */
const calledOf = (kind: string): string =>
  JIG_KINDS.find((k) => k.kind === kind)?.called ?? kind.replace(/-/g, ' ');
