import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { progressOn, progressText } from '../../src/commands/progress.js';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const watched = (columns = 80) => {
  const written: string[] = [];
  const screen = { write: (text: string) => written.push(text), columns };
  return { written, progress: progressOn(screen, () => Date.now()) };
};
const BEST = { timberUsedMm3: 5_770_000, blanks: 56 };

test('nothing is shown of what is done within half a second', () => {
  const { written, progress } = watched();
  progress.tell(BEST);
  vi.advanceTimersByTime(400);
  progress.end();
  vi.advanceTimersByTime(2000);
  expect(written).toEqual([]);
});

test('one line, drawn over again and erased at the end and before anything else is written', () => {
  const { written, progress } = watched();
  progress.tell(BEST);
  vi.advanceTimersByTime(1250);
  expect(written.length).toBeGreaterThan(1);
  for (const text of written) {
    expect(text.startsWith('\r\u001b[K')).toBe(true);
    expect(text).not.toContain('\n');
  }
  expect(written.at(-1)).toContain('5.77 l for 56 blanks, 1 s');
  progress.erase();
  expect(written.at(-1)).toBe('\r\u001b[K');
  progress.end();
  expect(written.filter((t) => t === '\r\u001b[K').length).toBe(1);
  const before = written.length;
  vi.advanceTimersByTime(2000);
  expect(written.length).toBe(before);
});

test('it never wraps, and tells that an interrupt was heard', () => {
  const { written, progress } = watched(20);
  vi.advanceTimersByTime(600);
  progress.tell(BEST);
  progress.stopping();
  progress.end();
  expect(Math.max(...written.map((t) => t.replace('\r\u001b[K', '').length))).toBeLessThan(20);
  expect(progressText(null, 3, false)).toBe('working, 3 s');
  expect(progressText(BEST, 3, true)).toMatch(/Ctrl-C again ends at once$/);
});
