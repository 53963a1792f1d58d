/** What a jig is, whichever kind: a solid, what sits in it and how, and what to know about it. */
import type { Blank } from '../blank/blank.js';
import type { Body } from '../body/body.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import type { ProblemCode } from '../messages.js';
import type { Pattern } from '../pattern/pattern.js';
import type { KeyPath } from '../problem.js';
import type { Csg } from '../solid/csg.js';
import type { Matrix } from '../solid/placement.js';
import type { Materials } from '../tables/materials.js';
import type { Fit } from './fit.js';
import type { Sunk } from './letters.js';

/** What jigs are made from: one line of an order, designed. */
export type JigWork = {
  readonly pattern: Pattern;
  readonly body: Body;
  /** Center of gravity of the shaped body with its ballast in. */
  readonly shapedCgMm: Point3;
  readonly blank: Blank;
  readonly materials: Materials;
};

/** What a jig takes from the blank. */
export type JigBlank = Pick<
  Blank,
  'name' | 'version' | 'thicknessMm' | 'profileRing' | 'slot' | 'holes'
>;

export type JigSlot = NonNullable<JigBlank['slot']>;

export type { Axis } from './axis.js';

/** What every jig says of itself; each kind adds its own. Lengths in mm. */
export type Jig = {
  /** Names the file, with the pattern and the part. */
  readonly kind: string;
  /** Name of the blank it is for. */
  readonly pattern: string;
  /** Which one, where a pattern has several of a kind; empty where it has one. */
  readonly part: string;
  readonly csg: Csg;
  /** As printed: no coordinate negative, resting on z = 0. */
  readonly mesh: Mesh;
  /** From coordinates of the mesh to the frame of the lure. */
  readonly jigToBlank: Matrix;
  /** What it holds: the sawn blank, the shaped body, or nothing that could be held against it. */
  readonly workpiece: 'sawn' | 'shaped' | null;
  /** Gap the model leaves where the workpiece rests, so that the solids do not touch. */
  readonly seatMm: number;
  /** How it sits there; null when there is no workpiece. */
  readonly fit: Fit | null;
  /** Way the workpiece moves to come out, unit, lure frame; null when there is none. */
  readonly freeDirection: Point3 | null;
  /** The set-up's thinnest wall: what is measured may be less by the depth of letters only. */
  readonly leastWallMm: number;
  /** Stretches of X that stay in one piece if it must be split for the bed: guides, slots, notches. */
  readonly keepWholeMm: readonly (readonly [fromX: number, toX: number])[];
  readonly sizeMm: Point3;
  readonly volumeMm3: number;
  /** Openings right through the solid, to hold its genus against; null where bosses of leaning guides may bridge more. */
  readonly openings: number | null;
  readonly letters: readonly Sunk[];
  /** Texts for which there was no room. */
  readonly lettersLeftOut: readonly string[];
  /** How it is used, a sentence each, cautions last. */
  readonly words: readonly string[];
};

/** Why a jig cannot be made: code and numbers, each with its unit in its name. */
export type JigProblem = {
  readonly code: ProblemCode;
  readonly facts: Readonly<Record<string, number | string>>;
  /** The parameter it is about; left out: the kind's own. */
  readonly path?: KeyPath;
};

/** Jigs of one kind for one pattern, or what stands in their way; neither when the pattern needs none. */
export type JigOutcome<J extends Jig> = {
  readonly jigs: readonly J[];
  readonly problems: readonly JigProblem[];
};
