/** All jigs of a pattern: made, judged, and told why not. */

import { isError } from '../messages.js';
import { assertNone, type Problem, problem } from '../problem.js';
import type { SolidKernel } from '../solid/kernel.js';
import { checkJig, checkPrinted, joined } from './check.js';
import type { JigFlaw, JigFlawCode } from './flaw.js';
import type { Jig, JigProblem, JigWork } from './jig.js';
import type { JigKind, JigSet } from './kind.js';
import { JIG_KINDS } from './kinds.js';
import { toldLeftOut } from './left-out.js';
import { type PrintedPart, printed } from './print.js';
import type { Printer } from './printer.js';
import type { Held } from './proof/hold.js';
import { checkPrinting, type Printing, printing } from './proof/printing.js';
import { holdWords, printingWords } from './proof/words.js';
import type { JigSetups } from './set-ups.js';
import { bedOf } from './setup.js';
import { checkSplit } from './split/check.js';

/** A jig that passed every check, with what is printed of it and what was measured on it. */
export type ReadyJig = {
  readonly jig: Jig;
  readonly parts: readonly PrintedPart[];
  /** Pins that join the parts, where the jig is printed in pieces. */
  readonly dowels: number;
  readonly measured: Readonly<Record<string, number>>;
  readonly proof: JigProof;
};

/** What was proved of a jig beyond figures: how it holds, how it prints, both in words too. */
export type JigProof = {
  readonly held: readonly Held[];
  /** One a printed part, in their order. */
  readonly printing: readonly Printing[];
  readonly words: readonly string[];
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
  const told = ({ code, facts, path }: JigProblem): Problem =>
    problem(code, path ?? kind.path, { jig: kind.called, name: work.blank.name, ...facts });
  const { jigs, problems } = kind.make(kernel, work, set);
  const results = jigs.map((jig) => judged(kernel, kind, jig, work, set));
  return {
    jigs: results.map((r) => r.ready),
    problems: [...problems, ...results.flatMap((r) => r.problems)].map(told),
  };
}

/** What keeps an aid from being made, as warnings; none of that kind is made. */
const leftOut = ({ problems }: JigsMade, { called }: JigKind): JigsMade => ({
  jigs: [],
  problems: toldLeftOut(problems, called),
});

function judged(kernel: SolidKernel, kind: JigKind, jig: Jig, work: JigWork, set: JigSet) {
  const { setup, printer } = set;
  const { parts, dowels, split, problems: unprinted } = printed(kernel, jig, setup, printer);
  const { held, ...common } = checkJig(kernel, jig, work);
  const printings = parts.map((part) => printing(part.mesh, printer));
  const { flaws, measured } = joined([
    common,
    kind.measure(kernel, jig, work, set),
    ...parts.map((part) => checkPrinted(part, bedOf(setup, printer))),
    ...printings.map(checkPrinting),
  ]);
  const ours = flaws.filter((f) => !OF_SET_UPS.includes(f.code));
  const unsound = split ? checkSplit(kernel, split.order, split.made) : [];
  assertNone(
    [...ours, ...unsound].map(
      (f) => `${jig.pattern} ${jig.kind} ${jig.part}: ${JSON.stringify(f)}`,
    ),
  );
  const thin = flaws.filter((f) => f.code === 'wall-thin').map(thinWall);
  const supports = printings.flatMap((p) => needsSupport(p, printer));
  const words = [...holdWords(held), ...printings.map(printingWords)];
  return {
    ready: { jig, parts, dowels, measured, proof: { held, printing: printings, words } },
    problems: [...unprinted, ...thin, ...notHeld(held), ...supports, ...lettersLeftOut(jig)],
  };
}

/** Flaws that values of a set-up can bring about; all others are ours. */
const OF_SET_UPS: readonly JigFlawCode[] = ['wall-thin', 'load-not-held'];

function notHeld(held: readonly Held[]): JigProblem[] {
  const loose = held.filter((h) => !h.held);
  return [...new Set(loose.map((h) => h.tool))].map((tool) => {
    const loads = loose.filter((h) => h.tool === tool).map((h) => h.load);
    const facts = { tool, load: [...new Set(loads)].join(', ') };
    return { code: 'jig-load-not-held', path: [], facts };
  });
}

function needsSupport(
  { overhangDeg, bridgeMm, supportAtMm }: Printing,
  printer: Printer,
): JigProblem[] {
  if (!supportAtMm) return [];
  const [xMm, yMm, zMm] = supportAtMm;
  const limits = { mostOverhangDeg: printer.overhangDeg, mostBridgeMm: printer.bridgeMm };
  const facts = { overhangDeg, bridgeMm, ...limits, xMm, yMm, zMm };
  return [{ code: 'jig-needs-support', path: [], facts }];
}

const lettersLeftOut = (jig: Jig): JigProblem[] =>
  jig.lettersLeftOut.length === 0
    ? []
    : [{ code: 'jig-letters-left-out', path: [], facts: { texts: jig.lettersLeftOut.join(', ') } }];

/** A wall that a maker's set-up left too thin. */
const thinWall = ({ measured, limit }: JigFlaw): JigProblem => ({
  code: 'jig-wall-thin',
  path: [],
  facts: { wallMm: measured, limitMm: limit },
});
