/**
 * Set-ups of the printed jigs: what the shop and its printer decide, not the pattern. Shipped values
 * with their reasons are in `jigs/`; every length is mm.
 */

/** What the printer can hold: width, depth, height. A jig may lie either way round on it. */
export type Bed = { readonly xMm: number; readonly yMm: number; readonly zMm: number };

/** Letters sunk into a face. */
export type Letters = {
  /** Height of a capital when there is room. */
  readonly heightMm: number;
  /** Letters are made smaller down to this to fit; what still does not fit is left out and told. */
  readonly leastHeightMm: number;
  /** Width of a stroke; two lines of the nozzle stay open. */
  readonly strokeMm: number;
  readonly depthMm: number;
};

export type DrillStopSetup = {
  readonly jig: 'drill-stop';
  /** Room for the saw's wander: the cradle is twice this longer and higher than the blank. */
  readonly clearanceMm: number;
  /** Gap the model leaves where the blank rests (nose, back, side), so that the solids do not touch. */
  readonly seatClearanceMm: number;
  readonly wallMm: number;
  /** Plate the blank's side lies on. */
  readonly floorMm: number;
  /** How far the blank stands out of the open side, so that a clamp or a hand presses the wood. */
  readonly proudMm: number;
  /** Least length in which the guide encloses the bit all round. */
  readonly guideLengthMm: number;
  /** Added to the diameter of the bit or bushing. */
  readonly holeClearanceMm: number;
  /** Outer diameter of a steel sleeve pressed into the guide; 0 for none. */
  readonly bushingOuterDiameterMm: number;
  /** Least plastic between two guides. */
  readonly webMm: number;
  /** Collar on the bit: the stop face carries it about the axis, all but a millimeter of its rim. */
  readonly collarDiameterMm: number;
  /** How far the cradle goes aft of the last hole. */
  readonly reachMm: number;
  /** Hole in the floor to push the blank out, when the cradle is closed at the tail. */
  readonly pushHoleDiameterMm: number;
  readonly letters: Letters;
  readonly bed: Bed;
};

export type LipSlotGuideSetup = {
  readonly jig: 'lip-slot-guide';
  /** Gap the model leaves where the blank's edge rests in the saddle. */
  readonly seatClearanceMm: number;
  /** Gap between each cheek and the blank's flat side: what the slot can lean. */
  readonly sideClearanceMm: number;
  /** Extra room on the side away from the nose, where the blank's edge is steep. */
  readonly reliefMm: number;
  readonly wallMm: number;
  /** Thickness of each cheek; above the slot the cheeks alone hold the guide together. */
  readonly cheekMm: number;
  /** How far the cheeks go above the slot's inner end. */
  readonly cheekAboveMm: number;
  /** How far the saddle goes on from the slot, away from the nose. */
  readonly reachMm: number;
  /** Width of the cut, over the set of the teeth. */
  readonly sawKerfMm: number;
  /** Added to the kerf when the saw fills the slot in one pass. */
  readonly runningClearanceMm: number;
  /** Room in the cheeks beyond the slot's inner end, for chips. */
  readonly chipRoomMm: number;
  /** From the saw's teeth to its spine, or to a strip clamped to the blade. */
  readonly stopHeightMm: number;
  readonly letters: Letters;
  readonly bed: Bed;
};

export type JigSetup = DrillStopSetup | LipSlotGuideSetup;

/** How each jig is set up; null for one that is not wanted. */
export type JigSetups = {
  readonly drillStop: DrillStopSetup | null;
  readonly lipSlotGuide: LipSlotGuideSetup | null;
};

/** What a jig is called when it is spoken of. */
export const JIG_NAME: Readonly<Record<'drill-stop' | 'lip-slot-guide', string>> = {
  'drill-stop': 'drill-stop jig',
  'lip-slot-guide': 'lip-slot guide',
};
