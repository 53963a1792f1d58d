/** The parts a lure is made of, each with its weight, and how weights add up. */
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';

/** Inertia in g·mm² about a point along the lure's axes; `xz` is ∫ xz dm. xy and yz are zero by symmetry. */
export type Inertia = {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xz: number;
};

/** Mass with its center of gravity, and the inertia about that center. */
export type Mass = {
  readonly massG: number;
  readonly cgMm: Point3;
  readonly inertiaGMm2: Inertia;
};

export type Item = Mass & {
  readonly kind: 'timber' | 'poured' | 'weight' | 'glue' | 'coat' | 'rig';
  /** `timber`, `plug 1`, `lip`, `epoxy`, `tail treble`: as a maker would call it. Unique in a lure. */
  readonly name: string;
  /** Water the item keeps out when the lure is under: for the timber the whole body, for what is inside it nothing. */
  readonly displacedMm3: number;
  /** One standard deviation to expect of the mass. */
  readonly spreadG: number;
};

/** A closed solid that keeps water out, in the frame of the lure. */
export type Displacer = { readonly name: string; readonly mesh: Mesh };

/** The whole lure as it lies in the water. */
export type Lure = Mass & {
  readonly items: readonly Item[];
  /** One standard deviation of the mass; the items' spreads add as squares. */
  readonly spreadG: number;
  /** What keeps water out: the coated body first, then lip, eyes, hooks. Where they overlap each counts whole. */
  readonly displacing: readonly Displacer[];
};
