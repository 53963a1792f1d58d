/** Every kind of jig, in the order a maker uses them. */
import { centerScribeKind } from './center-scribe/kind.js';
import { drillStop } from './drill-stop/kind.js';
import { dryingCombKind } from './drying-comb/kind.js';
import { gaugesKind } from './gauges/kind.js';
import type { JigKind } from './kind.js';
import { lipSlotGuideKind } from './lip-slot-guide/kind.js';
import { sandingCradleKind } from './sanding-cradle/kind.js';
import { wireFormKind } from './wire-form/kind.js';

export const JIG_KINDS: readonly JigKind[] = [
  centerScribeKind,
  lipSlotGuideKind,
  drillStop,
  gaugesKind,
  wireFormKind,
  sandingCradleKind,
  dryingCombKind,
];
