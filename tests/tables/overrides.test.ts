import { describe, expect, test } from 'vitest';
import { tell } from '../../src/messages.js';
import { overrideRules } from '../../src/pattern/item-rules.js';
import { OWN_SOURCE, overridden, overrideSection } from '../../src/tables/overrides.js';
import { MATERIALS } from '../mass/lures.js';

const apply = (data: unknown) => overridden(MATERIALS, overrideSection.parse(data));

test('nothing said, nothing changed', () => {
  expect(apply({})).toEqual({ materials: MATERIALS, flaws: [] });
});

describe('rows that are there', () => {
  test('take what is given and keep the rest', () => {
    const { materials, flaws } = apply({
      timbers: { balsa: { densityKgM3: 120 } },
      metals: { lead: { densityKgM3: 10900, source: 'wheel weights' } },
      plates: { polycarbonate: { densityKgM3: 1210 } },
      coats: { epoxy: { densityKgM3: 1100, spreadKgM3: 0 } },
      glue: { densityKgM3: 1120 },
      wire: { loopMm: 4 },
      fittings: { 'treble-4': { massG: 1.45 } },
      weights: { 'lead-3g': { massG: 2.9 } },
    });
    expect(flaws).toEqual([]);
    const { balsa } = MATERIALS.timbers;
    expect(materials.timbers.balsa).toEqual({ ...balsa, densityKgM3: 120, source: OWN_SOURCE });
    expect(materials.metals.lead).toEqual({
      ...MATERIALS.metals.lead,
      densityKgM3: 10900,
      source: 'wheel weights',
    });
    expect(materials.plates.polycarbonate.densityKgM3).toBe(1210);
    expect(materials.coats.epoxy.spreadKgM3).toBe(0);
    expect(materials.glue.densityKgM3).toBe(1120);
    expect(materials.wire).toEqual({ ...MATERIALS.wire, loopMm: 4, source: OWN_SOURCE });
    expect(materials.fittings['treble-4']).toEqual({
      kind: 'treble',
      massG: 1.45,
      densityKgM3: 7850,
      source: OWN_SOURCE,
    });
    expect(materials.weights['lead-3g'].lengthMm).toBe(9.4);
    // Neither the tables given nor their other rows are touched.
    expect(MATERIALS.fittings['treble-4'].massG).toBe(1.6);
    expect(materials.metals.tin).toBe(MATERIALS.metals.tin);
  });

  test('bits take the place of the table’s, in order', () => {
    const { materials } = apply({ bits: { drillMm: [10, 6, 8, 6] } });
    expect(materials.bits.drillMm).toEqual([6, 8, 10]);
    expect(materials.bits.roundOverMm).toEqual(MATERIALS.bits.roundOverMm);
  });
});

describe('rows of one’s own', () => {
  test('that are whole come in', () => {
    const { materials, flaws } = apply({
      plates: { 'milk-bottle': { densityKgM3: 960 } },
      coats: { wax: { densityKgM3: 900 } },
      fittings: {
        spinner: { kind: 'treble', massG: 0.8, densityKgM3: 8000 },
        hook: {
          kind: 'screw-eye',
          massG: 0.3,
          densityKgM3: 7900,
          wireMm: 1.2,
          loopMm: 4,
          shankMm: 15,
        },
      },
      weights: { bullet: { metal: 'lead', massG: 2.6, diameterMm: 5.6, lengthMm: 9.3 } },
    });
    expect(flaws).toEqual([]);
    expect(materials.coats.wax).toMatchObject({
      densityKgM3: 900,
      spreadKgM3: 0,
      solidsRatio: 1,
      source: OWN_SOURCE,
    });
    expect(materials.coats.wax.mix).toBeUndefined();
    expect(materials.fittings.hook.kind).toBe('screw-eye');
    expect(materials.weights.bullet.massG).toBe(2.6);
    expect(materials.plates['milk-bottle'].densityKgM3).toBe(960);
  });

  test('that lack something are told, key by key, and left out', () => {
    const { materials, flaws } = apply({
      fittings: { hook: { kind: 'screw-eye', massG: 0.3 }, thing: { massG: 1 } },
      weights: { bullet: { metal: 'lead', massG: 2.6 } },
      coats: { wax: {} },
    });
    expect(flaws).toEqual([
      { kind: 'incomplete', table: 'coats', name: 'wax', keys: ['densityKgM3'] },
      {
        kind: 'incomplete',
        table: 'fittings',
        name: 'hook',
        keys: ['densityKgM3', 'loopMm', 'shankMm', 'wireMm'],
      },
      { kind: 'incomplete', table: 'fittings', name: 'thing', keys: ['kind'] },
      { kind: 'incomplete', table: 'weights', name: 'bullet', keys: ['diameterMm', 'lengthMm'] },
    ]);
    expect(materials.fittings.hook).toBeUndefined();
  });

  test('a new row that lacks something offers the known row it is close to', () => {
    const fixes = (coats: object) =>
      overrideRules(apply({ coats }).flaws, MATERIALS).map(
        ({ code, facts }) => tell(code, facts).fix,
      );
    expect(fixes({ epoxi: { potLifeMin: 20 } })[0]).toMatch(/^Did you mean epoxy\? If not, give/);
    expect(fixes({ 'beeswax-and-tar': {} })[0]).toMatch(/^Give them, or/);
  });

  test('a key that the kind does not have is told, and the row stays as it was', () => {
    const { materials, flaws } = apply({ fittings: { 'treble-4': { shankMm: 9 } } });
    expect(flaws).toEqual([
      { kind: 'incomplete', table: 'fittings', name: 'treble-4', keys: ['shankMm'] },
    ]);
    expect(materials.fittings['treble-4']).toBe(MATERIALS.fittings['treble-4']);
  });

  test('are not for timbers and metals', () => {
    const { flaws } = apply({
      timbers: { ballsa: { densityKgM3: 120 } },
      metals: { zinc: { densityKgM3: 7140 } },
    });
    expect(flaws).toEqual([
      { kind: 'unknown', table: 'timbers', name: 'ballsa' },
      { kind: 'unknown', table: 'metals', name: 'zinc' },
    ]);
  });
});

test.each([
  ['a density below zero', { metals: { lead: { densityKgM3: -1 } } }],
  ['a key that is not known', { metals: { lead: { weightG: 3 } } }],
  ['a table that is not known', { woods: {} }],
])('%s is refused', (_, data) => expect(overrideSection.safeParse(data).success).toBe(false));
