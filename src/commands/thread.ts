/**
 * What the two threads of a long command tell each other. One works and never looks up; the other
 * keeps the terminal and hears the interrupts. Words go by messages, interrupts by shared memory.
 */
import type { BestSoFar } from '../nest/search.js';
import type { Tool } from '../terminal.js';
import type { EffortOptions } from './effort.js';
import type { PaperOptions } from './paper-options.js';

/** A command that works in a thread of its own, with its words. */
export type Brief =
  | {
      readonly command: 'make';
      readonly file: string;
      readonly options: EffortOptions &
        PaperOptions & { readonly out?: string; readonly inches?: true };
      readonly tool: Tool;
    }
  | { readonly command: 'nest'; readonly file: string; readonly options: EffortOptions };

/** What the working thread is started with. */
export type Start = {
  readonly brief: Brief;
  readonly json: boolean;
  readonly colored: boolean;
  readonly signals: SharedArrayBuffer;
};

export type Message =
  | { readonly kind: 'out' | 'err'; readonly text: string }
  | { readonly kind: 'best'; readonly best: BestSoFar }
  | { readonly kind: 'done'; readonly code: number }
  /** It broke; `isOurs` if a check of our own said so. */
  | {
      readonly kind: 'broke';
      readonly message: string;
      readonly stack: string;
      readonly isOurs: boolean;
    };

/** What a command may ask and has to tell while it works. */
export type Watching = {
  /** True once an interrupt asked for the best so far. */
  readonly shouldStop: () => boolean;
  readonly tell: (best: BestSoFar) => void;
  /** Runs what must not be cut in half: an interrupt waits for its end. */
  readonly uncut: <T>(write: () => T) => T;
};

const [STOP, STATE] = [0, 1];
const [FREE, WRITING, ENDING] = [0, 1, 2];

/** Room for the shared words. */
export const newSignals = (): SharedArrayBuffer => new SharedArrayBuffer(8);

/** The words as both threads use them. */
export function signalsIn(shared: SharedArrayBuffer) {
  const words = new Int32Array(shared);
  return {
    stop: (): void => {
      Atomics.store(words, STOP, 1);
    },
    shouldStop: (): boolean => Atomics.load(words, STOP) !== 0,
    /** True if the program may be ended now; from then on nothing begins to be written. */
    mayEnd: (): boolean => Atomics.compareExchange(words, STATE, FREE, ENDING) !== WRITING,
    uncut: <T>(write: () => T): T => {
      // The program is about to end: wait for that.
      while (Atomics.compareExchange(words, STATE, FREE, WRITING) === ENDING)
        Atomics.wait(words, STATE, ENDING);
      try {
        return write();
      } finally {
        Atomics.store(words, STATE, FREE);
      }
    },
  };
}
