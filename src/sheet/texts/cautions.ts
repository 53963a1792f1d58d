/** Words of the shop sheet: what can hurt, where the step stands; common practice, and others have the last word. */
const SPITS =
  'It spits violently on damp timber or a damp mold: dry blanks, dry ladle, nothing wet near the pot.';
const NO_PLASTIC = 'Never into, on or near printed plastic: take the blank out of every jig first.';

export const cautions = {
  saw: {
    title: 'Saw',
    items: [
      'A taped stack is flat and clean before it is sawn; blocks that move on each other grab the blade.',
      'Small parts are held by a jig or a push block, never by fingers near the blade.',
      'Eye and ear protection, no gloves or loose sleeves at a running blade; stop it before you clear it.',
    ],
  },
  sheets: {
    title: 'Laser and plastics',
    items: [
      'The machine’s own list of materials decides. Polycarbonate cuts badly by laser and gives off harmful fume; PVC is never cut by laser.',
      'Sheet chips when it is sawn or drilled: eye protection; hold it down on both sides of the cut.',
    ],
  },
  drill: {
    title: 'Drill',
    items: [
      'The blank is held by its jig or a vise, never in the hand; the bit grabs as it breaks through.',
      'Eye protection. Let the bit stop before chips are cleared.',
    ],
  },
  lead: {
    title: 'Molten lead',
    items: [
      SPITS,
      'Fume and dust are poisonous: outdoors or under draft; no food or drink, hands washed, work clothes kept apart, no children and nobody pregnant near.',
      'Face shield, leather gloves, long sleeves, closed shoes; a firm stand for the pot.',
      NO_PLASTIC,
      'Sand no lead: take a flush plug down with a file, wet, and collect the chips.',
      'Lead is restricted or banned for fishing in some places. Tin, bismuth, tungsten and steel are free of lead; change the metal in the pattern and build again.',
    ],
  },
  metal: {
    title: 'Molten metal',
    items: [
      SPITS,
      'Face shield, leather gloves, long sleeves, closed shoes; moving air; no children near.',
      NO_PLASTIC,
    ],
  },
  leadWeights: {
    title: 'Lead weights',
    items: [
      'Wash hands after handling; no food or drink at the bench; file no lead dry.',
      'Lead is restricted or banned for fishing in some places. Tin, bismuth, tungsten and steel are free of lead; change the weight in the pattern and build again.',
    ],
  },
  router: {
    title: 'Router and dust',
    items: [
      'The blank is in its holder or against a push block, never in fingers near the bit; feed against the turn of the bit.',
      'Wood dust harms the lungs, and that of some timbers the skin: mask, extraction, no dry sweeping.',
    ],
  },
  coats: {
    title: 'Epoxy, solvent, sealer',
    items: [
      'Uncured epoxy makes allergic for life: gloves that suit it, sleeves, no skin contact, no solvent to clean skin.',
      'A pot past its life heats up and smokes: spread it out, set it outdoors on something that does not burn.',
      'Solvents burn and their vapor harms: moving air, no flame or spark, a mask with the right filter where air is not enough.',
      'Rags with oil or solvent can catch fire by themselves: dry them flat outdoors, or drown them in a closed tin.',
    ],
  },
  hooks: {
    title: 'Hooks, wire and clear lips',
    items: [
      'Eye protection: wire ends fly when nipped, lips chip, rings and trebles spring.',
      'Trebles go on last, points away from the hand; a lure is never held by its hooks.',
    ],
  },
  tub: {
    title: 'At the tub',
    items: [
      'Points are covered or clipped as long as the lure is handled. Water, and hands that have held lead, stay away from food.',
    ],
  },
} as const;
