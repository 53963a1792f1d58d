import { jigKind } from '../kind.js';
import { checkSawSlot } from './check.js';
import type { LipSlotGuide } from './jig.js';
import { lipSlotGuide } from './make.js';
import { type LipSlotGuideSetup, lipSlotGuideForm } from './setup.js';

export const lipSlotGuideKind = jigKind<LipSlotGuideSetup, LipSlotGuide>({
  ...lipSlotGuideForm,
  path: ['lip', 'slot'],
  isAid: false,
  make: lipSlotGuide,
  measure: (kernel, jig, work, { setup }) => checkSawSlot(kernel, jig, work, setup),
});
