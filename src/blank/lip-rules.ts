/** What keeps a lip plate from being cut as drawn. */
import type { Lip, Pattern } from '../pattern/pattern.js';
import { type Problem, problem } from '../problem.js';

/** Least plate between a hole and any edge, or the belly, mm: common practice, no source. */
export const LEAST_PLATE_MM = 2;

export function lipProblems({ lip }: Pattern): Problem[] {
  if (!lip) return [];
  if (lip.lengthMm <= lip.slotDepthMm) {
    const facts = { lengthMm: lip.lengthMm, depthMm: lip.slotDepthMm };
    return [problem('lip-too-short', ['lip', 'lengthMm'], facts)];
  }
  return [...cornerProblems(lip), ...tabProblems(lip), ...eyeHoleProblems(lip)];
}

const freeMm = ({ lengthMm, slotDepthMm }: Lip): number => lengthMm - slotDepthMm;

/** Slack for sizes that scale to just what they may be, mm. */
const SAME_MM = 1e-9;

/** The largest tenth that is not above a limit. */
const tenthBelow = (mm: number): number => Math.max(0, Math.floor((mm + SAME_MM) * 10) / 10);

function cornerProblems(lip: Lip): Problem[] {
  const { cornerRadiusMm, widthMm } = lip;
  const limitMm = Math.min(widthMm / 2, freeMm(lip));
  if (cornerRadiusMm <= limitMm + SAME_MM) return [];
  const facts = { cornerRadiusMm, widthMm, freeMm: freeMm(lip), limitMm: tenthBelow(limitMm) };
  return [problem('lip-corner-too-large', ['lip', 'cornerRadiusMm'], facts)];
}

function tabProblems({ tab, widthMm, slotDepthMm }: Lip): Problem[] {
  if (!tab) return [];
  if (tab.widthMm >= widthMm) {
    const facts = { tabMm: tab.widthMm, widthMm };
    return [problem('lip-tab-too-wide', ['lip', 'tab', 'widthMm'], facts)];
  }
  const radiusMm = tab.insideRadiusMm;
  const shoulderMm = (widthMm - tab.widthMm) / 2;
  const limitMm = Math.min(shoulderMm, slotDepthMm);
  if (radiusMm <= limitMm + SAME_MM) return [];
  const facts = { radiusMm, shoulderMm, depthMm: slotDepthMm, limitMm: tenthBelow(limitMm) };
  return [problem('lip-tab-radius-too-large', ['lip', 'tab', 'insideRadiusMm'], facts)];
}

/** On the center line the nearest edges are the belly, the tip and the two sides. */
function eyeHoleProblems(lip: Lip): Problem[] {
  if (!lip.eyeHole) return [];
  const { diameterMm, forwardMm } = lip.eyeHole;
  const away = diameterMm / 2 + LEAST_PLATE_MM;
  const widest = Math.min(lip.widthMm, freeMm(lip)) - 2 * LEAST_PLATE_MM;
  if (diameterMm > widest + SAME_MM) {
    const facts = { diameterMm, limitMm: tenthBelow(widest), leastMm: LEAST_PLATE_MM };
    return [problem('lip-hole-too-wide', ['lip', 'eyeHole', 'diameterMm'], facts)];
  }
  const [fromMm, toMm] = [away, freeMm(lip) - away];
  if (forwardMm >= fromMm - SAME_MM && forwardMm <= toMm + SAME_MM) return [];
  const facts = { forwardMm, fromMm, toMm, leastMm: LEAST_PLATE_MM };
  return [problem('lip-hole-outside', ['lip', 'eyeHole', 'forwardMm'], facts)];
}
