/** The working thread of a long command. */
import { parentPort, workerData } from 'node:worker_threads';
import { Fault } from '../problem.js';
import type { Terminal } from '../terminal.js';
import { type Message, type Start, signalsIn, type Watching } from './thread.js';

const { brief, json, colored, signals } = workerData as Start;
const say = (message: Message): void => parentPort?.postMessage(message);

const terminal: Terminal = {
  out: (text) => say({ kind: 'out', text }),
  err: (text) => say({ kind: 'err', text }),
  json,
  colored,
};
const { shouldStop, uncut } = signalsIn(signals);
const watching: Watching = { shouldStop, uncut, tell: (best) => say({ kind: 'best', best }) };

async function run(): Promise<number> {
  switch (brief.command) {
    case 'make':
      return (await import('./make.js')).make(brief, terminal, watching);
    case 'nest':
      return (await import('./nest.js')).nest(brief, terminal, watching);
  }
}

try {
  say({ kind: 'done', code: await run() });
} catch (error) {
  const { message, stack = '' } = error instanceof Error ? error : new Error(String(error));
  say({ kind: 'broke', message, stack, isOurs: error instanceof Fault });
}
