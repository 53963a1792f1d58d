/** What of a printed part hangs over air: its undersides, how steep they are, how far they span. */
import { cornersOf, normalsOf } from '../../geometry/facet-tree.js';
import type { Mesh } from '../../geometry/mesh.js';
import { facetArea, surfaceSamples } from '../../geometry/surface-samples.js';
import type { Point2, Point3 } from '../../geometry/vec.js';

/** A stretch of connected facets that are steeper than the printer prints in free air. */
export type Ceiling = {
  /** Of its steepest facet, from the vertical: 90 is level. */
  readonly steepestDeg: number;
  readonly areaMm2: number;
  /** Its largest facet's middle, printed frame. */
  readonly at: Point3;
  /** Places all over it, seen from above. */
  readonly points: readonly Point2[];
  /** Seen from above; `wall` where plastic goes down from the edge, so that a bridge finds a hold. */
  readonly edges: readonly CeilingEdge[];
};

export type CeilingEdge = { readonly from: Point2; readonly to: Point2; readonly wall: boolean };

export type Undersides = {
  /** Steepest underside outside the ceilings, from the vertical; 0 if there is none. */
  readonly steepestDeg: number;
  readonly ceilings: readonly Ceiling[];
};

const ON_BED = 1e-3; // mm
const LEAST_AREA = 0.02; // mm²: smaller facets are corners of curves
const STEP = 1; // mm between places of a ceiling
const EVEN = 0.01; // degrees: coordinates of meshes are 32-bit

/** Undersides of a part that rests on z = 0. */
export function undersidesOf(mesh: Mesh, overhangDeg: number): Undersides {
  const facets = facetsOf(mesh);
  const steep = (f: number) => facets.tiltDeg[f] > overhangDeg + EVEN;
  const easy = [...facets.tiltDeg].filter(
    (tilt, f) => !steep(f) && tilt > 0 && facets.area[f] > LEAST_AREA,
  );
  return {
    steepestDeg: easy.reduce((a, b) => Math.max(a, b), 0),
    ceilings: ceilingsOf(mesh, facets, steep),
  };
}

type Facets = {
  readonly corners: Float64Array;
  readonly normals: Float64Array;
  readonly area: Float64Array;
  /** From the vertical, of what hangs over air; 0 for all else. */
  readonly tiltDeg: Float64Array;
};

function facetsOf(mesh: Mesh): Facets {
  const corners = cornersOf(mesh);
  const normals = normalsOf(corners);
  const count = corners.length / 9;
  const tiltDeg = new Float64Array(count);
  const area = new Float64Array(count);
  for (let f = 0; f < count; f++) {
    area[f] = facetArea(corners, 9 * f);
    const down = -normals[3 * f + 2];
    if (down <= 0 || topOf(corners, f) < ON_BED) continue;
    tiltDeg[f] = (Math.asin(Math.min(1, down)) * 180) / Math.PI;
  }
  return { corners, normals, area, tiltDeg };
}

const topOf = (c: Float64Array, f: number): number =>
  Math.max(c[9 * f + 2], c[9 * f + 5], c[9 * f + 8]);

/** Steep facets that share edges belong together. */
function ceilingsOf(
  mesh: Mesh,
  facets: Facets,
  steep: (facet: number) => boolean,
): readonly Ceiling[] {
  const neighbor = neighborsOf(mesh);
  const seen = new Set<number>();
  const ceilings: Ceiling[] = [];
  for (let start = 0; start < facets.area.length; start++) {
    if (!steep(start) || seen.has(start)) continue;
    const members = [start];
    const edges: CeilingEdge[] = [];
    seen.add(start);
    for (const f of members) {
      for (let k = 0; k < 3; k++) {
        const next = neighbor[3 * f + k];
        if (!steep(next)) edges.push(edgeOf(facets.corners, mesh, 3 * f + k, next));
        else if (!seen.has(next)) {
          seen.add(next);
          members.push(next);
        }
      }
    }
    ceilings.push(ceilingOf(facets, members, edges));
  }
  return ceilings;
}

function ceilingOf(
  { corners, normals, area, tiltDeg }: Facets,
  members: readonly number[],
  edges: readonly CeilingEdge[],
): Ceiling {
  const largest = members.reduce((a, b) => (area[b] > area[a] ? b : a));
  const middle = (k: number) =>
    (corners[9 * largest + k] + corners[9 * largest + 3 + k] + corners[9 * largest + 6 + k]) / 3;
  return {
    steepestDeg: Math.max(...members.map((f) => tiltDeg[f])),
    areaMm2: members.reduce((sum, f) => sum + area[f], 0),
    at: [middle(0), middle(1), middle(2)],
    points: surfaceSamples(
      {
        corners: Float64Array.from(members.flatMap((f) => [...corners.subarray(9 * f, 9 * f + 9)])),
        normals: Float64Array.from(members.flatMap((f) => [...normals.subarray(3 * f, 3 * f + 3)])),
      },
      STEP,
      LEAST_AREA,
    ).map(({ at }): Point2 => [at[0], at[1]]),
    edges,
  };
}

/** For each edge of each facet the facet on its other side. */
function neighborsOf({ positions, triangles }: Mesh): Int32Array {
  const vertices = positions.length / 3;
  const owner = new Map<number, number>();
  const key = (a: number, b: number) => a * vertices + b;
  const ends = (i: number) => [triangles[i], triangles[i - (i % 3) + ((i + 1) % 3)]] as const;
  for (let i = 0; i < triangles.length; i++) owner.set(key(...ends(i)), Math.floor(i / 3));
  return Int32Array.from(triangles, (_, i) => {
    const [a, b] = ends(i);
    return owner.get(key(b, a)) ?? -1;
  });
}

/** The facet beyond goes down from the edge, or up from it. */
function edgeOf(
  corners: Float64Array,
  { triangles }: Mesh,
  i: number,
  beyond: number,
): CeilingEdge {
  const f = Math.floor(i / 3);
  const [p, q] = [9 * f + 3 * (i % 3), 9 * f + 3 * ((i + 1) % 3)];
  const [a, b] = [triangles[i], triangles[3 * f + ((i + 1) % 3)]];
  const third = [0, 1, 2].find((k) => ![a, b].includes(triangles[3 * beyond + k])) ?? 0;
  const height = corners[9 * beyond + 3 * third + 2];
  return {
    from: [corners[p], corners[p + 1]],
    to: [corners[q], corners[q + 1]],
    wall: height < Math.min(corners[p + 2], corners[q + 2]) - ON_BED,
  };
}
