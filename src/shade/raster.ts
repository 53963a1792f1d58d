/** From what is seen where to the tones of a picture. */

import type { Point3 } from '../geometry/vec.js';
import { unit3 } from '../geometry/vec3.js';
import type { Depths } from './depth.js';
import { grainOf } from './grain.js';
import type { Seen } from './model.js';
import { TONES, type Tone } from './scene.js';

/** Pixels as numbers of colors, row after row from the top. At most 256 colors. */
export type Raster = {
  readonly columns: number;
  readonly rows: number;
  readonly pixels: Uint8Array;
  readonly palette: readonly Rgb[];
};
export type Rgb = readonly [red: number, green: number, blue: number];

/** Samples across a pixel and down it. */
export const SUPER = 2;
const SAMPLES = SUPER * SUPER;

/** Steps from a tone's darkest to its lightest; with all tones and coverings they fill a palette of 256. */
const SHADES = 21;

/** Over the viewer's left shoulder: tops are lightest, what looks to the right darkest. */
const LIGHT: Point3 = unit3([-0.35, 0.7, 0.62]);

/** Darkest and lightest, sRGB; wood and plastic differ in lightness too (L* 58 to 88 and 72 to 98). */
const RAMPS: Readonly<Record<Exclude<Tone, 'ghost'>, readonly [Rgb, Rgb]>> = {
  plastic: [
    [168, 176, 180],
    [250, 251, 251],
  ],
  wood: [
    [150, 118, 78],
    [236, 214, 176],
  ],
  metal: [
    [52, 58, 63],
    [160, 167, 172],
  ],
};
const PAPER: Rgb = [255, 255, 255];

/** How much darker a line of grain is, in steps. */
const GRAIN_STEPS = 5;

/** Color 0 is paper; then tone by tone, shade by shade, by how many samples of the pixel are covered. */
const PALETTE: readonly Rgb[] = [
  PAPER,
  ...Object.values(RAMPS).flatMap(([dark, light]) =>
    Array.from({ length: SHADES }, (_, s) => mixed(dark, light, s / (SHADES - 1))).flatMap((full) =>
      Array.from({ length: SAMPLES }, (_, c) => mixed(PAPER, full, (c + 1) / SAMPLES)),
    ),
  ),
];

/**
 * Each facet in one shade by how it lies to the light; of wood with lines of grain `grainMm` apart.
 * Four samples make a pixel: the tone most of them have, the mean of its shades, as much as is covered.
 */
export function rasterOf(seen: Seen, depths: Depths, grainMm: number): Raster {
  const { grid, facet, depth } = depths;
  const { minX, maxY, pitch } = grid;
  const [columns, rows] = [grid.columns / SUPER, grid.rows / SUPER];
  const tones = seen.bodies.map(({ tone }) => TONES.indexOf(tone));
  const shades = facetShades(seen);
  const grain = grainOf(seen, grainMm, 0.22 * grainMm);
  const pixels = new Uint8Array(columns * rows);
  const counts = new Uint8Array(TONES.length);
  const sums = new Float64Array(TONES.length);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      counts.fill(0);
      sums.fill(0);
      let covered = 0;
      for (let k = 0; k < SAMPLES; k++) {
        const i = SUPER * column + (k % SUPER);
        const j = SUPER * row + Math.floor(k / SUPER);
        const at = j * grid.columns + i;
        const f = facet[at];
        if (f < 0) continue;
        const tone = tones[seen.bodyOf[f]];
        covered++;
        counts[tone]++;
        const onLine = grain?.(f, minX + (i + 0.5) * pitch, maxY - (j + 0.5) * pitch, depth[at]);
        sums[tone] += shades[f] - (onLine ? GRAIN_STEPS : 0);
      }
      if (covered === 0) continue;
      let most = 0;
      for (let tone = 1; tone < counts.length; tone++) if (counts[tone] > counts[most]) most = tone;
      const shade = Math.max(0, Math.round(sums[most] / counts[most]));
      pixels[row * columns + column] = 1 + (most * SHADES + shade) * SAMPLES + covered - 1;
    }
  }
  return { columns, rows, pixels, palette: PALETTE };
}

/** Steps of lightness of the facets that face the viewer. Half of the light comes from all round, so nothing is black. */
function facetShades({ normals, bodyOf }: Seen): Float32Array {
  const shades = new Float32Array(bodyOf.length);
  for (let f = 0; f < shades.length; f++) {
    const lit =
      normals[3 * f] * LIGHT[0] + normals[3 * f + 1] * LIGHT[1] + normals[3 * f + 2] * LIGHT[2];
    shades[f] = ((1 + lit) / 2) * (SHADES - 1);
  }
  return shades;
}

function mixed(a: Rgb, b: Rgb, share: number): Rgb {
  const mix = (k: 0 | 1 | 2) => Math.round(a[k] + (b[k] - a[k]) * share);
  return [mix(0), mix(1), mix(2)];
}
