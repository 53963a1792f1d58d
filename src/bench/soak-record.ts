/** Nests of drawn cases, told side by side as the record of one build. */
import type { Nest } from '../nest/nest.js';
import { faceRecord } from '../record/build-json.js';
import type { FaceCase } from './drawn-face.js';

/** A case, its number, and what came of it. */
export type Soaked = { readonly index: number; readonly asked: FaceCase; readonly nest: Nest };

/** Each part is named after its case, so that the same letter never means two outlines. */
const named = (index: number, part: string): string => `case-${index}-${part}`;

/** Patterns with their outlines, faces and counts in the shape of `build.json`; and what is missing. */
export function soakRecord(seed: number, soaked: readonly Soaked[]): unknown {
  const counts = (of: (nest: Nest) => Readonly<Record<string, number>>): unknown =>
    Object.fromEntries(
      soaked.flatMap(({ index, nest }) =>
        Object.entries(of(nest)).map(([part, n]) => [named(index, part), n]),
      ),
    );
  const faces = soaked.flatMap(({ index, nest }) =>
    nest.faces.map((face) => ({
      ...face,
      placements: face.placements.map((p) => ({ ...p, part: named(index, p.part) })),
    })),
  );
  return {
    schemaVersion: 1,
    kind: 'soak',
    name: `seed ${seed}`,
    patterns: soaked.flatMap(({ index, asked: { parts } }) =>
      parts.map(({ id, outline }) => ({
        name: named(index, id),
        outline: outline.map(([x, y]) => [x, y]),
      })),
    ),
    nest: {
      faces: faces.map((face, i) => faceRecord({ ...face, id: i + 1 })),
      made: counts((nest) => nest.made),
      ordered: counts((nest) => nest.ordered),
      missing: counts((nest) => nest.missing),
    },
  };
}
