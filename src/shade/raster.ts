/** From what is seen where to the tones of a picture. */

import type { Point3 } from '../geometry/vec.js';
import { unit3 } from '../geometry/vec3.js';
import type { Depths } from './depth.js';
import { type Grain, grainOf } from './grain.js';
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
/** How wide, as a share of the distance between two. */
const GRAIN_WIDTH = 0.22;

/** Color 0 is paper; then tone by tone, shade by shade, by how many samples of the pixel are covered. */
const PALETTE: readonly Rgb[] = [
  PAPER,
  ...TONES.flatMap((tone) => (tone === 'ghost' ? [] : toneColors(...RAMPS[tone]))),
];

/**
 * Each facet in one shade by how it lies to the light; of wood with lines of grain `grainMm` apart.
 * Four samples make a pixel: the tone most of them have, the mean of its shades, as much as is covered.
 */
export function rasterOf(seen: Seen, depths: Depths, grainMm: number): Raster {
  const samples = sampleShades(seen, depths, grainOf(seen, grainMm, GRAIN_WIDTH * grainMm));
  const across = depths.grid.columns;
  const [columns, rows] = [across / SUPER, depths.grid.rows / SUPER];
  const pixels = new Uint8Array(columns * rows);
  for (let row = 0, k = 0; row < rows; row++) {
    for (let i = SUPER * row * across; k < (row + 1) * columns; i += SUPER, k++) {
      pixels[k] = blended(samples[i], samples[i + 1], samples[i + across], samples[i + across + 1]);
    }
  }
  return { columns, rows, pixels, palette: PALETTE };
}

/** Of each sample its shade, counted through all tones from 1; 0 where nothing is. */
function sampleShades(seen: Seen, { grid, facet, depth }: Depths, grain: Grain | null): Uint8Array {
  const { minX, maxY, pitch, columns, rows } = grid;
  const shades = facetShades(seen);
  const samples = new Uint8Array(facet.length);
  for (let row = 0, i = 0; row < rows; row++) {
    const y = maxY - (row + 0.5) * pitch;
    for (let column = 0; column < columns; column++, i++) {
      const f = facet[i];
      if (f < 0) continue;
      const isLine = grain?.(f, minX + (column + 0.5) * pitch, y, depth[i]);
      samples[i] = isLine ? darker(shades[f]) : shades[f];
    }
  }
  return samples;
}

/** Of each shade its tone. */
const TONE_OF = Uint8Array.from({ length: 256 }, (_, shade) => Math.floor((shade - 1) / SHADES));

/** A line of grain on a shade; the darkest stays. */
const darker = (shade: number): number =>
  Math.max(1 + TONE_OF[shade] * SHADES, shade - GRAIN_STEPS);

const colorOf = (shade: number, covered: number): number => 1 + (shade - 1) * SAMPLES + covered - 1;

function blended(a: number, b: number, c: number, d: number): number {
  const [least, greatest] = [Math.min(a, b, c, d), Math.max(a, b, c, d)];
  if (greatest === 0) return 0;
  if (least > 0 && TONE_OF[least] === TONE_OF[greatest])
    return colorOf(Math.round((a + b + c + d) / SAMPLES), SAMPLES);
  const covered = [a, b, c, d].filter((shade) => shade > 0);
  const byTone = covered.map((shade) => covered.filter((s) => TONE_OF[s] === TONE_OF[shade]));
  const most = byTone.reduce((best, one) => (one.length > best.length ? one : best));
  const mean = Math.round(most.reduce((sum, shade) => sum + shade, 0) / most.length);
  return colorOf(mean, covered.length);
}

/** Half of the light comes from all round, so that nothing is black. Only facets that face the viewer are asked for. */
function facetShades({ normals: n, bodyOf, bodies }: Seen): Uint8Array {
  const first = bodies.map(({ tone }) => 1 + TONES.indexOf(tone) * SHADES);
  const shades = new Uint8Array(bodyOf.length);
  for (let f = 0; f < shades.length; f++) {
    const lit = n[3 * f] * LIGHT[0] + n[3 * f + 1] * LIGHT[1] + n[3 * f + 2] * LIGHT[2];
    shades[f] = first[bodyOf[f]] + Math.round(((1 + lit) / 2) * (SHADES - 1));
  }
  return shades;
}

function toneColors(dark: Rgb, light: Rgb): Rgb[] {
  const shades = Array.from({ length: SHADES }, (_, s) => mixed(dark, light, s / (SHADES - 1)));
  return shades.flatMap((full) =>
    Array.from({ length: SAMPLES }, (_, c) => mixed(PAPER, full, (c + 1) / SAMPLES)),
  );
}

function mixed(a: Rgb, b: Rgb, share: number): Rgb {
  const mix = (k: 0 | 1 | 2) => Math.round(a[k] + (b[k] - a[k]) * share);
  return [mix(0), mix(1), mix(2)];
}
