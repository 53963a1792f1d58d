/** Words of the shop sheet: what to make. */
export const head = {
  title: 'Shop sheet: {name}',
  heading: 'What to make',
  made: 'Made by {tool}. Every figure is one of build.json {hash}; the manifest has the whole hash.',
  about:
    'The sheet follows the work in its order. Lengths are in mm, masses in g, angles in degrees; stations are measured from the nose along the datum line. Boxes are to tick, empty cells to write in.',
  inches:
    'Behind each length in mm stands the same length in inches, to the nearest sixty-fourth: a help for the eye. Mark and set in mm.',
  note: 'Note',
  columns: {
    pattern: 'Pattern',
    version: 'Version',
    lengthMm: 'Length mm',
    count: 'Make',
    sawn: 'Saw',
    timber: 'Timber',
    blockMm: 'Block mm thick',
  },
  written: 'Maker {maker}   begun {begun}   done {ended}',
  steps: 'Steps',
} as const;
