/** The set-up files there are, in the order a maker uses their jigs; nothing here makes one. */
import { centerScribeForm } from './center-scribe/setup.js';
import { drillStopForm } from './drill-stop/setup.js';
import { dryingCombForm } from './drying-comb/setup.js';
import { gaugesForm } from './gauges/setup.js';
import { lipSlotGuideForm } from './lip-slot-guide/setup.js';
import type { Printer } from './printer.js';
import { sandingCradleForm } from './sanding-cradle/setup.js';
import type { JigForm, JigSetup } from './setup.js';
import { wireFormForm } from './wire-form/setup.js';

export const JIG_FORMS: readonly JigForm[] = [
  centerScribeForm,
  lipSlotGuideForm,
  drillStopForm,
  gaugesForm,
  wireFormForm,
  sandingCradleForm,
  dryingCombForm,
];

/** How each jig is set up, by its kind; a kind that is not there is not wanted. */
export type JigSetups = {
  /** The run names its set-ups: then each jig is asked for, and what keeps it from being made is an error. */
  readonly asked: boolean;
  readonly printer: Printer;
  readonly byKind: Readonly<Record<string, JigSetup>>;
};
