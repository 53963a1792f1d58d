/** Names a pattern takes from the tables, and what a run says of those tables. */
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { Materials } from '../tables/materials.js';
import type { OverrideFlaw } from '../tables/overrides.js';
import { keyText } from './form.js';
import { nearest } from './nearest.js';
import type { PatternFile } from './schema.js';

type Named = { readonly path: KeyPath; readonly value: string | undefined };

/** Every name must have its row, of the right kind. */
export function itemRules(sections: Partial<PatternFile>, materials: Materials): Problem[] {
  const { lip, ballast = [], towEye, tailEye, hangers = [], wish } = sections;
  const eyes = [
    { path: ['towEye'], eye: towEye },
    { path: ['tailEye'], eye: tailEye },
    ...hangers.map((eye, i) => ({ path: ['hangers', i], eye })),
  ];
  const rowsOf = (kind: string): string[] =>
    Object.keys(materials.fittings).filter((name) => materials.fittings[name].kind === kind);
  const fitting = (key: 'screwEye' | 'ring' | 'treble', kind: string): Problem[] =>
    eyes.flatMap(({ path, eye }) =>
      unknown({ path: [...path, key], value: eye?.[key] }, 'shared/fittings.yaml', rowsOf(kind)),
    );
  const plates = Object.keys(materials.plates);
  const weights = Object.keys(materials.weights);
  return [
    ...unknown({ path: ['lip', 'material'], value: lip?.material }, 'shared/plates.yaml', plates),
    ...ballast.flatMap(({ weight }, i) =>
      unknown({ path: ['ballast', i, 'weight'], value: weight }, 'shared/weights.yaml', weights),
    ),
    ...fitting('screwEye', 'screw-eye'),
    ...fitting('ring', 'ring'),
    ...fitting('treble', 'treble'),
    ...(wish?.metals ?? []).flatMap((value, i) =>
      unknown({ path: ['wish', 'metals', i], value }, 'shared/metals.yaml', [
        ...Object.keys(materials.metals),
      ]),
    ),
    ...ballast.flatMap((hole, i) => fillRules(hole, ['ballast', i], materials)),
  ];
}

function unknown({ path, value }: Named, table: string, known: readonly string[]): Problem[] {
  if (value === undefined || known.includes(value)) return [];
  const sorted = [...known].sort();
  const guess = nearest(value, sorted);
  const fix = guess ? `Did you mean ${guess}?` : `It knows: ${sorted.join(', ')}.`;
  return [
    problem('unknown-item', path, { key: keyText(path), value: `"${value}"`, table, nearest: fix }),
  ];
}

/** What a hole is filled with must go together: metal and pour, weight, metal and bit. */
function fillRules(
  hole: NonNullable<PatternFile['ballast']>[number],
  path: KeyPath,
  { metals, weights }: Materials,
): Problem[] {
  const { metal, pour } = hole;
  const weight = hole.weight === undefined ? undefined : weights[hole.weight];
  const name = hole.weight ?? '';
  return [
    ...(pour === 'single' && metals[metal].liquidKgM3 === null
      ? [problem('metal-not-poured', [...path, 'pour'], { metal })]
      : []),
    ...(weight && hole.fillMm !== undefined
      ? [problem('hole-filled-twice', [...path, 'fillMm'], { weight: name, fillMm: hole.fillMm })]
      : []),
    ...(weight && weight.metal !== metal
      ? [
          problem('weight-metal', [...path, 'weight'], {
            weight: name,
            metal: weight.metal,
            said: metal,
          }),
        ]
      : []),
  ];
}

/** What is wrong with a run's own figures. */
export const overrideRules = (flaws: readonly OverrideFlaw[], materials: Materials): Problem[] =>
  flaws.flatMap((flaw) => {
    const path: KeyPath = ['materials', flaw.table, flaw.name];
    const known = Object.keys(materials[flaw.table]);
    if (flaw.kind === 'incomplete') {
      const guess = known.includes(flaw.name) ? null : nearest(flaw.name, known);
      const facts = {
        key: keyText(path),
        keys: flaw.keys.join(', '),
        nearest: guess ? `Did you mean ${guess}? If not, give them` : 'Give them',
        ...(guess ? { guess } : {}),
      };
      return [problem('row-incomplete', path, facts)];
    }
    if (flaw.kind === 'mix')
      return [problem('mix-unclear', [...path, 'mix'], { key: keyText([...path, 'mix']) })];
    return unknown({ path, value: flaw.name }, `shared/${flaw.table}.yaml`, known);
  });
