/**
 * How far a slot sawn in the guide can be from the pattern's: what clearances, the printer and the
 * blade's play add up to. Not in it: how true the workpiece itself is, and the hand.
 *
 * Every cause is taken as independent. A clearance c to either side is an even chance between −c and
 * c (standard deviation c/√3, greatest c). A printed face is off by a normal error (standard
 * deviation `errorMm`, greatest taken as three of them). Deviations add as squares, greatest as they
 * are. Linear in small errors, which at these sizes is right to a thousandth.
 */

/** One standard deviation, and the greatest with every cause at its greatest the same way. */
export type Spread = { readonly deviation: number; readonly greatest: number };

export type SlotSpread = {
  /** Along the belly, where the slot opens. */
  readonly stationMm: Spread;
  readonly depthMm: Spread;
  /** Of the lip's angle in the side view. */
  readonly angleDeg: Spread;
  /** Out of square to the sides: a turn about the slot's own direction. Null: the seat does not stop it. */
  readonly leanDeg: Spread | null;
};

/** Lengths of the guide in mm and what is loose in it. */
export type SpreadCauses = {
  readonly printErrorMm: number;
  readonly seatClearanceMm: number;
  /** Between the blade, over the set of its teeth, and the slot that leads it, in all. */
  readonly bladePlayMm: number;
  /** How the workpiece rises when it is turned by one degree and pressed in again. */
  readonly riseMm: number;
  /** Length of the slot's walls along the blade's stroke, and across it from the stop face. */
  readonly slotLengthMm: number;
  readonly slotHeightMm: number;
  /** From the middle of the seat to the slot's mouth, along the slot. */
  readonly leverMm: number;
  /** Between the slot and the belly at its mouth. */
  readonly bellyAngleDeg: number;
  /** Greatest turn about the slot's direction that the seat allows; null: any. */
  readonly playDeg: number | null;
};

/** A cause, by its own deviation and greatest, times what it does. */
type Share = { readonly deviation: number; readonly greatest: number };

const even = (most: number, effect = 1): Share => ({
  deviation: (most * effect) / Math.sqrt(3),
  greatest: most * effect,
});
const printed = (errorMm: number, effect = 1): Share => ({
  deviation: errorMm * effect,
  greatest: 3 * errorMm * effect,
});

const together = (...shares: readonly Share[]): Spread => ({
  deviation: Math.hypot(...shares.map((s) => s.deviation)),
  greatest: shares.reduce((sum, s) => sum + s.greatest, 0),
});

const DEG = 180 / Math.PI;

/**
 * - Angle: two bearing points of the seat, each off by e, at half their distance a = rise / tan 1°,
 *   turn the workpiece by e / 2a each; the seat's clearance g lets it rock by g/a; the blade turns in
 *   its slot of height H by its play p over H, half to either side.
 * - Station: the seat and the slot's wall are each off by e, the workpiece by g, the blade by p/2;
 *   with the turn of the seat at its lever, all over the sine of the angle between slot and belly.
 * - Depth: stop face and seat are each off by e; the workpiece lies within g.
 * - Lean: the turn the sides allow; the blade's play over the slot's length W, half to either side;
 *   a wall of the slot off by e at each end, e / W each.
 */
export function slotSpread(causes: SpreadCauses): SlotSpread {
  const { printErrorMm: e, seatClearanceMm: g, bladePlayMm: p, playDeg } = causes;
  const { slotLengthMm, slotHeightMm, leverMm } = causes;
  const base = causes.riseMm / Math.tan(1 / DEG);
  const slant = 1 / Math.sin(causes.bellyAngleDeg / DEG);
  const swing = leverMm / base;
  return {
    angleDeg: together(
      printed(e, DEG / (2 * base)),
      printed(e, DEG / (2 * base)),
      even(g, DEG / base),
      even(p / 2, DEG / slotHeightMm),
    ),
    stationMm: together(
      printed(e, slant),
      printed(e, slant),
      even(g, slant),
      even(p / 2, slant),
      printed(e, (slant * swing) / 2),
      printed(e, (slant * swing) / 2),
      even(g, slant * swing),
    ),
    depthMm: together(printed(e), printed(e), even(g)),
    leanDeg:
      playDeg === null
        ? null
        : together(
            even(playDeg),
            even(p / 2, DEG / slotLengthMm),
            printed(e, DEG / slotLengthMm),
            printed(e, DEG / slotLengthMm),
          ),
  };
}
