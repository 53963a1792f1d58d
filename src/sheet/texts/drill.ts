/** Words of the shop sheet: everything a bit makes. */
export const drill = {
  title: 'Holes of {pattern}, lures: {count}',
  columns: {
    hole: 'Hole',
    bit: 'Bit mm',
    collar: 'Collar from shoulder mm',
    place: 'Where, mm',
    depth: 'Depth, full width mm',
    tip: 'To the tip mm',
  },
  about:
    'The collar is set from the bit’s shoulder, where it is at its full width, to the face of the collar; it runs against the jig. Depth is that of the full width; the bit’s point goes on to the depth of the tip. Without a jig, mark the depth on the bit and measure the first hole.',
  what: {
    ballast: 'ballast {number}',
    hanger: 'hanger {number}',
    'tow eye': 'tow eye',
    'tail eye': 'tail eye',
  },
  station: '{station} from the nose',
  over: 'at the {from}, {height} over the datum line',
  under: 'at the {from}, {height} under the datum line',
  on: 'at the {from}, on the datum line',
  ends: { belly: 'belly', nose: 'nose', tail: 'tail' },
  leans: '{place}, leaning {tilt} aft',
  leansForward: '{place}, leaning {tilt} forward',
  through: '{depth}, then right through from the other end',
  rightThrough: 'right through',
  sawnNose:
    'Stations are measured from the nose of the finished lure. The nose of the sawn blank stands ahead of it by what comes off all round: with the rule on the sawn nose, add ',
  sawnNoseOf: '{allowance} for {pattern}',
  wire: '*Through-wire*, {pattern}: a wire with an eye in the belly, or wound at its eyes, goes through no bore. Saw or rout a slot as wide as the bore from the belly up to the line of the wire while the sides are flat; lay the bent wire in, and close the slot with glue and a strip of the same timber. A straight wire goes through a bore drilled from both ends.',
} as const;
