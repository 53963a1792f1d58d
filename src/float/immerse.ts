/** A solid cut by a water surface: what is under, and the waterplane. */
import type { Point3 } from '../geometry/vec.js';
import { GROUP, type Immersible, LINK, TRIANGLE } from './immersible.js';
import { type Symmetric2, type Tangents, tangentsOf } from './tilt.js';

/** The part of a solid under a surface, exact for its triangles but for rounding. */
export type Immersion = {
  readonly volumeMm3: number;
  /** Center of buoyancy; where nothing is under, the center of the whole solid. */
  readonly cbMm: Point3;
  /** Of the waterplane, the cut face. */
  readonly areaMm2: number;
  /** Center of flotation, the center of the waterplane; where there is none, the solid's center let down on the surface. */
  readonly centroidMm: Point3;
  /** Second moments ∫pp dA of the waterplane about its center in the tangents, mm⁴. */
  readonly secondMm4: Symmetric2;
  readonly tangents: Tangents;
};

/**
 * Cuts the solid by the surface up · p = planeOffsetMm and takes what is below. A corner that lies in
 * the surface counts as above it, so a face in the surface is no trouble.
 *
 * The wet triangles and the waterplane, which are closed together, are summed as tetrahedra from the
 * solid's center; the waterplane by Green's theorem over the pieces of waterline that the crossing
 * triangles leave.
 *
 * @param up unit vector to the sky
 */
export function immerse(solid: Immersible, up: Point3, planeOffsetMm: number): Immersion {
  const { triangles, groups, links, centroidMm: o } = solid;
  const [ux, uy, uz] = up;
  const tangents = tangentsOf(up);
  const [[ex, ey, ez], [fx, fy, fz]] = tangents;
  const depth = planeOffsetMm - (ux * o[0] + uy * o[1] + uz * o[2]);
  let [volume, mx, my, mz] = [0, 0, 0, 0];
  let [area, su, sv, suu, suv, svv] = [0, 0, 0, 0, 0, 0];
  const end = links.length / LINK;
  let n = 0;
  while (n < end) {
    const g = GROUP * n;
    const height = groups[g] * ux + groups[g + 1] * uy + groups[g + 2] * uz - depth;
    const radius = groups[g + 3];
    if (height > radius) {
      n = links[LINK * n];
      continue;
    }
    if (height < -radius) {
      volume += groups[g + 4];
      mx += groups[g + 5];
      my += groups[g + 6];
      mz += groups[g + 7];
      n = links[LINK * n];
      continue;
    }
    const first = links[LINK * n + 1];
    const last = TRIANGLE * links[LINK * n + 2];
    n++;
    if (first < 0) continue;
    for (let t = TRIANGLE * first; t < last; t += TRIANGLE) {
      const h0 = triangles[t] * ux + triangles[t + 1] * uy + triangles[t + 2] * uz - depth;
      const h1 = triangles[t + 3] * ux + triangles[t + 4] * uy + triangles[t + 5] * uz - depth;
      const h2 = triangles[t + 6] * ux + triangles[t + 7] * uy + triangles[t + 8] * uz - depth;
      const wet = (h0 < 0 ? 1 : 0) + (h1 < 0 ? 2 : 0) + (h2 < 0 ? 4 : 0);
      if (wet === 0) continue;
      const v = triangles[t + 9];
      if (wet > 2 && wet !== 4) {
        // At least two corners are wet: take the whole now, and the dry corner off it below.
        const quarter = v / 4;
        volume += v;
        mx += quarter * (triangles[t] + triangles[t + 3] + triangles[t + 6]);
        my += quarter * (triangles[t + 1] + triangles[t + 4] + triangles[t + 7]);
        mz += quarter * (triangles[t + 2] + triangles[t + 5] + triangles[t + 8]);
        if (wet === 7) continue;
      }
      // The corner that is alone on its side, and the two after it round the triangle.
      const alone = wet === 1 || wet === 6 ? 0 : wet === 2 || wet === 5 ? 1 : 2;
      const a = t + 3 * alone;
      const b = alone === 2 ? t : a + 3;
      const c = alone === 0 ? t + 6 : a - 3;
      const ha = alone === 0 ? h0 : alone === 1 ? h1 : h2;
      const hb = alone === 0 ? h1 : alone === 1 ? h2 : h0;
      const hc = alone === 0 ? h2 : alone === 1 ? h0 : h1;
      const toB = ha / (ha - hb);
      const toC = ha / (ha - hc);
      const ax = triangles[a];
      const ay = triangles[a + 1];
      const az = triangles[a + 2];
      const px = ax + toB * (triangles[b] - ax);
      const py = ay + toB * (triangles[b + 1] - ay);
      const pz = az + toB * (triangles[b + 2] - az);
      const qx = ax + toC * (triangles[c] - ax);
      const qy = ay + toC * (triangles[c + 1] - ay);
      const qz = az + toC * (triangles[c + 2] - az);
      // Positive when the lone corner is wet: then its small triangle counts, else it comes off.
      const side = ha < 0 ? 1 : -1;
      const small = side * toB * toC * v;
      volume += small;
      mx += (small / 4) * (ax + px + qx);
      my += (small / 4) * (ay + py + qy);
      mz += (small / 4) * (az + pz + qz);
      // The waterplane lies to the left of its edge, seen from above: from q to p when a is wet.
      const qu = qx * ex + qy * ey + qz * ez;
      const qv = qx * fx + qy * fy + qz * fz;
      const pu = px * ex + py * ey + pz * ez;
      const pv = px * fx + py * fy + pz * fz;
      const turn = side * (qu * pv - qv * pu);
      area += turn;
      su += turn * (qu + pu);
      sv += turn * (qv + pv);
      suu += turn * (qu * qu + qu * pu + pu * pu);
      svv += turn * (qv * qv + qv * pv + pv * pv);
      suv += turn * (2 * (qu * qv + pu * pv) + qu * pv + qv * pu);
    }
  }
  area /= 2;
  su /= 6;
  sv /= 6;
  // The tetrahedra from the center to the waterplane.
  volume += (area * depth) / 3;
  mx += (depth / 4) * (su * ex + sv * fx + area * depth * ux);
  my += (depth / 4) * (su * ey + sv * fy + area * depth * uy);
  mz += (depth / 4) * (su * ez + sv * fz + area * depth * uz);
  const [cu, cv] = area > 0 ? [su / area, sv / area] : [0, 0];
  const per = volume > 0 ? 1 / volume : 0;
  return {
    volumeMm3: volume,
    cbMm: [o[0] + mx * per, o[1] + my * per, o[2] + mz * per],
    areaMm2: area,
    centroidMm: [
      o[0] + cu * ex + cv * fx + depth * ux,
      o[1] + cu * ey + cv * fy + depth * uy,
      o[2] + cu * ez + cv * fz + depth * uz,
    ],
    secondMm4: {
      uu: suu / 12 - cu * su,
      uv: suv / 24 - cu * sv,
      vv: svv / 12 - cv * sv,
    },
    tangents,
  };
}

/** The highest corner of the crown, and its height up · p. */
export function crownTop(
  { crown }: Immersible,
  [ux, uy, uz]: Point3,
): { readonly at: Point3; readonly height: number } {
  let [best, most] = [0, -Infinity];
  for (let k = 0; k < crown.length; k += 3) {
    const h = crown[k] * ux + crown[k + 1] * uy + crown[k + 2] * uz;
    if (h > most) {
      best = k;
      most = h;
    }
  }
  return { at: [crown[best], crown[best + 1], crown[best + 2]], height: most };
}

/** The highest corner of all, and its height up · p. Groups that do not reach above the best so far are passed over. */
export function highestCorner(
  { triangles, groups, links, centroidMm: o }: Immersible,
  up: Point3,
): { readonly at: Point3; readonly height: number } {
  const [ux, uy, uz] = up;
  let [best, most] = [0, -Infinity];
  const end = links.length / LINK;
  for (let n = 0; n < end; ) {
    const g = GROUP * n;
    const reach = groups[g] * ux + groups[g + 1] * uy + groups[g + 2] * uz + groups[g + 3];
    const first = links[LINK * n + 1];
    if (reach > most && first >= 0) {
      const last = TRIANGLE * links[LINK * n + 2];
      for (let t = TRIANGLE * first; t < last; t += TRIANGLE) {
        for (let k = t; k < t + 9; k += 3) {
          const h = triangles[k] * ux + triangles[k + 1] * uy + triangles[k + 2] * uz;
          if (h > most) {
            best = k;
            most = h;
          }
        }
      }
    }
    n = reach > most && first < 0 ? n + 1 : links[LINK * n];
  }
  const at: Point3 = [
    o[0] + triangles[best],
    o[1] + triangles[best + 1],
    o[2] + triangles[best + 2],
  ];
  return { at, height: most + ux * o[0] + uy * o[1] + uz * o[2] };
}
