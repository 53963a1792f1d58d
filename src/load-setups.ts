/** Jig set-ups: those a run names, or those that come with the program. */
import { JIG_NAME, type JigSetups } from './jig/setup.js';
import {
  asDrillStopSetup,
  asLipSlotGuideSetup,
  drillStopSections,
  lipSlotGuideSections,
} from './jig/setup-schema.js';
import { readForm } from './pattern/form.js';
import type { Source } from './pattern/source.js';
import { Fault, type KeyPath, type Problem, problem } from './problem.js';
import { beside, type Reader, wrongKind } from './reader.js';

type Setups = { readonly setups: JigSetups; readonly problems: readonly Problem[] };

const SHIPPED = ['jigs/drill-stop.yaml', 'jigs/lip-slot-guide.yaml'];

/** The set-ups a run names, and no others; without such a list those that come with the program. */
export function readSetups(
  reader: Reader,
  named: { readonly source: Source; readonly files: readonly string[] } | null,
): Setups {
  if (named === null) {
    const read = SHIPPED.map((name) => readSetup(reader.shipped(name)));
    const problems = read.flatMap((r) => r.problems);
    if (problems.length > 0)
      throw new Fault(`set-ups that come with the program: ${JSON.stringify(problems)}`);
    return { setups: Object.assign({}, NONE, ...read.map((r) => r.setup)), problems: [] };
  }
  let setups: JigSetups = NONE;
  const problems: Problem[] = [];
  named.files.forEach((file, i) => {
    const path: KeyPath = ['jigs', i];
    const at = named.source.placeOf(path);
    const source = reader.source(beside(named.source.file, file));
    const read =
      'problems' in source ? { problems: source.problems, setup: {} } : readSetup(source);
    problems.push(...read.problems.map((p) => (p.at ? p : { ...p, path, at })));
    for (const key of Object.keys(read.setup) as (keyof JigSetups)[]) {
      if (setups[key])
        problems.push({ ...problem('jig-named-twice', path, { jig: JIG_NAME[KIND[key]] }), at });
    }
    setups = { ...setups, ...read.setup };
  });
  return { setups, problems };
}

const NONE: JigSetups = { drillStop: null, lipSlotGuide: null };
const KIND = { drillStop: 'drill-stop', lipSlotGuide: 'lip-slot-guide' } as const;

type Read = { readonly setup: Partial<JigSetups>; readonly problems: readonly Problem[] };

function readSetup(source: Source): Read {
  if (source.data.kind !== 'jig') return { setup: {}, problems: [wrongKind(source, 'jig')] };
  if (source.data.jig === 'lip-slot-guide') {
    const { sections, problems } = readForm(source, lipSlotGuideSections);
    if (problems.length > 0) return { setup: {}, problems };
    return { setup: { lipSlotGuide: asLipSlotGuideSetup(sections as LipSlotGuideFile) }, problems };
  }
  // Any other word for `jig` is held against this form, which then names what is allowed.
  const { sections, problems } = readForm(source, drillStopSections);
  if (problems.length > 0) return { setup: {}, problems };
  return { setup: { drillStop: asDrillStopSetup(sections as DrillStopFile) }, problems };
}

type DrillStopFile = Parameters<typeof asDrillStopSetup>[0];
type LipSlotGuideFile = Parameters<typeof asLipSlotGuideSetup>[0];
