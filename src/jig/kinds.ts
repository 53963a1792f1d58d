/** Every kind of jig, in the order a maker uses them. */
import { centerScribeKind } from './center-scribe/kind.js';
import { drillStop } from './drill-stop/kind.js';
import { dryingCombKind } from './drying-comb/kind.js';
import type { JigKind } from './kind.js';
import { lipSlotGuideKind } from './lip-slot-guide/kind.js';
import type { Printer } from './printer.js';
import { sandingCradleKind } from './sanding-cradle/kind.js';
import type { JigSetup } from './setup.js';
import { wireFormKind } from './wire-form/kind.js';

export const JIG_KINDS: readonly JigKind[] = [
  centerScribeKind,
  lipSlotGuideKind,
  drillStop,
  wireFormKind,
  sandingCradleKind,
  dryingCombKind,
];

/** How each jig is set up, by its kind; a kind that is not there is not wanted. */
export type JigSetups = {
  /** The run names its set-ups: then each jig is asked for, and what keeps it from being made is an error. */
  readonly asked: boolean;
  readonly printer: Printer;
  readonly byKind: Readonly<Record<string, JigSetup>>;
};
