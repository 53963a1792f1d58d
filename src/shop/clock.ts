/** The bench's clock, in minutes from the start of the first bench day: work by day, drying day and night. */

const DAY_MIN = 24 * 60;
const NONE = 1e-6; // min: what rounding leaves of a day is no time to work in

/** A stretch from one minute to another. */
export type Stretch = { readonly fromMin: number; readonly toMin: number };

export const dayOf = (min: number): number => Math.floor((min + NONE) / DAY_MIN) + 1;

const startOf = (day: number): number => (day - 1) * DAY_MIN;

/** The next minute at which the bench is open: this one, or the next day's first. */
function openAt(min: number, benchMin: number): number {
  const day = dayOf(min);
  return leftOfDay(min, benchMin) > NONE ? Math.max(min, startOf(day)) : startOf(day + 1);
}

/** What is left of the bench day then; nothing once it is over. */
const leftOfDay = (min: number, benchMin: number): number =>
  Math.max(0, startOf(dayOf(min)) + benchMin - min);

/** Work that stops at the end of the bench day and goes on the next: one stretch a day. */
export function inPieces(startMin: number, workMin: number, benchMin: number): Stretch[] {
  const out: Stretch[] = [];
  for (let left = workMin, at = startMin; left > NONE; ) {
    const fromMin = openAt(at, benchMin);
    const take = Math.min(left, leftOfDay(fromMin, benchMin));
    at = fromMin + take;
    left -= take;
    out.push({ fromMin, toMin: at });
  }
  return out;
}

/** Pieces of work none of which may be left over night, each within a day; those that follow on are one stretch. */
export function undivided(
  startMin: number,
  pieces: readonly number[],
  benchMin: number,
): Stretch[] {
  const out: Stretch[] = [];
  let at = startMin;
  for (const workMin of pieces) {
    const open = openAt(at, benchMin);
    const fits = workMin <= leftOfDay(open, benchMin) + NONE;
    const fromMin = fits ? open : startOf(dayOf(open) + 1);
    const before = out[out.length - 1];
    at = fromMin + workMin;
    if (before && before.toMin === fromMin) out[out.length - 1] = { ...before, toMin: at };
    else out.push({ fromMin, toMin: at });
  }
  return out;
}

/** When a batch is begun: the next morning where a whole day holds it and what is left of this one does not. */
export function batchStart(min: number, workMin: number, benchMin: number): number {
  const open = openAt(min, benchMin);
  const waits = workMin > leftOfDay(open, benchMin) + NONE && workMin <= benchMin + NONE;
  return waits ? startOf(dayOf(open) + 1) : open;
}
