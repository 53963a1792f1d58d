/** All jigs of a blank. */
import type { Blank } from '../blank/blank.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { SolidKernel } from '../solid/kernel.js';
import { drillStopJig } from './drill-stop.js';
import type { JigFlaw } from './flaw.js';
import type { Jig, JigProblem } from './jig.js';
import { lipSlotGuide } from './lip-slot-guide.js';
import { JIG_NAME, type JigSetups } from './setup.js';

export type JigSet = { readonly jigs: readonly Jig[]; readonly problems: readonly Problem[] };

/** A lure without ballast has no drill-stop jig, one without a lip no slot guide. */
export function makeJigs(kernel: SolidKernel, blank: Blank, setups: JigSetups): JigSet {
  const drill = setups.drillStop && drillStopJig(kernel, blank, setups.drillStop);
  const guide = setups.lipSlotGuide && lipSlotGuide(kernel, blank, setups.lipSlotGuide);
  const at =
    (path: KeyPath) =>
    (p: JigProblem): Problem =>
      problem(p.code, path, { name: blank.name, ...p.facts });
  const jigs = [drill?.jig, guide?.jig].filter((j): j is Jig => j != null);
  return {
    jigs,
    problems: [
      ...(drill?.problems.map(at(['ballast'])) ?? []),
      ...(guide?.problems.map(at(['lip', 'slot'])) ?? []),
      ...jigs.flatMap(lettersProblem),
    ],
  };
}

const lettersProblem = ({ kind, pattern, lettersLeftOut }: Jig): Problem[] =>
  lettersLeftOut.length === 0
    ? []
    : [
        problem('jig-letters-left-out', [], {
          jig: JIG_NAME[kind],
          name: pattern,
          texts: lettersLeftOut.join(', '),
        }),
      ];

/** A wall that a maker's set-up left too thin is the set-up's fault; every other flaw is ours. */
export const wallProblem = (jig: Jig, { measured, limit }: JigFlaw): Problem =>
  problem('jig-wall-thin', [], {
    jig: JIG_NAME[jig.kind],
    name: jig.pattern,
    wallMm: measured,
    limitMm: limit,
  });
