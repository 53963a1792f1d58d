/** Words of the shop sheet: the blanks sawn. */
export const saw = {
  heading: 'Saw the blanks',
  single:
    'Draw round the template, or glue its paper on the block, the datum line along the grain. Leave the line; saw on the waste side.',
  steered:
    'Glue the face’s paper on the stack, or draw round the templates. Leave the line; saw on the waste side. Numbers in rings are the order; dashed lines are the blade’s way in.',
  follows:
    'The machine follows the file: kerf is in it, openings come before outlines. Fix the stack; let no piece come loose in the cut.',
  face: 'Face {id}',
  counts: 'Outlines: {outlines}. Layers in a stack: {layers}. Stacks to saw: {copies}, of ',
  stack: '{copies} × ({blocks})',
  block: '{count} {block}',
  size: 'Block {length} × {width} × {thickness}; stack {height} high.',
  parting:
    'First part the stack along the lettered lines, in the order of their letters; lines: {cuts}. Pieces then in the hand: {pieces}.',
  whole: 'Length in the hand: {pieces}. Support both ends; stop the saw before backing out.',
  relief: 'Relief cuts before their outline: {cuts}.',
  order: 'Saw in this order',
  told: 'Face {id}: outlines on the block with their order of sawing.',
} as const;
