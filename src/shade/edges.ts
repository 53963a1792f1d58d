/** Which edges of a body are drawn: where it turns away from the viewer, and where its facets meet at an angle. */
import { isFacing } from './depth.js';
import type { Seen } from './model.js';

/** Facets that meet flatter than this are one smooth surface. Common practice, no source. */
const CREASE_DEG = 25;
const CREASE_COS = Math.cos((CREASE_DEG * Math.PI) / 180);

/** `outline`: behind it the body ends; `crease`: both facets are seen. */
export type EdgeKind = 'outline' | 'crease';

export type FeatureEdge = {
  readonly kind: EdgeKind;
  readonly isGhost: boolean;
  /** Vertices of the model. */
  readonly ends: readonly [number, number];
  readonly facets: readonly [number, number];
};

/** Without those that their own two facets hide. */
export function featureEdges(seen: Seen): FeatureEdge[] {
  const { edges, normals: n, bodyOf, bodies } = seen;
  const { ends, sides } = edges;
  const found: FeatureEdge[] = [];
  for (let e = 0; e < ends.length; e += 2) {
    const [f, g] = [sides[e], sides[e + 1]];
    const [seesF, seesG] = [isFacing(seen, f), isFacing(seen, g)];
    if (!seesF && !seesG) continue;
    const cos = n[3 * f] * n[3 * g] + n[3 * f + 1] * n[3 * g + 1] + n[3 * f + 2] * n[3 * g + 2];
    const kind = seesF !== seesG ? 'outline' : cos < CREASE_COS ? 'crease' : null;
    // In a hollow edge the facet that looks away stands before the other one.
    if (kind === null || (kind === 'outline' && isHollow(seen, e))) continue;
    found.push({
      kind,
      isGhost: bodies[bodyOf[f]].tone === 'ghost',
      ends: [ends[e], ends[e + 1]],
      facets: [f, g],
    });
  }
  return found;
}

/** True when the facet on the right rises over the plane of the one on the left. */
function isHollow({ edges, normals: n, corners: p, triangles }: Seen, e: number): boolean {
  const [f, g] = [edges.sides[e], edges.sides[e + 1]];
  const [from, to] = [edges.ends[e], edges.ends[e + 1]];
  const third =
    [0, 1, 2].map((k) => triangles[3 * g + k]).find((v) => v !== from && v !== to) ?? to;
  const rise = [0, 1, 2].reduce(
    (sum, k) => sum + n[3 * f + k] * (p[3 * third + k] - p[3 * from + k]),
    0,
  );
  return rise > 0;
}
