/** A pattern's printed parts laid out on the bed, one layout for each time the printer is started. */
import { assertNone } from '../problem.js';
import { layOnBeds, motionOnBed } from './bed-layout.js';
import { checkBedLayout, type LaidPart } from './check-bed-layout.js';
import type { PrintedPart } from './print.js';
import type { Printer } from './printer.js';

/**
 * Bed by bed. Parts of a jig with a larger bed of its own are on none.
 * @throws Fault if the judge finds parts too near, off the bed or left out
 */
export function laidOut(parts: readonly PrintedPart[], { bed, gapMm }: Printer): LaidPart[][] {
  const footprints = parts.map(({ sizeMm: [xMm, yMm] }) => ({ xMm, yMm }));
  const { beds, tooLarge } = layOnBeds(footprints, bed, gapMm);
  const placed = beds.map((places) =>
    places.map((place) => ({ part: place.part, at: motionOnBed(place, footprints[place.part]) })),
  );
  const meshes = parts.map((p) => p.mesh);
  const flaws = checkBedLayout({ meshes, beds: placed, tooLarge, bed, gapMm });
  assertNone(flaws.map((flaw) => `bed layout: ${JSON.stringify(flaw)}`));
  return placed;
}
