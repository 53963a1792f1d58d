/** Jig set-ups: those that come with the program, the ones a run names taking their place. */
import type { DrillStopSetup, LipSlotGuideSetup } from './jig/setup.js';
import {
  asDrillStopSetup,
  asLipSlotGuideSetup,
  drillStopSections,
  lipSlotGuideSections,
} from './jig/setup-schema.js';
import type { Job } from './job.js';
import { readForm } from './pattern/form.js';
import type { Source } from './pattern/source.js';
import { Fault, type KeyPath, type Place, type Problem } from './problem.js';
import { beside, type Reader, wrongKind } from './reader.js';

type Setups = { readonly setups: Job['setups']; readonly problems: readonly Problem[] };

export function readSetups(
  reader: Reader,
  named: { readonly source: Source; readonly files: readonly string[] } | null,
): Setups {
  const problems: Problem[] = [];
  let drillStop: DrillStopSetup | null = null;
  let lipSlotGuide: LipSlotGuideSetup | null = null;
  const take = (source: Source, place: Place | null): void => {
    if (source.data.kind !== 'jig') {
      problems.push({ ...wrongKind(source, 'jig'), ...(place ? { at: place } : {}) });
    } else if (source.data.jig === 'lip-slot-guide') {
      const form = readForm(source, lipSlotGuideSections);
      problems.push(...form.problems);
      if (form.problems.length === 0)
        lipSlotGuide = asLipSlotGuideSetup(
          form.sections as Parameters<typeof asLipSlotGuideSetup>[0],
        );
    } else {
      // Any other word for `jig` is held against this form, which then names what is allowed.
      const form = readForm(source, drillStopSections);
      problems.push(...form.problems);
      if (form.problems.length === 0)
        drillStop = asDrillStopSetup(form.sections as Parameters<typeof asDrillStopSetup>[0]);
    }
  };
  for (const name of ['jigs/drill-stop.yaml', 'jigs/lip-slot-guide.yaml'])
    take(reader.shipped(name), null);
  if (problems.length > 0)
    throw new Fault(`set-ups that come with the program: ${JSON.stringify(problems)}`);
  named?.files.forEach((file, i) => {
    const key: KeyPath = ['jigs', i];
    const place = named.source.placeOf(key);
    const source = reader.source(beside(named.source.file, file));
    if ('problems' in source)
      problems.push(...source.problems.map((p) => (p.at ? p : { ...p, path: key, at: place })));
    else take(source, place);
  });
  if (!drillStop || !lipSlotGuide)
    throw new Fault('a jig set-up that comes with the program is missing');
  return { setups: { drillStop, lipSlotGuide }, problems };
}
