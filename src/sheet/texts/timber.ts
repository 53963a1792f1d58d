/** Words of the shop sheet: blocks, tape and sheets. */
export const timber = {
  heading: 'Timber, tape and sheets',
  columns: {
    block: 'Block',
    timber: 'Timber',
    size: 'Length × width × thickness, mm',
    count: 'Get out',
    layers: 'In each stack',
    faces: 'For face',
  },
  title: 'Timber to get out',
  single:
    'Take {timber}, {thickness} thick, somewhat longer than the lure’s {length} and wider than its template is high, clear at the nose end. A run file plans whole blocks.',
  tape: 'Double-sided tape between blocks: joints {joints}, together {length} along the blocks, {area} of faces. Tape the whole length; a stack that slides under the saw spoils all its layers.',
  sheets: 'Sheets to cut: templates and lips',
  sheetColumns: {
    kind: 'For',
    number: 'Layout',
    material: 'Material',
    size: 'Length × width × thickness, mm',
    count: 'Sheets',
    parts: 'Parts on each',
  },
  sheetKinds: { 'template-sheet': 'templates', 'lip-sheet': 'lips' },
} as const;
