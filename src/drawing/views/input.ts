/** What the views are made from. Lengths mm in the frame of the lure (x aft, z up), masses g, angles degrees. */
import type { Blank } from '../../blank/blank.js';
import type { BodyProperties } from '../../body/properties.js';
import type { BodyShape } from '../../body/shape.js';
import type { Verdict } from '../../float/verdict.js';
import type { Point2 } from '../../geometry/vec.js';
import type { Pattern } from '../../pattern/pattern.js';
import type { DrawnEye, DrawnLip } from '../picture/input.js';
import type { SheetSize } from '../picture/picture.js';

export type NamedEye = DrawnEye & {
  /** `tow eye`, `hanger 1`, `tail eye`. */
  readonly name: string;
  /** Where it leaves the finished body: (station, height). */
  readonly surface: Point2;
  /** From there into the wood, the shank of a screw eye; null for a loop of the through-wire. */
  readonly shankTip: Point2 | null;
  /** Eye, ring and treble by their names in the table of fittings. */
  readonly parts: readonly string[];
};

/** How the finished and rigged lure lies. */
export type DrawnFloat = {
  readonly verdict: Verdict;
  readonly massG: number;
  readonly trimDeg: number;
  /** Null for one that hangs under water. */
  readonly freeboard: { readonly noseMm: number; readonly tailMm: number } | null;
  readonly water: {
    readonly temperatureC: number;
    readonly salinityPsu: number;
    readonly densityKgM3: number;
  };
};

export type ViewsInput = {
  readonly name: string;
  readonly version: string;
  /** The maker’s own words; any text. */
  readonly note: string;
  /** What the pattern file is known by: the first digits of its SHA-256. */
  readonly hash: string;
  /** Name and version of the program. */
  readonly tool: string;
  /** The sheets, lying. */
  readonly sheet: SheetSize;
  /** Show inches beside the millimeters. */
  readonly inches: boolean;
  readonly pattern: Pattern;
  readonly shape: BodyShape;
  readonly properties: BodyProperties;
  readonly blank: Blank;
  readonly lip: DrawnLip | null;
  readonly eyes: readonly NamedEye[];
  /** Center line of the through-wire as it is bent, (station, height); null without one. */
  readonly wire: readonly Point2[] | null;
  /** Radius of the largest bit that stays out of the body; 0 when none does. */
  readonly roundOverMm: number;
  readonly timberDensityKgM3: number;
  readonly float: DrawnFloat;
};
