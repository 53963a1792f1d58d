/** `blankwright float FILE`: what each lure weighs and how it lies; what a heavier block asks for; what the tub tells. */

import type { Floating } from '../afloat/floating.js';
import type { TimberDensity } from '../blank/timber-density.js';
import { load } from '../load.js';
import { floatings } from '../lures.js';
import { isError } from '../messages.js';
import { floatData } from '../record/float-json.js';
import { floatSvg } from '../record/pictures.js';
import { EXIT, jsonDocument, refuse, type Terminal } from '../terminal.js';
import { parseReading, type Reading } from '../tub/reading.js';
import { ArgumentProblem, numberOf, waterOf } from './arguments.js';
import {
  type BlockOptions,
  blockData,
  blockText,
  type Redrilled,
  redrilled,
  timberAtHand,
} from './block.js';
import { floatTables } from './float-table.js';
import { assertOneLure, pickedLure } from './one-lure.js';
import { writePicture } from './picture.js';
import { type PlugDepth, plugDepths, plugText } from './plug.js';
import { refused } from './refused.js';
import { asData, tellProblems } from './tell.js';
import { tubData, tubOf, tubText } from './tub.js';

export type FloatOptions = BlockOptions & {
  readonly temperatureC?: string;
  readonly salinityPsu?: string;
  readonly lure?: string;
  readonly plugMass?: string;
  readonly seen?: readonly string[];
  readonly picture?: string;
};

export async function float(
  file: string,
  options: FloatOptions,
  terminal: Terminal,
): Promise<number> {
  try {
    return floatFile(file, options, terminal);
  } catch (error) {
    if (error instanceof ArgumentProblem) return refuse('float', error.message, terminal);
    throw error;
  }
}

function floatFile(file: string, options: FloatOptions, terminal: Terminal): number {
  const readings = (options.seen ?? []).map(readingOf);
  const plugG = numberOf('--plug-mass', options.plugMass, { least: 0.01, most: 1000 });
  const { job: whole, complete, problems, placed, patternFiles } = load(file);
  if (!whole || !complete || problems.some(isError)) return refused('float', problems, terminal);
  const { job, placedIn } = pickedLure(whole, patternFiles, options.lure);
  const water = waterOf(options);
  const planned = floatings(job, { water });
  const found = [...problems, ...planned.findings.map(placedIn(placed))];
  if (planned.lures.length === 0) return refused('float', found, terminal);
  const atHand = timberAtHand(options, job, planned.lures);
  const ofBlock = atHand ? floatings(job, { water, timber: atHand.timber }).lures : [];
  const lures = planned.lures.map((lure, i) => (atHand?.fits(lure.pattern) ? ofBlock[i] : lure));
  const redrills = planned.lures.flatMap((lure, i) =>
    atHand?.fits(lure.pattern) ? [redrilled(lure, lures[i])] : [],
  );
  if (readings.length > 0) assertOneLure(job, '--seen');
  if (options.picture !== undefined) assertOneLure(job, '--picture');
  const plugs = plugG === null ? null : plugDepths(lures, plugG);
  const tub = readings.length > 0 ? tubOf(lures[0], readings) : null;
  const picture = options.picture;
  if (picture !== undefined) {
    const failure = writePicture(picture, floatSvg(lures[0]));
    if (failure) return refuse('float', failure, terminal);
  }
  tellProblems(found, terminal);
  if (terminal.json) {
    const [one, ...more] = lures.map(floatData);
    terminal.out(
      jsonDocument({
        command: 'float',
        ok: true,
        problems: asData(found),
        ...(job.kind === 'pattern' ? one : { run: job.name, lures: [one, ...more] }),
        ...(atHand ? { block: blockData(redrills, atHand.timber) } : {}),
        ...(plugs ? { plugs } : {}),
        ...(tub ? { tub: tubData(tub) } : {}),
      }),
    );
  } else {
    terminal.out(inWords({ lures, redrills, timber: atHand?.timber ?? null, plugs, tub, picture }));
  }
  const undrilled =
    redrills.some(({ found }) => found.kind === 'refused') ||
    (plugs ?? []).some(({ drillMm }) => drillMm === null);
  return undrilled ? EXIT.wrong : EXIT.done;
}

type Told = {
  readonly lures: readonly Floating[];
  readonly redrills: readonly Redrilled[];
  readonly timber: TimberDensity | null;
  readonly plugs: readonly PlugDepth[] | null;
  readonly tub: ReturnType<typeof tubOf> | null;
  readonly picture: string | undefined;
};

function inWords({ lures, redrills, timber, plugs, tub, picture }: Told): string {
  return [
    ...lures.map(floatTables),
    ...(timber ? [blockText(redrills, timber)] : []),
    ...(plugs ? [plugText(plugs)] : []),
    ...(tub ? [tubText(tub)] : []),
    ...(picture === undefined ? [] : [`Drawn into ${picture}.`]),
    'Lead, saws, dust, epoxy and hooks hurt people: README, "Cautions". Local rules come first.',
    '',
  ].join('\n\n');
}

function readingOf(text: string): Reading {
  const reading = parseReading(text);
  if (typeof reading === 'string') throw new ArgumentProblem(`--seen: ${reading}`);
  return reading;
}
