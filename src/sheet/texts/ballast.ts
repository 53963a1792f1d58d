/** Words of the shop sheet: metal in the holes. */
export const ballast = {
  heading: 'Ballast',
  none: 'None of these lures has ballast.',
  title: 'What goes into each hole',
  columns: {
    pattern: 'Pattern',
    hole: 'Hole',
    metal: 'Metal',
    how: 'How',
    filled: 'Goes in, g',
    stays: 'Stays in the lure, g',
    lures: 'Lures',
  },
  pours: {
    'topped-up': 'pour, top up',
    single: 'pour once',
  },
  filled: 'pour to {fill} over the floor',
  weight: 'glue in {weight}',
  rod: 'glue in a piece of rod',
  told: {
    'topped-up': '*Pour, top up*: let the metal set, then fill up level with the sawn belly.',
    single: '*Pour once*: level with the sawn belly; the metal sinks as it sets and is left so.',
    filled:
      '*Pour to a height over the floor*, where the hole ends at full width: weigh the metal in the ladle; the rest of the hole is closed with glue.',
    weight: '*Glue in*: push it onto the floor of the hole and close the hole with glue.',
  },
  why: 'The belly still loses its allowance, and metal with it where it is flush: what stays is what the lure swims with.',
  melt: 'Metal to melt',
  meltColumns: {
    metal: 'Metal',
    holes: 'Holes',
    net: 'In the holes, g',
    allowance: 'Allowed for dross and ladle',
    total: 'Melt, g',
    melts: 'Melts at',
  },
  buy: 'Ready-made weights to buy',
  buyColumns: {
    weight: 'Weight',
    metal: 'Metal',
    mass: 'Each, g',
    size: 'Diameter × length, mm',
    count: 'Buy',
  },
} as const;
