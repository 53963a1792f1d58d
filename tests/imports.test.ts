import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { expect, test } from 'vitest';

const SRC = join(import.meta.dirname, '../src');

/** Rooms from upstream to downstream; each may import those before it that are listed for it. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  catalog: [],
  geometry: [],
  tables: [],
  pattern: ['geometry', 'tables'],
  body: ['geometry', 'pattern'],
  blank: ['geometry', 'tables', 'pattern', 'body'],
  wire: ['geometry'],
  mass: ['geometry', 'tables', 'pattern', 'body', 'blank', 'wire'],
  float: ['geometry', 'pattern'],
  ballast: ['geometry', 'tables', 'pattern', 'body', 'blank', 'mass', 'float'],
  afloat: ['geometry', 'tables', 'pattern', 'body', 'blank', 'mass', 'float', 'ballast'],
  tub: ['geometry', 'pattern', 'blank', 'mass', 'float'],
  solid: ['geometry'],
  shade: ['geometry'],
  lattice: ['geometry'],
  linear: [],
  pack: ['geometry', 'linear'],
  nest: ['geometry', 'blank', 'lattice', 'linear', 'pack'],
  cutplan: ['geometry', 'tables', 'pattern', 'nest'],
  gauge: ['geometry', 'pattern', 'body', 'blank', 'mass'],
  drawing: ['geometry', 'shade', 'pattern', 'body', 'blank', 'mass', 'float', 'gauge'],
  jig: [
    'geometry',
    'linear',
    'tables',
    'pattern',
    'body',
    'blank',
    'wire',
    'mass',
    'solid',
    'gauge',
  ],
  shop: [
    'geometry',
    'tables',
    'pattern',
    'body',
    'blank',
    'wire',
    'mass',
    'float',
    'ballast',
    'afloat',
    'nest',
    'jig',
  ],
  sheet: ['shop'],
  formats: ['geometry', 'shade', 'solid', 'drawing', 'sheet'],
  paper: ['geometry', 'pattern', 'body', 'blank', 'wire', 'gauge', 'drawing', 'formats'],
  record: [
    'geometry',
    'blank',
    'body',
    'mass',
    'float',
    'ballast',
    'afloat',
    'solid',
    'shade',
    'nest',
    'cutplan',
    'gauge',
    'drawing',
    'jig',
    'wire',
    'shop',
    'sheet',
    'tables',
    'paper',
    'pattern',
    'formats',
  ],
};
/** Everyone may use these; they import none of the rooms. */
const FOR_ALL = ['problem.ts', 'messages.ts'];
/** Files that bind the rooms together; only they see all of them. */
const BINDING = ['bench', 'commands'];

const LIBRARY_DOORS: Readonly<Record<string, readonly string[]>> = {
  'clipper2-ts': ['geometry/clip.ts'],
  makerjs: ['geometry/meet.ts'],
  'manifold-3d': ['solid/kernel.ts'],
  commander: ['main.ts', 'bench/nest.ts'],
  'maxrects-packer': ['geometry/boxes.ts'],
  fflate: ['formats/png.ts', 'formats/threemf-check.ts', 'formats/threemf.ts'],
  yaml: ['pattern/source.ts'],
  svgson: ['formats/svg.ts'],
  highs: ['linear/solver.ts'],
  earcut: ['geometry/pieces.ts'],
  pdfkit: ['formats/pdf.ts'],
  pdfmake: ['formats/sheet-pdf.ts'],
  'bidi-js': ['formats/reading-order.ts'],
  'subset-font': ['formats/face-subset.ts'],
};

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
  (f) => f.endsWith('.ts') && !f.endsWith('.d.ts'),
);

const importsOf = (file: string): string[] =>
  [...readFileSync(join(SRC, file), 'utf8').matchAll(/(?:from|import)\s*\(?'([^']+)'/g)].map(
    (m) => m[1],
  );

const inside = (file: string): { from: string; to: string }[] =>
  importsOf(file)
    .filter((i) => i.startsWith('.'))
    .map((i) => ({
      from: file,
      to: relative(SRC, join(SRC, dirname(file), i)).replace(/\.js$/, '.ts'),
    }));

const roomOf = (file: string): string => (file.includes('/') ? file.split('/')[0] : '');

test('there is something to look at', () => {
  expect(files.length).toBeGreaterThan(60);
  expect(files.flatMap(inside).length).toBeGreaterThan(200);
});

test('imports run downward only', () => {
  const wrong = files.flatMap(inside).filter(({ from, to }) => {
    const [a, b] = [roomOf(from), roomOf(to)];
    if (a === b || FOR_ALL.includes(to) || a === '' || BINDING.includes(a)) return false;
    // The record tells of a whole build, whose type the pipeline owns.
    if (a === 'record' && to === 'pipeline.ts') return false;
    return !MAY_IMPORT[a]?.includes(b);
  });
  expect(wrong).toEqual([]);
});

test('no file imports itself by a detour', () => {
  const edges = new Map(files.map((f) => [f, inside(f).map((e) => e.to)]));
  // Dynamic imports of commands are not cycles: they run after everything is loaded.
  edges.set(
    'main.ts',
    (edges.get('main.ts') ?? []).filter((to) => !to.startsWith('commands/')),
  );
  const done = new Set<string>();
  const cycles: string[] = [];
  const visit = (file: string, trail: readonly string[]): void => {
    if (trail.includes(file)) cycles.push([...trail.slice(trail.indexOf(file)), file].join(' → '));
    if (done.has(file) || trail.includes(file)) return;
    for (const to of edges.get(file) ?? []) visit(to, [...trail, file]);
    done.add(file);
  };
  for (const file of files) visit(file, []);
  expect(cycles).toEqual([]);
});

test('one library, one door', () => {
  for (const [library, doors] of Object.entries(LIBRARY_DOORS)) {
    const users = files.filter((f) =>
      importsOf(f).some((i) => i === library || i.startsWith(`${library}/`)),
    );
    expect(users, library).toEqual(doors);
  }
  const jscad = files.filter((f) => importsOf(f).some((i) => i.startsWith('@jscad/')));
  expect(jscad.length).toBeGreaterThan(0);
  expect(jscad.every((f) => f.startsWith('solid/') || f === 'geometry/lettering.ts')).toBe(true);
  const zod = files.filter((f) => importsOf(f).includes('zod'));
  expect(zod.length).toBeGreaterThan(0);
  expect(
    zod.every((f) =>
      /^(pattern|tables)\/|^jig\/(.*\/)?(setup|printer|kind)\.ts$|^(file-formats|load-setups)\.ts$|^bench\/nest-instance\.ts$/.test(
        f,
      ),
    ),
  ).toBe(true);
});

test('nobody prints or reads files but the command line and its door', () => {
  const touching = files.filter((f) =>
    /node:fs|process\.(stdout|stderr|env|argv)/.test(readFileSync(join(SRC, f), 'utf8')),
  );
  const rooms = touching.filter((f) => Object.keys(MAY_IMPORT).includes(roomOf(f)));
  expect(rooms).toEqual([]);
});
