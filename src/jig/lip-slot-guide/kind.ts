import { jigKind } from '../kind.js';
import { checkSawSlot } from './check.js';
import type { LipSlotGuide } from './jig.js';
import { lipSlotGuide } from './make.js';
import { type LipSlotGuideSetup, lipSlotGuideSchema, lipSlotGuideSections } from './setup.js';

export const lipSlotGuideKind = jigKind<LipSlotGuideSetup, LipSlotGuide>({
  kind: 'lip-slot-guide',
  called: 'lip-slot guide',
  path: ['lip', 'slot'],
  isAid: false,
  sections: lipSlotGuideSections,
  schema: lipSlotGuideSchema,
  make: (kernel, { blank }, { setup }) => lipSlotGuide(kernel, blank, setup),
  measure: (kernel, jig, { blank }, { setup }) => checkSawSlot(kernel, jig, blank, setup),
});
