/** A set that cannot be written. */
import type { Entry } from './entry.js';

export const writingProblems = {
  'output-is-file': {
    severity: 'error',
    what: '{path} is a file.',
    limit: 'A folder, or nothing yet.',
    from: 'the command line',
    fix: 'Name another folder with --out.',
    about: 'The output folder’s name is taken by a file.',
  },
  'output-not-ours': {
    severity: 'error',
    what: '{path} holds {name}, which no earlier build lists.',
    limit: 'An empty folder, or one that holds an earlier build only.',
    from: 'nothing of yours is overwritten',
    fix: 'Move it away, or name another folder with --out.',
    about: 'The output folder holds files this program did not write.',
  },
  'output-changed': {
    severity: 'error',
    what: '{path} holds {name}, which was changed after it was built.',
    limit: 'Files as the earlier build left them.',
    from: 'nothing of yours is overwritten',
    fix: 'Keep your copy elsewhere and delete it there, or name another folder with --out.',
    about: 'A file of an earlier set was edited by hand and would be lost.',
  },
  'output-is-here': {
    severity: 'error',
    what: '{path} is the folder you are in.',
    limit: 'A folder that can be exchanged for a new one.',
    from: 'a set appears whole or not at all',
    fix: 'Go to another folder first, or name another folder with --out.',
    about: 'The output folder is the one the command was given in, or one above it.',
  },
  'output-unwritable': {
    severity: 'error',
    what: '{path} cannot be written ({reason}).',
    limit: 'A folder this user may write, with room on the disk.',
    from: 'the operating system',
    fix: 'Name another folder with --out.',
    about: 'The operating system refused to write the output.',
  },
} as const satisfies Record<string, Entry>;
