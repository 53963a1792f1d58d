/** The generated reference: JSON Schemas for editors, docs/parameters.md and docs/problems.md. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FILE_FORMATS } from './file-formats.js';
import { CATALOG, PROBLEM_CODES } from './messages.js';
import { jsonSchemaOf, type Parameter, parametersOf } from './pattern/manual.js';

/** Every generated file by its path in the package; a test holds the committed ones to it. */
export function referenceFiles(): ReadonlyMap<string, string> {
  const schemas = FILE_FORMATS.map(({ name, title, schema }): [string, string] => [
    `schema/${name}.schema.json`,
    `${JSON.stringify(jsonSchemaOf(schema, title), null, 2)}\n`,
  ]);
  return new Map([
    ...schemas,
    ['docs/parameters.md', parameterPage()],
    ['docs/problems.md', problemPage()],
  ]);
}

function parameterPage(): string {
  const parts = FILE_FORMATS.map(({ title, sections }) => {
    const rows = parametersOf(sections).map(parameterRow);
    return [
      `## ${title}`,
      '',
      '| key | what it is | value | left out |',
      '| --- | --- | --- | --- |',
      ...rows,
      '',
    ].join('\n');
  });
  return [
    '# Parameters',
    '',
    'Made from the schemas by `npm run reference`; `blankwright explain KEY` tells the same.',
    'Every number carries its unit in its key: Mm millimeters, Deg degrees, G grams, Min minutes, Hours hours; a Ratio, an Exponent or a part ByVolume or ByMass has none.',
    '',
    ...parts,
  ].join('\n');
}

const parameterRow = ({ key, about, kind, required, preset }: Parameter): string =>
  `| \`${key}\` | ${cell(about)} | ${cell(kind)} | ${required ? 'must be there' : preset === null ? '–' : `\`${cell(preset)}\``} |`;

const cell = (text: string): string => text.replace(/\|/g, '\\|');

function problemPage(): string {
  const rows = PROBLEM_CODES.map((code) => {
    const { severity, about, limit, from, fix } = CATALOG[code];
    return `| \`${code}\` | ${severity} | ${open(about)} | ${open(limit)} (${open(from)}) | ${open(fix)} |`;
  });
  return [
    '# Problem codes',
    '',
    'Made from the message catalog by `npm run reference`; `blankwright explain CODE` tells the same. ‹Words in brackets› stand for what is found in the file.',
    '',
    '| code | severity | what it means | limit (where it comes from) | what to do |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
    '',
  ].join('\n');
}

const open = (text: string): string => cell(text.replace(/\{(\w+)\}/g, '‹$1›'));

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = fileURLToPath(new URL('..', import.meta.url));
  for (const [path, text] of referenceFiles()) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
}
