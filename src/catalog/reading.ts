/** A file that cannot be read. */
import type { Entry } from './entry.js';

const FORMAT = 'the file format';

export const readingProblems = {
  'file-missing': {
    severity: 'error',
    what: 'There is no file {path}.',
    limit: 'A file that exists.',
    from: 'where it is named',
    fix: 'Check the spelling and the folder; a path inside a file starts from that file’s folder. `blankwright new` writes a file to start from.',
    about: 'A file named on the command line, or by a run, does not exist.',
  },
  'file-is-folder': {
    severity: 'error',
    what: '{path} is a folder.',
    limit: 'A file.',
    from: 'where it is named',
    fix: 'Name a file inside it.',
    about: 'A folder was named where a file is needed.',
  },
  'file-unreadable': {
    severity: 'error',
    what: '{path} cannot be read ({reason}).',
    limit: 'A file this user may read.',
    from: 'the operating system',
    fix: 'Check the file’s permissions and the disk.',
    about: 'The operating system refused to read the file.',
  },
  'file-too-large': {
    severity: 'error',
    what: 'The file has {bytes} bytes.',
    limit: 'At most {limitBytes} bytes.',
    from: FORMAT,
    fix: 'A parameter file is a page or two of text; check that this is the right file.',
    about: 'Parameter files are small; a huge one is a mistake.',
  },
  'file-binary': {
    severity: 'error',
    what: 'The file is not UTF-8 text (first bad byte at {byte}).',
    limit: 'Plain text in UTF-8.',
    from: FORMAT,
    fix: 'Check that this is the right file, and save it as UTF-8.',
    about: 'The file holds bytes that are not text.',
  },
  'file-empty': {
    severity: 'error',
    what: 'The file says nothing.',
    limit: 'Keys and values, starting with schema and kind.',
    from: FORMAT,
    fix: '`blankwright new pattern NAME` writes a commented file to start from.',
    about: 'The file is empty or holds comments only.',
  },
  'yaml-syntax': {
    severity: 'error',
    what: 'This is not valid YAML: {reason}.',
    limit: 'One YAML document.',
    from: 'YAML 1.2',
    fix: 'Look at the indentation, colons and quotes at this place.',
    about: 'The text cannot be read as YAML.',
  },
  'yaml-aliases': {
    severity: 'error',
    what: 'The anchors of this file multiply into more than {limit} copies.',
    limit: 'At most {limit} uses of anchors.',
    from: FORMAT,
    fix: 'Write the values out instead of repeating them by anchors.',
    about: 'YAML anchors that refer to each other can grow without end; such files are refused.',
  },
} as const satisfies Record<string, Entry>;
