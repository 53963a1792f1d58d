/** What is left out where no run asked for it. */
import { isError, tell } from '../messages.js';
import { type Problem, problem } from '../problem.js';

/** The errors that keep a jig from being made, as warnings that it is left out; other warnings go with it. */
export const toldLeftOut = (problems: readonly Problem[], jig: string): Problem[] =>
  problems.filter(isError).map(({ code, path, facts }) => {
    const { what, limit, from, fix } = tell(code, facts);
    return problem('jig-left-out', path, { jig, name: facts.name, reason: what, limit, from, fix });
  });
