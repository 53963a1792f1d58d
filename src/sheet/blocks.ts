/** Blocks as sections use them. */
import type { Block, Column, Inlines, Table } from './document.js';
import { say, strong } from './say.js';
import { TEXTS } from './texts.js';

export const paragraph = (inlines: Inlines): Block => ({ kind: 'paragraph', inlines });

export const heading = (inlines: Inlines): Block => ({ kind: 'heading', inlines });

export const together = (...blocks: readonly Block[]): Block => ({ kind: 'together', blocks });

/** What can hurt in a step, and who has the last word on it. */
export const caution = ({
  title,
  items,
}: {
  readonly title: string;
  readonly items: readonly string[];
}): Block => ({
  kind: 'caution',
  title: say(title),
  items: [...items.map((item) => say(item)), strong(say(TEXTS.comes))],
});

/** A note's lines; nothing for an empty one. */
export function note(label: string, text: string): readonly Block[] {
  const lines = text.split(/\r\n|[\n\r\u2028\u2029]/).map((line) => line.trim());
  const told = lines.filter((line) => line !== '');
  return told.length === 0 ? [] : [{ kind: 'note', label: say(label), lines: told }];
}

/** A column of text; numbers stand at the end. */
export const column = (head: string, share: number, align: Column['align'] = 'start'): Column => ({
  head: say(head),
  align,
  share,
});

export const numbers = (head: string, share: number): Column => column(head, share, 'end');

/** A column of boxes to tick. */
export const TICKS: Column = { head: [], align: 'middle', share: 0.45 };

/** A column to write in. */
export const blank = (head: Inlines, share: number): Column => ({ head, align: 'middle', share });

type Looks = { readonly title?: Inlines; readonly forWriting?: boolean; readonly share?: number };

export const table = (
  columns: readonly Column[],
  rows: readonly (readonly Inlines[])[],
  { title, forWriting, share }: Looks = {},
): Table => ({
  kind: 'table',
  title: title ?? null,
  columns,
  rows,
  forWriting: forWriting ?? false,
  share: share ?? 1,
});
