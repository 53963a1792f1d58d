/**
 * Nominal geometry: the size the wood shall have. It carries no kerf. `drawing/cut.ts` turns it into
 * cut geometry, which is another type, so that kerf can be applied once only.
 */
import type { ArcPath } from '../geometry/arcpath.js';

export type Nominal = { readonly kind: 'nominal'; readonly path: ArcPath };

export const nominal = (path: ArcPath): Nominal => ({ kind: 'nominal', path });
