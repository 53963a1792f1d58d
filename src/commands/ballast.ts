/** `blankwright ballast FILE`: the holes that make a lure lie as it is wished to. */

import { reballasted } from '../afloat/floating.js';
import { toldSpeed } from '../afloat/told-speed.js';
import { checkChoice } from '../ballast/check.js';
import { type BallastResult, searchBallast } from '../ballast/search.js';
import { load } from '../load.js';
import { floatings, withBallast } from '../lures.js';
import { isError } from '../messages.js';
import { itemRules } from '../pattern/item-rules.js';
import type { WishFile } from '../pattern/wish-schema.js';
import { assertNone, type Problem } from '../problem.js';
import { floatData, sensitivityData } from '../record/float-json.js';
import { choicesSvg } from '../record/pictures.js';
import { EXIT, jsonDocument, refuse, type Terminal } from '../terminal.js';
import { ArgumentProblem, numberOf, waterOf } from './arguments.js';
import { choicesText, type MadeChoice } from './ballast-table.js';
import { holeText, unmetText, wishText } from './ballast-words.js';
import { type Written, writeVersion } from './new-version.js';
import { assertOneLure, pickedLure } from './one-lure.js';
import { writePicture } from './picture.js';
import { refused } from './refused.js';
import { asData, tellProblems } from './tell.js';
import { inOptions, type WishOptions, wishOf } from './wish-line.js';

export type BallastOptions = WishOptions & {
  readonly temperatureC?: string;
  readonly salinityPsu?: string;
  readonly lure?: string;
  readonly picture?: string;
  readonly write?: string | true;
  readonly choice?: string;
};

export async function ballast(
  file: string,
  options: BallastOptions,
  terminal: Terminal,
): Promise<number> {
  try {
    return ballastFile(file, options, terminal);
  } catch (error) {
    if (error instanceof ArgumentProblem) return refuse('ballast', error.message, terminal);
    throw error;
  }
}

function ballastFile(file: string, options: BallastOptions, terminal: Terminal): number {
  const { job: whole, complete, problems, placed, patternFiles } = load(file);
  if (!whole || !complete || problems.some(isError)) return refused('ballast', problems, terminal);
  const {
    job,
    patternFiles: [patternFile],
    placedIn,
  } = pickedLure(whole, patternFiles, options.lure);
  assertOneLure(job, 'A search for ballast');
  const { pattern } = job.orders[0];
  const wished = wishOf(options, pattern.wish);
  const { wish } = wished;
  const unknown = itemRules({ wish }, job.materials);
  if (unknown.length > 0) throw new ArgumentProblem(unknown.map(inOptions).join('\n'));
  const water = waterOf(options);
  // The pattern's own holes do not count, and may be wrong: they are what is looked for.
  const bare = floatings(withBallast(job, []), { water });
  const planned = bare.lures[0];
  if (!planned) return refused('ballast', bare.findings.map(placedIn(placed)), terminal);
  const own = { ...planned.piece.design, pattern };
  const result = searchBallast({ ...planned.piece, design: own }, wish);
  assertNone(result.choices.flatMap((choice) => checkChoice(planned.piece, choice)));
  const made = result.choices.map(
    (choice): MadeChoice => ({ choice, floating: reballasted(planned, choice.holes) }),
  );
  const number = choiceOf(options, made.length);
  const { picture } = options;
  if (picture !== undefined) {
    const failure = writePicture(
      picture,
      choicesSvg(planned, wishText(wish), made, result.unmet && unmetText(result.unmet)),
    );
    if (failure) return refuse('ballast', failure, terminal);
  }
  const chosen = made[number - 1];
  const written =
    options.write !== undefined && chosen
      ? writeVersion(patternFile, options.write, { wished, choice: chosen.choice, pattern })
      : null;
  if (written && 'failure' in written) return refuse('ballast', written.failure, terminal);
  tellProblems(problems, terminal);
  if (terminal.json)
    terminal.out(jsonDocument(asDocument({ wish, result, made, problems, written })));
  else
    terminal.out(
      choicesText({
        file,
        wish,
        result,
        made,
        written,
        picture,
        pattern,
        ofRun: job.kind === 'run',
      }),
    );
  return made.length > 0 ? EXIT.done : EXIT.wrong;
}

/** Number of the choice to write. @throws ArgumentProblem */
function choiceOf({ choice, write }: BallastOptions, count: number): number {
  const most = Math.max(1, count);
  const number = numberOf('--choice', choice, { least: 1, most: count === 0 ? 1e6 : most }) ?? 1;
  if (!Number.isInteger(number))
    throw new ArgumentProblem(`--choice is ${number}: give a whole number.`);
  if (choice !== undefined && write === undefined)
    throw new ArgumentProblem('--choice says which to write: add --write.');
  return number;
}

type Found = {
  readonly wish: WishFile;
  readonly result: BallastResult;
  readonly made: readonly MadeChoice[];
  readonly problems: readonly Problem[];
  readonly written: Written | null;
};

const asDocument = ({ wish, result, made, problems, written }: Found) => ({
  command: 'ballast',
  ok: made.length > 0,
  problems: asData(problems),
  wish,
  wanted: result.wanted,
  choices: made.map(({ choice, floating: afloat }) => ({
    holes: choice.holes.map((hole) => ({ ...hole, drilledMm: hole.depthMm })),
    massG: choice.massG,
    attitude: choice.attitude,
    speed: choice.speed && toldSpeed(choice.speed, afloat.pattern),
    missed: choice.missed,
    woodMm: choice.woodMm,
    sensitivity: sensitivityData(choice.holes, choice),
    float: floatData(afloat),
  })),
  refused: result.refused.map((r) => ({ ...r, sets: r.holes.map(holeText) })),
  unmet: result.unmet && { ...result.unmet, words: unmetText(result.unmet) },
  written: written && 'path' in written ? written.path : null,
});
