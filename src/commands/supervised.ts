/**
 * Runs a long command in a thread of its own, so that interrupts are heard and progress is shown
 * while it works. The first interrupt asks for the best so far; the next ends the program at once,
 * as the system does, but never halfway through writing a set.
 */
import { Worker } from 'node:worker_threads';
import { Fault } from '../problem.js';
import type { Terminal } from '../terminal.js';
import { NO_PROGRESS, type Progress, progressOn } from './progress.js';
import { type Brief, type Message, newSignals, type Start, signalsIn } from './thread.js';

/** The command's exit code, once all it said is written. @throws what broke in it */
export function supervised(brief: Brief, terminal: Terminal): Promise<number> {
  const { json, colored } = terminal;
  const signals = newSignals();
  const workerData: Start = { brief, json, colored, signals };
  const worker = new Worker(new URL('./worker.js', import.meta.url), { workerData });
  const progress = process.stderr.isTTY && !json ? progressOn(process.stderr) : NO_PROGRESS;
  const deaf = hearInterrupts(signals, progress, (text) => {
    if (progress === NO_PROGRESS && !json) terminal.err(text);
  });
  return new Promise<number>((resolve, reject) => {
    let code: number | null = null;
    let broken: Error | null = null;
    worker.on('message', (message: Message) => {
      switch (message.kind) {
        case 'out':
        case 'err':
          progress.erase();
          terminal[message.kind](message.text);
          break;
        case 'best':
          progress.tell(message.best);
          break;
        case 'done':
          code = message.code;
          break;
        case 'broke':
          broken = rebuilt(message);
      }
    });
    worker.on('error', (error) => {
      broken ??= error;
    });
    // The last event, after every message.
    worker.on('exit', () => {
      deaf();
      progress.end();
      if (code !== null && !broken) resolve(code);
      else reject(broken ?? new Error('the working thread ended without a result'));
    });
  });
}

function rebuilt({ message, stack, isOurs }: Message & { kind: 'broke' }): Error {
  const error = isOurs ? new Fault(message) : new Error(message);
  error.stack = stack;
  return error;
}

/** @returns what ends the hearing */
function hearInterrupts(
  shared: SharedArrayBuffer,
  progress: Progress,
  tell: (text: string) => void,
): () => void {
  const signals = signalsIn(shared);
  const deaf = (): void => {
    process.removeListener('SIGINT', heard);
  };
  const heard = (): void => {
    if (!signals.shouldStop()) {
      signals.stop();
      progress.stopping();
      tell('Stopping; the best plan so far is kept. Interrupt again to end at once.\n');
    } else if (signals.mayEnd()) {
      progress.end();
      deaf();
      process.kill(process.pid, 'SIGINT');
    }
  };
  process.on('SIGINT', heard);
  return deaf;
}
