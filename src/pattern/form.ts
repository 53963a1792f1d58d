/**
 * Holds plain data against a schema, section by section, so that a slip in one section does not hide
 * the slips in another. The one place where the schema library's findings become problems.
 */
import type { z } from 'zod';
import { type KeyPath, type Problem, problem } from '../problem.js';
import { nearest } from './nearest.js';
import type { Source } from './source.js';

type Sections = Readonly<Record<string, z.ZodType>>;
type Outputs<S extends Sections> = { readonly [K in keyof S]: z.output<S[K]> };

export type Form<S extends Sections> = {
  /** The sections that are right, defaults filled in; a wrong one is absent. */
  readonly sections: Partial<Outputs<S>>;
  readonly problems: readonly Problem[];
};

export function readForm<S extends Sections>(source: Source, schemas: S): Form<S> {
  const problems: Problem[] = [];
  for (const key of Object.keys(source.data)) {
    if (!(key in schemas)) problems.push(unknownKey(source, [key], Object.keys(schemas)));
  }
  const sections: Partial<Record<keyof S, unknown>> = {};
  for (const [key, schema] of Object.entries(schemas)) {
    const result = schema.safeParse(source.data[key]);
    if (result.success) sections[key as keyof S] = result.data;
    else
      problems.push(
        ...result.error.issues.flatMap((issue) => fromIssue(source, schema, [key], issue)),
      );
  }
  return { sections: sections as Partial<Outputs<S>>, problems: commasOnce(problems) };
}

/** A comma for a point may leave a number that is wrong for itself: `0,5` in a row is read as 0. */
function commasOnce(problems: readonly Problem[]): Problem[] {
  const split = new Set(
    problems.filter((p) => p.code === 'comma-number').map((p) => keyText(p.path)),
  );
  return problems.filter((p) => p.code === 'comma-number' || !split.has(keyText(p.path)));
}

function fromIssue(
  source: Source,
  schema: z.ZodType,
  root: KeyPath,
  issue: z.core.$ZodIssue,
): Problem[] {
  const inner = issue.path.filter((p) => typeof p !== 'symbol');
  const path: KeyPath = [...root, ...inner];
  const value = valueAt(source.data, path);
  const key = keyText(path);
  const found = (code: Problem['code'], facts: Problem['facts']): Problem[] => [
    {
      ...problem(code, path, facts),
      at: value === undefined ? source.placeOf(path.slice(0, -1)) : source.placeOf(path),
    },
  ];
  if (issue.code === 'unrecognized_keys') {
    const known = keysOf(schemaAt(schema, inner));
    return issue.keys.map((k) => unknownKey(source, [...path, k], known));
  }
  if (value === undefined) {
    return found('missing-key', { key, about: schemaAt(schema, inner)?.description ?? 'A value.' });
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    return found('not-finite', { key, value: String(value) });
  switch (issue.code) {
    case 'too_small':
    case 'too_big': {
      const small = issue.code === 'too_small';
      const limit = Number(small ? issue.minimum : issue.maximum);
      return found('out-of-range', {
        key,
        ...measure(value, key),
        bound: small ? 'At least' : 'At most',
        limit,
      });
    }
    case 'invalid_value':
      return found('not-allowed', {
        key,
        value: shown(value),
        allowed: issue.values.map(String).join(', '),
      });
    case 'invalid_format':
      return found('bad-name', {
        key,
        value: shown(value),
        about: schemaAt(schema, inner)?.description ?? '',
      });
    case 'invalid_type': {
      const pointed =
        typeof value === 'string' && /^-?\d+,\d+$/.test(value) && value.replace(',', '.');
      if (pointed) return found('comma-number', { key, value: shown(value), pointed });
      return found('wrong-type', {
        key,
        got: shown(value),
        expected: TYPES[issue.expected] ?? issue.expected,
      });
    }
    default:
      return found('wrong-type', { key, got: shown(value), expected: issue.message });
  }
}

const TYPES: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'two numbers, [x, y]',
  object: 'keys with values',
};

function unknownKey(source: Source, path: KeyPath, known: readonly string[]): Problem {
  const split = splitNumber(source, path);
  if (split) return split;
  const key = String(path[path.length - 1]);
  const guess = nearest(key, known);
  const facts = {
    key: keyText(path),
    allowed: known.join(', '),
    nearest: guess
      ? `Did you mean ${guess}?`
      : 'Delete it, or look the right one up with `blankwright explain`.',
    ...(guess ? { guess } : {}),
  };
  return { ...problem('unknown-key', path, facts), at: source.placeOfKey(path) };
}

/** `{ backMm: 5,5 }` is read as backMm 5 and a key 5 without a value: a decimal comma in a row. */
function splitNumber(source: Source, path: KeyPath): Problem | null {
  const digits = String(path[path.length - 1]);
  const before = source.keyBefore(path);
  if (!/^\d+$/.test(digits) || before === null || valueAt(source.data, path) !== null) return null;
  const at = [...path.slice(0, -1), before];
  const whole = valueAt(source.data, at);
  if (typeof whole !== 'number') return null;
  const facts = { key: keyText(at), value: `${whole},${digits}`, pointed: `${whole}.${digits}` };
  return { ...problem('comma-number', at, facts), at: source.placeOf(at) };
}

/** `body.offsets[2].backMm`, as people write it. */
export const keyText = (path: KeyPath): string =>
  path.map((p, i) => (typeof p === 'number' ? `[${p}]` : i === 0 ? p : `.${p}`)).join('');

function valueAt(data: unknown, path: KeyPath): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** What a limit is about: the number itself with the unit of its key, or how many there are. */
function measure(value: unknown, key: string): { value: number; unit: string } {
  if (typeof value === 'number') return { value, unit: unitOf(key) };
  if (Array.isArray(value)) return { value: value.length, unit: ' entries long' };
  return { value: String(value).length, unit: ' characters long' };
}

const UNITS: readonly (readonly [suffix: string, unit: string])[] = [
  ['Mm', ' mm'],
  ['Deg', '°'],
  ['Min', ' min'],
  ['Hours', ' h'],
  ['G', ' g'],
];

const unitOf = (key: string): string => UNITS.find(([suffix]) => key.endsWith(suffix))?.[1] ?? '';

function shown(value: unknown): string {
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'keys with values';
  const text = String(value);
  const short = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return typeof value === 'string' ? `"${short}"` : short;
}

/** The schema a path leads to, through optional parts, defaults, lists, objects and rows by name. */
export function schemaAt(schema: z.ZodType, path: KeyPath): z.ZodType | undefined {
  let at: z.ZodType | undefined = unwrapped(schema);
  let described: z.ZodType | undefined = schema;
  for (const step of path) {
    const def = at?.def as
      | { element?: z.ZodType; shape?: Record<string, z.ZodType>; valueType?: z.ZodType }
      | undefined;
    described = typeof step === 'number' ? def?.element : (def?.shape?.[step] ?? def?.valueType);
    at = described && unwrapped(described);
  }
  return described?.description === undefined ? at : described;
}

export function unwrapped(schema: z.ZodType): z.ZodType {
  const def = schema.def as { type?: string; innerType?: z.ZodType };
  return def.innerType ? unwrapped(def.innerType) : schema;
}

const keysOf = (schema: z.ZodType | undefined): string[] => {
  const def = schema && (unwrapped(schema).def as { shape?: Record<string, z.ZodType> });
  return Object.keys(def?.shape ?? {});
};
