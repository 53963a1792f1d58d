import { describe, expect, test } from 'vitest';
import { readForm } from '../../src/pattern/form.js';
import { nearest } from '../../src/pattern/nearest.js';
import { runSections } from '../../src/pattern/run-schema.js';
import { patternSections } from '../../src/pattern/schema.js';
import { readSource, type Source } from '../../src/pattern/source.js';

const source = (text: string): Source => {
  const read = readSource('a.yaml', text);
  if (!('data' in read)) throw new Error(JSON.stringify(read));
  return read;
};

describe('places', () => {
  const s = source(
    'schema: 1\nbody:\n  offsets:\n    - { stationMm: 3, backMm: 4 }\n    - { stationMm: 9 }\n',
  );
  test('of a value, of a key, of the nearest thing there is', () => {
    expect(s.placeOf(['body', 'offsets', 0, 'backMm'])).toEqual({
      file: 'a.yaml',
      line: 4,
      column: 31,
    });
    expect(s.placeOfKey(['body', 'offsets', 1, 'stationMm'])).toEqual({
      file: 'a.yaml',
      line: 5,
      column: 9,
    });
    expect(s.placeOf(['body', 'offsets', 1, 'backMm']).line).toBe(5);
    expect(s.placeOf(['lip'])).toEqual({ file: 'a.yaml', line: 1, column: 1 });
  });
});

describe('yaml that is not a parameter file', () => {
  test.each([
    ['a: 1\na: 2', 'yaml-syntax', 2],
    ['a:\n\t- 1', 'yaml-syntax', 2],
    ['a: 1\n---\nb: 2', 'yaml-syntax', 2],
    ['a: !strange 1', 'yaml-syntax', 1],
    ['- 1\n- 2', 'wrong-type', 1],
    ['just words', 'wrong-type', 1],
    ['', 'file-empty', 1],
    ['# a comment', 'file-empty', 1],
  ])('%j is %s at line %d', (text, code, line) => {
    const read = readSource('a.yaml', text);
    if ('data' in read) throw new Error('was read');
    expect(read[0]).toMatchObject({ code, at: { line } });
  });
});

describe('the form', () => {
  const codes = (text: string, sections: Parameters<typeof readForm>[1] = patternSections) =>
    readForm(source(text), sections).problems.map(
      (p) => `${p.code} ${p.path.join('.')} ${p.at?.line}`,
    );

  test('strict at every level, and a good section is not hidden by a bad one', () => {
    const text =
      'name: reef\nlip:\n  widthMm: 20\n  slott: { depthMm: 3 }\ncoats:\n  - { name: sealer, thicknesMm: 0.1, count: 1 }\n';
    const { sections } = readForm(source(text), patternSections);
    expect(sections.name).toBe('reef');
    const found = codes(text);
    expect(found).toContain('unknown-key lip.slott 4');
    expect(found).toContain('unknown-key coats.0.thicknesMm 6');
    expect(found).toContain('missing-key coats.0.thicknessMm 6');
  });

  test('a decimal comma inside a row in braces', () => {
    const { problems } = readForm(
      source('body:\n  offsets:\n    - { stationMm: 5, backMm: 5,5, bellyMm: 6 }\n'),
      patternSections,
    );
    const found = problems.find((p) => p.code === 'comma-number');
    expect(found).toMatchObject({
      path: ['body', 'offsets', 0, 'backMm'],
      facts: { pointed: '5.5' },
      at: { line: 3 },
    });
    expect(problems.some((p) => p.code === 'unknown-key')).toBe(false);
  });

  test('a decimal comma in a row whose whole part is out of range is told once', () => {
    const { problems } = readForm(
      source('materials:\n  coats:\n    epoxy: { mix: { aByVolume: 0,5, bByVolume: 1 } }\n'),
      runSections,
    );
    const key = 'materials.coats.epoxy.mix.aByVolume';
    const told = problems.filter((p) => p.facts.key === key);
    expect(told).toMatchObject([{ code: 'comma-number', facts: { pointed: '0.5' } }]);
  });

  test.each([
    ['timbers', 'densityKgm3', 'densityKgM3'],
    ['metals', 'liquidKgm3', 'liquidKgM3'],
    ['plates', 'sorce', 'source'],
    ['coats', 'potlifeMin', 'potLifeMin'],
    ['fittings', 'masG', 'massG'],
    ['weights', 'lenghtMm', 'lengthMm'],
  ])('a wrong key in a row of %s: the known ones, and the nearest', (table, wrong, right) => {
    const { problems } = readForm(
      source(`materials:\n  ${table}:\n    some-row: { ${wrong}: 20 }\n`),
      runSections,
    );
    const [found] = problems.filter((p) => p.code === 'unknown-key');
    expect(found.facts).toMatchObject({ guess: right, nearest: `Did you mean ${right}?` });
    expect(String(found.facts.allowed).split(', ')).toContain(right);
  });

  test('numbers: not text, not comma, not infinite, not whole where whole is needed', () => {
    const found = codes(
      'schema: 1\nscaleRatio: "2"\nsandingAllowanceMm: 1,5\nblockThicknessMm: .inf\n',
    );
    expect(found).toContain('wrong-type scaleRatio 2');
    expect(found).toContain('comma-number sandingAllowanceMm 3');
    expect(found).toContain('not-finite blockThicknessMm 4');
    expect(
      codes('stack: { layers: 1.5, tapeThicknessMm: 0, largestHeightMm: 50 }', runSections),
    ).toContain('wrong-type stack.layers 1');
    expect(codes('blocks: []', runSections)).toContain('out-of-range blocks 1');
  });
});

test('nearest: a slip, a swap, nothing for a stranger', () => {
  const known = ['lengthMm', 'widthMm', 'thicknessMm', 'kind'];
  expect(nearest('lenghtMm', known)).toBe('lengthMm');
  expect(nearest('LengthMM', known)).toBe('lengthMm');
  expect(nearest('knid', known)).toBe('kind');
  expect(nearest('blade', known)).toBeNull();
});

test('a place on a block is two numbers', () => {
  const told = (fromMm: string) => {
    const block = `{ name: a, timber: ash, lengthMm: 300, widthMm: 80, thicknessMm: 20, count: 1, splits: [{ fromMm: ${fromMm}, toMm: [1, 2], widthMm: 1 }] }`;
    const { problems } = readForm(source(`blocks:\n  - ${block}\n`), runSections);
    return problems.filter((p) => p.path[0] === 'blocks').map((p) => [p.code, p.facts.key]);
  };
  const key = 'blocks[0].splits[0].fromMm';
  expect(told('[3, 4]')).toEqual([]);
  expect(told('[3]')).toEqual([['out-of-range', key]]);
  expect(told('[3, 4, 5]')).toEqual([['out-of-range', key]]);
  expect(told('3')).toEqual([['wrong-type', key]]);
  expect(told('[3, b]')).toEqual([['wrong-type', `${key}[1]`]]);
});
