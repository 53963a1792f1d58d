/** What hand and eye meet on the mesh: stop faces, wings, the slot's line. */
import { insideRegions } from '../../geometry/ring.js';
import { across, along, type Levels, type Section } from './check-levels.js';
import { gapOn } from './check-slot.js';
import type { LipSlotGuideSetup } from './setup.js';

const BESIDE = 1.5; // mm from the slot's wall, well inside of the narrowest stop face

const isSolid = (section: Section, x: number, y: number): boolean => insideRegions([x, y], section);

/** Stop faces found beside the slot: on both sides of it, in both cheeks. */
export function stopsFound({ stop, outerY, slotX }: Levels): number {
  const inset = 1;
  return [outerY[0] + inset, outerY[1] - inset].reduce((found, y) => {
    const gap = gapOn(stop, y, slotX, 0);
    if (!gap) return found;
    return found + [gap.from - BESIDE, gap.to + BESIDE].filter((x) => isSolid(stop, x, y)).length;
  }, 0);
}

/** How far a wing keeps from the blade's way and how far it stands out, the least at both ends of that way. */
export function wingOf({ slot, outerY, slotX }: Levels, side: 'starboard' | 'port') {
  const way = side === 'starboard' ? -1 : 1;
  const face = side === 'starboard' ? outerY[0] : outerY[1];
  const inCheek = face - way;
  const found = slot.map(([z, section]) => {
    const gap = gapOn(section, inCheek, slotX, z);
    const [finX] = along(section, face + way);
    const reach =
      finX === undefined ? [] : across(section, finX + 0.5).map((y) => way * (y - face));
    return {
      guardMm: gap && finX !== undefined ? finX - gap.to : 0,
      outMm: Math.max(0, ...reach),
    };
  });
  return {
    guardMm: Math.min(...found.map((f) => f.guardMm)),
    outMm: Math.min(...found.map((f) => f.outMm)),
  };
}

/** True where the slot's line is sunk into both cheeks just over its end. */
export function isMarked({ over, outerY, slotX }: Levels, { letters }: LipSlotGuideSetup): boolean {
  const inset = letters.depthMm / 2;
  return [outerY[0] + inset, outerY[1] - inset].every((y) => {
    const gap = gapOn(over, y, slotX, 0);
    return gap !== null && Math.abs((gap.from + gap.to) / 2 - slotX) < inset;
  });
}
