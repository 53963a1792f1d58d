/** What stands on the shop sheet. */
import type { Entry } from './entry.js';

export const sheetProblems = {
  'letters-not-printable': {
    severity: 'warning',
    what: '“{text}” has letters that the faces for paper do not have: {letters}.',
    limit:
      'Letters of DejaVu Sans Condensed: Latin, Greek, Cyrillic, Hebrew, Arabic and many signs.',
    from: 'the faces that come with the program and may be embedded',
    fix: 'Nothing need be done: the HTML sheet shows them as they are, PDF shows their code points in brackets. Write the name in other letters to have it on paper.',
    about:
      'A name or note holds letters that cannot be printed; on paper their code points stand in brackets.',
  },
} as const satisfies Record<string, Entry>;
