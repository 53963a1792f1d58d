/** The schemas as a manual: every parameter with its description, kind, range and default. */
import { z } from 'zod';
import { unwrapped } from './form.js';

export type Parameter = {
  /** `body.offsets[].backMm` */
  readonly key: string;
  readonly about: string;
  /** `number, 0 to 10`, `text`, `one of steered, follows`, `list`, `keys`. */
  readonly kind: string;
  readonly required: boolean;
  /** As it would be written in a file; null when there is none. */
  readonly preset: string | null;
};

/** All parameters of a file format, in the order of the format. */
export function parametersOf(sections: Readonly<Record<string, z.ZodType>>): Parameter[] {
  return Object.entries(sections).flatMap(([key, schema]) => parameter(key, schema));
}

type Def = {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly element?: z.ZodType;
  /** Of a table of rows by name. */
  readonly valueType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly defaultValue?: unknown;
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
};

const defOf = (schema: z.ZodType): Def => schema.def as unknown as Def;

function parameter(key: string, schema: z.ZodType): Parameter[] {
  const inner = unwrapped(schema);
  const own: Parameter = {
    key,
    about: schema.description ?? inner.description ?? '',
    kind: kindOf(inner),
    required: !schema.safeParse(undefined).success,
    preset: presetOf(schema),
  };
  const def = defOf(inner);
  const part = def.element ?? def.valueType;
  const shape = def.shape ?? (part && defOf(unwrapped(part)).shape);
  const prefix = def.element ? `${key}[]` : def.valueType ? `${key}.NAME` : key;
  const parts = Object.entries(shape ?? {}).flatMap(([k, s]) => parameter(`${prefix}.${k}`, s));
  return [own, ...parts];
}

function presetOf(schema: z.ZodType): string | null {
  const def = defOf(schema);
  if (def.type === 'default') return JSON.stringify(def.defaultValue);
  return def.innerType ? presetOf(def.innerType) : null;
}

function kindOf(schema: z.ZodType): string {
  const def = defOf(schema);
  switch (def.type) {
    case 'number': {
      const { minValue, maxValue } = schema as z.ZodNumber;
      const whole = (schema as z.ZodNumber).format === 'safeint' ? 'whole number' : 'number';
      return `${whole}, ${minValue} to ${maxValue}`;
    }
    case 'enum':
      return `one of ${Object.values(def.entries ?? {}).join(', ')}`;
    case 'literal':
      return `always ${(def.values ?? []).join(', ')}`;
    case 'string':
      return 'text';
    case 'boolean':
      return 'true or false';
    case 'tuple':
      return 'two numbers';
    case 'array':
      return 'list';
    case 'record':
      return 'rows by name';
    default:
      return 'keys';
  }
}

/** JSON Schema (draft 7, what a maker writes: keys with defaults may be left out). */
export const jsonSchemaOf = (schema: z.ZodType, title: string): unknown => ({
  title,
  ...z.toJSONSchema(schema, { io: 'input', target: 'draft-7' }),
});
