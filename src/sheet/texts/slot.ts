/** Words of the shop sheet: lip slots. */
export const slot = {
  heading: 'Lip slot and holes',
  first:
    'Before any edge is rounded: draw the center line all round each blank. The lip slot is sawn while the sides are flat, for only then is it square to them; a slot that leans makes the lure veer to one side, and no bending of the tow eye cures it.',
  title: 'Lip slot',
  columns: {
    pattern: 'Pattern',
    angle: 'Angle to the datum line',
    depth: 'Depth mm',
    width: 'Width mm',
    station: 'Middle at station mm',
    by: 'Sawn',
  },
  guide: 'in its printed guide',
  hand: 'by the mark, with a square',
  cut: 'with the outline',
} as const;
