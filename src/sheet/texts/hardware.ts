/** Words of the shop sheet: what is hung on. */
import type { HardwareKind } from '../../shop/shop.js';

export const hardware = {
  heading: 'Hardware',
  title: 'To lay out for the run',
  columns: { what: 'What', name: 'Which', size: 'Size mm', count: 'Pieces', length: 'Length mm' },
  each: 'For each lure',
  eachColumns: {
    pattern: 'Pattern',
    what: 'What',
    name: 'Which',
    perLure: 'On one lure',
    total: 'Together',
    mass: 'Each g',
  },
  wire: 'Cut through-wire of {diameter} for {pattern} to {length}; the end held by the pliers is in it and is nipped off after.',
  none: 'Nothing is hung on these lures.',
  kinds: {
    'screw-eye': 'screw eye',
    ring: 'split ring',
    treble: 'treble',
    lip: 'lip',
    wire: 'through-wire',
    weight: 'weight',
    rod: 'rod',
  } satisfies Record<HardwareKind, string>,
} as const;
