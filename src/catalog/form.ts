/** What a file says, held against its form. */
import type { Entry } from './entry.js';

const FORMAT = 'the file format';

export const formProblems = {
  'unknown-kind': {
    severity: 'error',
    what: 'The key kind says {value}.',
    limit: 'One of: {allowed}.',
    from: FORMAT,
    fix: 'Write `kind: pattern` for one lure or `kind: run` for an order.',
    about: 'Every file says what it is by its key kind.',
  },
  'wrong-kind': {
    severity: 'error',
    what: '{file} is a {kind} file.',
    limit: 'A {wanted} file.',
    from: 'the key that names it',
    fix: 'Name a file whose kind is {wanted}.',
    about: 'A file of one kind was named where another kind is needed.',
  },
  'unknown-key': {
    severity: 'error',
    what: 'There is no key {key} here.',
    limit: 'Known keys here: {allowed}.',
    from: FORMAT,
    fix: '{nearest}',
    about:
      'A key that the file format does not know. Nothing is ignored in silence, so it is an error.',
  },
  'missing-key': {
    severity: 'error',
    what: 'The key {key} is missing.',
    limit: '{about}',
    from: FORMAT,
    fix: 'Add it; `blankwright explain {key}` says more.',
    about: 'A key that must be there is not.',
  },
  'wrong-type': {
    severity: 'error',
    what: '{key} is {got}.',
    limit: 'It must be {expected}.',
    from: FORMAT,
    fix: 'Write {expected}; a text that looks like a number needs quotes, a number must not have any.',
    about: 'A value of the wrong kind: text for a number, a number for a list, and the like.',
  },
  'comma-number': {
    severity: 'error',
    what: '{key} is written {value}.',
    limit: 'A number with a decimal point.',
    from: FORMAT,
    fix: 'Write {pointed}.',
    about: 'A decimal comma makes YAML read the value as text.',
  },
  'not-finite': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: 'A finite number.',
    from: FORMAT,
    fix: 'Write the number itself.',
    about: 'Not-a-number and infinity are no lengths.',
  },
  'out-of-range': {
    severity: 'error',
    what: '{key} is {value}{unit}.',
    limit: '{bound} {limit}{unit}.',
    from: FORMAT,
    fix: 'Give a value inside the range; check the unit in the key’s name.',
    about: 'A number, a list’s length or a text’s length outside its range.',
  },
  'not-allowed': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: 'One of: {allowed}.',
    from: FORMAT,
    fix: 'Write one of them.',
    about: 'A value that is not in the list of allowed ones.',
  },
  'bad-name': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: '{about}',
    from: FORMAT,
    fix: 'Names look like skerry-large, versions like "1.10".',
    about:
      'Names become file names and raised letters, so they keep to plain letters, digits and hyphens.',
  },
} as const satisfies Record<string, Entry>;
