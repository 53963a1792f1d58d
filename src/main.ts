/**
 * The command line: arguments → command → exit code. The one door to commander. Results go to
 * standard output, problems and progress to standard error.
 *
 * Exit codes: 0 done, 1 the file or the design is wrong, 2 the command line is wrong or a file
 * cannot be read or written, 70 our own fault. An interrupt ends it as the system does (130 in a shell).
 */
import { readFileSync } from 'node:fs';
import { styleText } from 'node:util';
import { Command, CommanderError, InvalidArgumentError } from 'commander';
import type { BallastOptions } from './commands/ballast.js';
import type { EffortOptions } from './commands/effort.js';
import type { FloatOptions } from './commands/float.js';
import type { PaperOptions } from './commands/paper-options.js';
import type { Brief } from './commands/thread.js';
import { Fault } from './problem.js';
import { EXIT, errorDocument, type Terminal, type Tool } from './terminal.js';

/** The program's own name and version, from its package file. */
export function tool(): Tool {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  const { name, version } = JSON.parse(text) as Tool;
  return { name, version };
}

export async function main(args: readonly string[]): Promise<number> {
  const json = args.includes('--json');
  const terminal: Terminal = {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    json,
    colored: styleText('red', 'red', { stream: process.stderr }) !== 'red',
  };
  // A reader that closes the pipe early (`| head`) has had enough: end quietly.
  process.stdout.on('error', (error: NodeJS.ErrnoException) =>
    process.exit(error.code === 'EPIPE' ? 0 : EXIT.fault),
  );
  let code: number = EXIT.done;
  const program = commands(terminal, (result) => {
    code = result;
  });
  try {
    if (args.length === 0) {
      terminal.err(program.helpInformation());
      return EXIT.usage;
    }
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    return failed(error, terminal);
  }
}

function failed(error: unknown, { out, err, json }: Terminal): number {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return EXIT.done;
    if (json) out(errorDocument('usage', error.message));
    return EXIT.usage;
  }
  const { message, stack } = error instanceof Error ? error : new Error(String(error));
  if (json) out(errorDocument('fault', message));
  const kind =
    error instanceof Fault ? 'A check of our own failed' : 'Something broke that should not';
  err(
    `${kind}; nothing was written. Please report it with the files you used and this text:\n${message}\n`,
  );
  if (process.env.BLANKWRIGHT_DEBUG) err(`${stack}\n`);
  return EXIT.fault;
}

function commands(terminal: Terminal, done: (code: number) => void): Command {
  const program = new Command('blankwright')
    .description(
      'From one parameter file to cut files, drilling jigs and a nest for a run of wooden lures.',
    )
    .version(tool().version, '--version', 'print the version')
    .helpOption('--help', 'show help')
    .addHelpText('before', examples('blankwright new pattern holm', 'blankwright make holm.yaml'))
    .exitOverride()
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.err,
      outputError: (text, write) => write(text),
    });

  const add = (usage: string, about: string, ...shown: string[]): Command =>
    program
      .command(usage)
      .description(about)
      .helpOption('--help', 'show help')
      .option('--json', 'one JSON document on standard output')
      .addHelpText('before', examples(...shown))
      .exitOverride();

  /** The options of a command that searches for a nest. */
  const searching = (command: Command): Command =>
    command
      .option('--tries <number>', 'layouts tried per face beside the systematic ones (24)', once)
      .option(
        '--seed <number>',
        'where drawn layouts start (1); same seed and tries, same nest',
        once,
      )
      .option('--seconds <number>', 'search so long, with more and more tries', once);
  const long = async (brief: Brief): Promise<void> =>
    done(await (await import('./commands/supervised.js')).supervised(brief, terminal));

  searching(
    add(
      'make FILE',
      'Build a run or a single pattern: cut files, solids, jigs, record and manifest, all or nothing.',
      'blankwright make templates/first-ice.yaml',
      'blankwright make templates/holm.yaml --out output/holm-trial',
      'blankwright make templates/holm.yaml --paper Letter --printed 179.6x240.4',
    )
      .option('--out <dir>', 'folder for the set (default: output/NAME)', once)
      .option(
        '--paper <size>',
        'paper of the true-scale pages: A4, A3, Letter, Legal, or ACROSSxALONG in mm',
        once,
      )
      .option(
        '--printed <ACROSSxALONG>',
        'what the lines of paper/printer-check.pdf measured, in mm: pages are corrected for it',
        once,
      )
      .option('--inches', 'show inches and fractions beside the millimeters of the shop sheet'),
  ).action(
    (file: string, options: EffortOptions & PaperOptions & { out?: string; inches?: true }) =>
      long({ command: 'make', file, options, tool: tool() }),
  );

  searching(
    add(
      'nest FILE',
      'Plan the nest of a run and tell how good it is; write nothing.',
      'blankwright nest templates/first-ice.yaml',
      'blankwright nest templates/first-ice.yaml --seconds 5',
    ),
  ).action((file: string, options: EffortOptions) => long({ command: 'nest', file, options }));

  add(
    'check FILE',
    'Tell every problem of a run or pattern; write nothing.',
    'blankwright check templates/skerry.yaml',
    'blankwright check templates/first-ice.yaml --json',
  ).action(async (file: string) => {
    done(await (await import('./commands/check.js')).check(file, terminal));
  });

  add(
    'float FILE',
    'Tell what each lure of a run or pattern weighs at every stage and how it lies in the water.',
    'blankwright float templates/skerry.yaml',
    'blankwright float templates/skerry.yaml --seen trimDeg=-4,massG=26.1',
  )
    .option('--lure <name>', 'for a run: one of its lures', once)
    .option('--temperature-c <number>', 'temperature of the water', once)
    .option('--salinity-psu <number>', 'salinity of the water: 0 a lake, 35 the open sea', once)
    .option(
      '--block-mass <grams>',
      'weight of the block at hand: tells the depth to drill in it',
      once,
    )
    .option('--block-size <LxWxT>', 'that block’s length, width and thickness in mm', once)
    .option('--block <name>', 'for a run: the block of the run that was weighed', once)
    .option('--blank-mass <grams>', 'weight of the sawn blank at hand, instead of a block’s', once)
    .option(
      '--plug-mass <grams>',
      'metal each hole shall keep after shaping: tells the depth to drill',
      once,
    )
    .option(
      '--seen <reading>',
      'what was read in the tub, KEY=NUMBER,…; may be given again for another look',
      (value: string, before: readonly string[] | undefined) => [...(before ?? []), value],
    )
    .option('--picture <file>', 'also draw the lure at rest into this SVG file', once)
    .action(async (file: string, options: FloatOptions) => {
      done(await (await import('./commands/float.js')).float(file, options, terminal));
    });

  add(
    'ballast FILE',
    'Find the ballast holes for a wish: how the lure shall lie in the water.',
    'blankwright ballast templates/skerry.yaml',
    'blankwright ballast templates/skerry.yaml --suspends --nose-down-deg 8 --write',
  )
    .option('--lure <name>', 'for a run: which of its lures', once)
    .option('--floats', 'wish: it floats')
    .option('--suspends', 'wish: it stays where it is')
    .option('--rises <cm/s>', 'wish: it rises so fast', once)
    .option('--sinks <cm/s>', 'wish: it sinks so fast', once)
    .option('--freeboard-mm <number>', 'wish: its highest point so far out of the water', once)
    .option(
      '--dry-ratio <number>',
      'wish: so much of its volume out of the water, 0.01 to 0.95',
      once,
    )
    .option('--nose-down-deg <number>', 'wish: the datum line so far nose down', once)
    .option('--least-gm-mm <number>', 'wish: at least so much metacentric height across', once)
    .option('--bits <mm,mm,…>', 'the bits in the drawer', once)
    .option('--metals <name,name,…>', 'the metals at hand', once)
    .option('--weights', 'glue in ready-made weights instead of pouring')
    .option('--holes <1|2>', 'at most so many holes', once)
    .option('--temperature-c <number>', 'temperature of the water', once)
    .option('--salinity-psu <number>', 'salinity of the water', once)
    .option('--picture <file>', 'also draw the choices side by side into this SVG file', once)
    .option('--write [file]', 'write a choice as the next version of the pattern, a new file', once)
    .option('--choice <number>', 'which choice to write (default: 1, the best)', once)
    .action(async (file: string, options: BallastOptions) => {
      done(await (await import('./commands/ballast.js')).ballast(file, options, terminal));
    });

  add(
    'new KIND NAME',
    'Write a commented file to start from: NAME.yaml, a pattern or a run.',
    'blankwright new pattern holm',
    'blankwright new run first-ice --pattern holm.yaml',
  )
    .option(
      '--pattern <file>',
      'for a run: the pattern it orders (default: a new one beside it)',
      once,
    )
    .action(async (kind: string, name: string, options: { pattern?: string }) => {
      done(
        await (await import('./commands/new.js')).create(
          kind,
          name,
          options.pattern ?? null,
          terminal,
        ),
      );
    });

  add(
    'explain WORD',
    'Tell what a parameter or a problem code means.',
    'blankwright explain sandingAllowanceMm',
    'blankwright explain hole-through-back',
  ).action(async (word: string) => {
    done(await (await import('./commands/explain.js')).explain(word, terminal));
  });

  return program;
}

const examples = (...lines: string[]): string =>
  `Examples:\n${lines.map((l) => `  ${l}`).join('\n')}\n`;

/** An option that may be given once; commander alone would keep the last in silence. */
function once(value: string, before: string | undefined): string {
  if (before !== undefined)
    throw new InvalidArgumentError(`It is given twice, first as '${before}'.`);
  return value;
}
