/** One line on a terminal that tells how far a search is, drawn over again and erased at the end. */
import { trimmed } from '../formats/number.js';
import type { BestSoFar } from '../nest/search.js';

export type Progress = {
  readonly tell: (best: BestSoFar) => void;
  /** An interrupt was heard. */
  readonly stopping: () => void;
  /** Takes the line away, so that something else can be written. */
  readonly erase: () => void;
  readonly end: () => void;
};

export const NO_PROGRESS: Progress = {
  tell: () => {},
  stopping: () => {},
  erase: () => {},
  end: () => {},
};

/** Nothing is shown of what is done sooner. */
const FIRST_SHOWN_MS = 500;
const REDRAWN_MS = 250;
/** Of a terminal that does not tell its own. */
const USUAL_COLUMNS = 80;
const ERASE_LINE = '\r\u001b[K';

export type Screen = { readonly write: (text: string) => unknown; readonly columns?: number };

export function progressOn(screen: Screen, now: () => number = () => performance.now()): Progress {
  const startMs = now();
  let best: BestSoFar | null = null;
  let isStopping = false;
  let isShown = false;
  const erase = (): void => {
    if (isShown) screen.write(ERASE_LINE);
    isShown = false;
  };
  const draw = (): void => {
    const ms = now() - startMs;
    if (ms < FIRST_SHOWN_MS) return;
    const line = progressText(best, Math.floor(ms / 1000), isStopping);
    // A line that wraps could not be drawn over.
    screen.write(`${ERASE_LINE}${line.slice(0, (screen.columns || USUAL_COLUMNS) - 1)}`);
    isShown = true;
  };
  const timer = setInterval(draw, REDRAWN_MS);
  return {
    tell: (found) => {
      best = found;
    },
    stopping: () => {
      isStopping = true;
      draw();
    },
    erase,
    end: () => {
      clearInterval(timer);
      erase();
    },
  };
}

export function progressText(best: BestSoFar | null, seconds: number, isStopping: boolean): string {
  const found = best
    ? `best so far ${trimmed(best.timberUsedMm3 / 1e6, 2)} l for ${best.blanks} blanks, `
    : 'working, ';
  const stopping = isStopping ? '; stopping, Ctrl-C again ends at once' : '';
  return `${found}${seconds} s${stopping}`;
}
