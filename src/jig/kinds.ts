/** Every kind of jig, in the order a maker uses them. */
import { drillStop } from './drill-stop/kind.js';
import { gaugesKind } from './gauges/kind.js';
import type { JigKind } from './kind.js';
import { lipSlotGuideKind } from './lip-slot-guide/kind.js';
import type { Printer } from './printer.js';
import type { JigSetup } from './setup.js';

export const JIG_KINDS: readonly JigKind[] = [lipSlotGuideKind, drillStop, gaugesKind];

/** How each jig is set up, by its kind; a kind that is not there is not wanted. */
export type JigSetups = {
  readonly printer: Printer;
  readonly byKind: Readonly<Record<string, JigSetup>>;
};
