import { describe, expect, test } from 'vitest';
import {
  bitTable,
  coatTable,
  fittingTable,
  metalTable,
  plateTable,
  rising,
  weightTable,
} from '../../src/tables/materials.js';
import { dataOf, MATERIALS, rel } from '../mass/lures.js';

const { metals, plates, coats, fittings, weights, bits, glue, wire } = MATERIALS;

describe('every row', () => {
  const { timbers, steps } = MATERIALS;
  const tables = { metals, plates, coats, fittings, weights, timbers, steps };
  test.each(Object.entries(tables))(
    'of %s has a source and a name a maker can write',
    (_, table) => {
      const rows = Object.entries(table);
      expect(rows.length).toBeGreaterThanOrEqual(5);
      for (const [name, row] of rows) {
        expect(row.source.length, name).toBeGreaterThan(5);
        expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9.]+)*$/);
      }
    },
  );

  test('of the other files too', () => {
    expect(glue.source.length * wire.source.length).toBeGreaterThan(25);
    const sets = Object.values(bitTable.parse(dataOf('shared/bits.yaml')).bits);
    expect(sets).toHaveLength(4);
    for (const set of sets) expect(set.source.length).toBeGreaterThan(5);
  });
});

describe('densities against tabled values, kg/m³', () => {
  // wermac.org and simetric.co.uk, densities of metals; CRC Handbook for liquid lead; the plates’ from memory.
  test.each([
    ['lead', 11340],
    ['tin', 7280],
    ['bismuth', 9750],
    ['tungsten', 19250],
    ['steel', 7850],
  ])('%s', (name, density) => expect(metals[name].densityKgM3).toBe(density));

  test('liquid lead shrinks by 6.0 % in the hole; bismuth grows; tungsten and steel are not poured', () => {
    const { lead, bismuth, tungsten, steel } = metals;
    expect(1 - (lead.liquidKgM3 ?? 0) / lead.densityKgM3).toBeCloseTo(0.06, 3);
    expect(bismuth.liquidKgM3).toBeGreaterThan(bismuth.densityKgM3);
    expect([tungsten.liquidKgM3, steel.liquidKgM3]).toEqual([null, null]);
    expect(lead.meltsAtC).toBe(327.46);
  });

  test.each([
    ['polycarbonate', 1200],
    ['acrylic', 1190],
    ['glass-epoxy', 1850],
    ['aluminum', 2712],
  ])('%s', (name, density) => expect(plates[name].densityKgM3).toBe(density));

  test('cured epoxy, as coat and as glue', () => {
    expect([coats.epoxy.densityKgM3, glue.densityKgM3]).toEqual([1150, 1150]);
    expect(coats.other).toBeDefined();
  });
});

describe('sizes and masses go together', () => {
  test('ready-made weights: volume times density is the mass, to 3 %', () => {
    const rows = Object.entries(weights);
    expect(rows.length).toBeGreaterThan(30);
    for (const [name, { metal, massG, diameterMm, lengthMm }] of rows) {
      const volume = (Math.PI / 4) * diameterMm ** 2 * lengthMm;
      expect(rel(volume * metals[metal].densityKgM3 * 1e-6, massG), name).toBeLessThan(0.03);
      expect(name).toBe(`${metal}-${massG}g`);
      expect(bits.drillMm, name).toContain(diameterMm); // there is a bit to bore for it
    }
    for (const metal of ['lead', 'tungsten']) {
      const masses = rows.filter(([, w]) => w.metal === metal).map(([, w]) => w.massG);
      expect([Math.min(...masses), Math.max(...masses)]).toEqual([0.5, 20]);
    }
  });

  test('screw eyes and rings: wire of that length weighs about that, to a tenth', () => {
    const kinds = { 'screw-eye': 0, ring: 0, treble: 0 };
    for (const [name, row] of Object.entries(fittings)) {
      kinds[row.kind]++;
      if (row.kind === 'treble') continue;
      const long =
        row.kind === 'ring'
          ? 2 * Math.PI * (row.outerMm - row.wireMm)
          : row.shankMm + Math.PI * (row.loopMm + row.wireMm);
      const volume = (Math.PI / 4) * row.wireMm ** 2 * long;
      expect(rel(volume * row.densityKgM3 * 1e-6, row.massG), name).toBeLessThan(0.1);
    }
    expect(kinds).toEqual({ 'screw-eye': 4, ring: 7, treble: 11 });
  });

  test('a larger treble is heavier, size by size', () => {
    const sizes = ['14', '12', '10', '8', '6', '4', '2', '1', '1-0', '2-0', '3-0'];
    const masses = sizes.map((s) => fittings[`treble-${s}`].massG);
    expect(rising(masses)).toEqual(masses);
  });
});

test('bits run small to large, each once, inch sizes exact', () => {
  expect(bits.drillMm).toEqual(rising(bits.drillMm));
  expect(bits.roundOverMm).toEqual(rising(bits.roundOverMm));
  for (const inch of [1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2]) {
    const mm = Number((25.4 * inch).toFixed(6)); // as written, without the rounding of the product
    expect(bits.drillMm).toContain(mm);
    expect(bits.roundOverMm).toContain(mm);
  }
  expect(bits.roundOverMm.filter((r) => r === 12.7)).toHaveLength(1); // in both sets
});

describe('what is refused', () => {
  const row = { densityKgM3: 1200, source: 'weighed' };
  test.each([
    ['a density below zero', plateTable, { plates: { x: { ...row, densityKgM3: -1 } } }],
    ['a density above any metal', plateTable, { plates: { x: { ...row, densityKgM3: 30000 } } }],
    ['a row without a source', plateTable, { plates: { x: { densityKgM3: 1200 } } }],
    ['a key that is not known', plateTable, { plates: { x: { ...row, color: 'clear' } } }],
    ['coats without glue', coatTable, { coats: { epoxy: row } }],
    ['a metal that says nothing of pouring', metalTable, { metals: { lead: row } }],
    [
      'a ring with a treble’s keys',
      fittingTable,
      { fittings: { r: { kind: 'ring', massG: 1, ...row } }, wire: { ...row, loopMm: 3 } },
    ],
    ['a weight without mass', weightTable, { weights: { w: { metal: 'lead', massG: 0, ...row } } }],
  ])('%s', (_, schema, data) => expect(schema.safeParse(data).success).toBe(false));
});
