/** Names and notes that paper cannot show as they are. */
import { type HasLetter, missingLetters } from './formats/letters.js';
import { type Finding, finding, type Job } from './job.js';
import { type KeyPath, problem } from './problem.js';

/** Most letters and most of a text that are told. */
const MOST_LETTERS = 5;
const MOST_TEXT = 30;

/** One finding a text, at the first place that has it. @param has what the faces for paper have */
export function unprintable(job: Job, has: HasLetter): readonly Finding[] {
  const told = new Set<string>();
  return texts(job).flatMap(({ of, path, text }): Finding[] => {
    const letters = missingLetters(text, has);
    if (letters.length === 0 || told.has(text)) return [];
    told.add(text);
    return [
      finding(
        of,
        problem('letters-not-printable', path, {
          text: start(text),
          letters: spelled(letters),
        }),
      ),
    ];
  });
}

type Typed = { readonly of: Finding['of']; readonly path: KeyPath; readonly text: string };

/** What a maker types freely and the sheet shows. */
function texts({ note, orders, materials }: Job): readonly Typed[] {
  const { timbers, fittings, weights } = materials;
  return [
    { of: 'job', path: ['note'], text: note },
    ...Object.entries({ timbers, fittings, weights }).flatMap(([table, rows]) =>
      Object.keys(rows).map(
        (name): Typed => ({ of: 'job', path: ['materials', table, name], text: name }),
      ),
    ),
    ...orders.flatMap(({ pattern }, of): Typed[] => [
      { of, path: ['note'], text: pattern.note },
      ...pattern.coats.map(
        ({ name }, i): Typed => ({ of, path: ['coats', i, 'name'], text: name }),
      ),
    ]),
  ];
}

/** The beginning of the text, without letters that a terminal cannot show or would turn others round for. */
const start = (text: string): string => {
  const line = [...text.replace(/\s+/g, ' ').replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/gu, '\ufffd')];
  return line.length <= MOST_TEXT ? line.join('') : `${line.slice(0, MOST_TEXT).join('')}…`;
};

const spelled = (letters: readonly string[]): string => {
  const some = letters
    .slice(0, MOST_LETTERS)
    .map((l) => `U+${(l.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`);
  return [...some, ...(letters.length > MOST_LETTERS ? ['…'] : [])].join(', ');
};
