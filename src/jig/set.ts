/** All jigs of a pattern: made, judged, and told why not. */
import { isError, tell } from '../messages.js';
import { assertNone, type Problem, problem } from '../problem.js';
import type { SolidKernel } from '../solid/kernel.js';
import { checkJig, checkPrinted, joined } from './check.js';
import type { JigFlaw } from './flaw.js';
import type { Jig, JigProblem, JigWork } from './jig.js';
import type { JigKind, JigSet } from './kind.js';
import { JIG_KINDS, type JigSetups } from './kinds.js';
import { bedOf, type PrintedPart, printed } from './print.js';
import { checkSplit } from './split/check.js';

/** A jig that passed every check, with what is printed of it and what was measured on it. */
export type ReadyJig = {
  readonly jig: Jig;
  readonly parts: readonly PrintedPart[];
  /** Pins that join the parts, where the jig is printed in pieces. */
  readonly dowels: number;
  readonly measured: Readonly<Record<string, number>>;
};

export type JigsMade = {
  readonly jigs: readonly ReadyJig[];
  readonly problems: readonly Problem[];
};

/**
 * The jigs that are set up, in the order of `JIG_KINDS`; a pattern that needs none of a kind gets none.
 * @throws Fault if a jig fails a check that no set-up is to blame for.
 */
export function makeJigs(kernel: SolidKernel, work: JigWork, setups: JigSetups): JigsMade {
  const made = JIG_KINDS.flatMap((kind): JigsMade[] => {
    const setup = setups.byKind[kind.kind];
    if (!setup) return [];
    const whole = madeOf(kernel, kind, work, { setup, printer: setups.printer });
    return [
      kind.isAid && !setups.asked && whole.problems.some(isError) ? leftOut(whole, kind) : whole,
    ];
  });
  return { jigs: made.flatMap((m) => m.jigs), problems: made.flatMap((m) => m.problems) };
}

function madeOf(kernel: SolidKernel, kind: JigKind, work: JigWork, set: JigSet): JigsMade {
  const { jigs, problems } = kind.make(kernel, work, set);
  const told = ({ code, facts, path }: JigProblem): Problem =>
    problem(code, path ?? kind.path, { jig: kind.called, name: work.blank.name, ...facts });
  const results = jigs.map((jig) => {
    const {
      parts,
      dowels,
      split,
      problems: unprinted,
    } = printed(kernel, jig, set.setup, set.printer);
    const { flaws, measured } = joined([
      checkJig(kernel, jig, work),
      kind.measure(kernel, jig, work, set),
      ...parts.map((part) => checkPrinted(part, bedOf(set.setup, set.printer))),
    ]);
    const ours = flaws.filter((f) => f.code !== 'wall-thin');
    const unsound = split ? checkSplit(kernel, split.order, split.made) : [];
    assertNone(
      [...ours, ...unsound].map(
        (f) => `${jig.pattern} ${jig.kind} ${jig.part}: ${JSON.stringify(f)}`,
      ),
    );
    const thin = flaws.filter((f) => f.code === 'wall-thin').map(thinWall);
    const blamed = [...unprinted, ...thin, ...lettersLeftOut(jig)];
    return { ready: { jig, parts, dowels, measured }, problems: blamed };
  });
  return {
    jigs: results.map((r) => r.ready),
    problems: [...problems, ...results.flatMap((r) => r.problems)].map(told),
  };
}

/** What keeps an aid from being made, as warnings; none of that kind is made. */
const leftOut = ({ problems }: JigsMade, { called }: JigKind): JigsMade => ({
  jigs: [],
  problems: problems.filter(isError).map(({ code, path, facts }) => {
    const { what, limit, from, fix } = tell(code, facts);
    return problem('jig-left-out', path, {
      jig: called,
      name: facts.name,
      reason: what,
      limit,
      from,
      fix,
    });
  }),
});

const lettersLeftOut = (jig: Jig): JigProblem[] =>
  jig.lettersLeftOut.length === 0
    ? []
    : [{ code: 'jig-letters-left-out', path: [], facts: { texts: jig.lettersLeftOut.join(', ') } }];

/** A wall that a maker's set-up left too thin is the set-up's fault; every other flaw is ours. */
const thinWall = ({ measured, limit }: JigFlaw): JigProblem => ({
  code: 'jig-wall-thin',
  path: [],
  facts: { wallMm: measured, limitMm: limit },
});
