/**
 * Every word of the shop sheet, in English; another language is another object of this shape. `{name}` is
 * filled with a value of the record, `*…*` is strong. No digit stands in a text: numbers come from the
 * record alone. What is said of trade and safety is common practice without a source, unless it says so.
 */
import type { HardwareKind, HeavyCode, LightCode, Says, StepName } from '../shop/shop.js';

export const TEXTS = {
  language: 'en',
  page: 'page {page} of {pages}',
  footer: '{name} · {tool}',
  dash: '–',
  space: ' ',
  comma: ', ',
  stop: '.',
  semicolon: '; ',
  times: ' × ',
  to: ' to ',
  comes: 'Local rules, the maker’s data sheet and a qualified person come before this sheet.',

  head: {
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
  },

  timber: {
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
  },

  saw: {
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
  },

  slot: {
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
  },

  drill: {
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
  },

  ballast: {
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
  },

  shape: {
    heading: 'Round over and shape',
    bits: 'Round-over bit',
    columns: {
      pattern: 'Pattern',
      bit: 'Bit, radius mm',
      limit: 'Largest that stays outside, mm',
      station: 'Tightest at station mm',
      allowance: 'Comes off all round mm',
      lures: 'Lures',
    },
    noBit: 'none is small enough: by hand',
    gauges: 'Section gauges, by number and station',
    gaugeColumns: { pattern: 'Pattern', stations: 'Number and station' },
    gauge: '{number} at {station}',
    byGauge:
      'Sand to the gauges, by number, each square to the datum line at its station; the round-over map shows how far from the edge the wood still stands.',
    byEye:
      'No gauges were made. The template is the sawn outline, larger all round than the lure: sand to the sections and the table of offsets of the views, alike on both sides of the center line.',
    bearing:
      'The bearing of the bit must find a flat to run on, on the second side too: where it would not, take the next smaller bit, and do the rest by hand.',
  },

  weights: {
    heading: 'Weights to expect',
    about:
      'Weigh a few blanks at every stage. Nineteen of twenty lie between the two limits. The change against the stage before tells more than the weight: in it the density of the board hardly counts.',
    title: '{pattern}, lures: {count}',
    columns: {
      stage: 'Stage',
      mass: 'Expect g',
      low: 'From',
      high: 'to',
      change: 'Change g',
      lure: 'Lure:',
    },
    changes: '{low} to {high}',
    outside: 'When a lure is outside',
    outsideColumns: { stage: 'At', light: 'Lighter', heavy: 'Heavier' },
    log: 'Log of lures',
    logColumns: [
      'Lure',
      'Pattern',
      'Sawn',
      'Poured',
      'Shaped',
      'Sealed',
      'Coated',
      'Rigged',
      'Nose mm',
      'Tail mm',
    ],
    stages: {
      'sawn blank': 'sawn blank',
      drilled: 'drilled',
      poured: 'ballast in',
      'rounded over': 'rounded over',
      shaped: 'shaped',
      sealed: 'sealed',
      rigged: 'rigged',
    } as Readonly<Record<string, string>>,
    light: {
      'lighter-timber':
        'The timber is lighter than reckoned. Note it on the blank, and drill that blank deeper: the command *float* with its blank mass tells the depth.',
      'hole-deep': 'Drilled deeper or wider than told. Check the collar; more metal goes in.',
      'plug-short':
        'The metal did not fill the hole. Top it up, or drill the void out and fill it.',
      'weight-light': 'A lighter weight is in than told, or the glue is short. Check which one.',
      'rounded-much': 'The bit is larger than told, or it dipped. Check it against the gauges.',
      'sanded-much': 'Sanded under the gauges. Check each station; do not sand the others alike.',
      'coat-thin': 'The coat is thin or has run off. Look for dry patches; the next may be fuller.',
      'fittings-light': 'Something is missing or smaller: ring, treble, lip, wire.',
    } satisfies Record<LightCode, string>,
    heavy: {
      'heavier-timber':
        'The timber is heavier than reckoned, or damp. Dry it before metal is poured. Note it on the blank, and drill that blank less deep: the command *float* with its blank mass tells the depth.',
      'hole-shallow': 'Not as deep as told. Clear the chips, check the collar, drill again.',
      'plug-long': 'More metal is in than told: the hole is deeper or wider, or a bead stands out.',
      'weight-heavy': 'A heavier weight is in than told, or much glue. Check which one.',
      'rounded-little': 'The bit is smaller than told, or was not run all round.',
      'sanded-little': 'Wood still stands outside the gauges. Go on.',
      'coat-thick': 'The coat is thick. Let it drip longer; warm the pot’s room, never the pot.',
      'fittings-heavy': 'Larger rings, trebles or more glue than told.',
    } satisfies Record<HeavyCode, string>,
  },

  coats: {
    heading: 'Seal and coat',
    none: 'No coats are planned for these lures.',
    about:
      'Amounts are what to make ready: solvent and what stays in pot, brush and drips are in them. Weigh the parts; measure by volume only where the maker’s data sheet gives the same ratio. Which part is called A differs from tin to tin: go by what each is. Where the tin says otherwise, the tin is right.',
    hanging:
      'Hang the lures by a wire in a pilot hole or an eye, apart from each other, and turn them while epoxy is on until it no longer runs. Keep lip slot, pilots and bore open: plug or tape them, and cut film out of the slot before the lip is tried in it.',
    title: '{name}, coat {coat} of {of}',
    partA: 'Part A',
    partB: 'Part B',
    named: '{part}, {name}',
    total: 'Make ready',
    lures: 'Lures',
    dry: 'Next coat after',
    cure: 'Handle after',
    or: 'or {ml}',
    ratio: 'A to B {aMass} : {bMass} by weight, {aVolume} : {bVolume} by volume.',
    pot: 'Pot life {life}: no pot over {largest}, {minutes} of work for each lure.',
    film: '{waste} more than goes on is mixed; {solids} of it stays as film, together {film}.',
    pots: 'Pots',
    potColumns: {
      number: 'Pot',
      lures: 'Lures',
      a: 'Part A g',
      b: 'Part B g',
      aMl: 'A ml',
      bMl: 'B ml',
      minutes: 'Minutes',
      mixed: 'Mixed at',
    },
    each: 'On each lure',
    asBefore: 'On each lure the same as in the coat before.',
    eachColumns: {
      pattern: 'Pattern',
      count: 'Lures',
      area: 'Area cm²',
      film: 'Film g',
      mix: 'Mixed g',
      a: 'Part A g',
      b: 'Part B g',
    },
    lureCount: '{count} {pattern}',
  },

  hardware: {
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
  },

  timeline: {
    heading: 'Time line of the batch',
    about:
      'Hours count from the start of each bench day, of {hours} at the bench; drying goes on at night. Times are estimates: the data sheets say how long a coat dries in your cold.',
    columns: {
      day: 'Day',
      step: 'Step',
      from: 'From hour',
      to: 'To hour',
      work: 'At the bench, min',
      wait: 'Waiting, h',
    },
    waits: '{step}: wait',
    later: 'day {day}, {hour}',
    told: 'Bars of work and of waiting over the days of the batch.',
    steps: {
      trace: 'trace or glue the outlines',
      tape: 'tape the stacks',
      saw: 'saw',
      slot: 'saw the lip slots',
      drill: 'drill',
      pour: 'pour the ballast',
      weights: 'glue in the weights',
      'round-over': 'round over',
      sand: 'sand to the gauges',
      coat: '{name}, coat {coat}',
      wire: 'bend and set the wires',
      glue: 'glue in lips and wires',
      rig: 'rig',
      tub: 'tub test',
    } satisfies Record<StepName, string>,
  },

  tub: {
    heading: 'Tub test',
    title: 'Tub test of {pattern} {version}',
    first:
      'Lay the lure, coated and rigged as in the last row of its weights, in still water at {temperature}, salinity {salinity} psu ({density}). Wet it, let the bubbles go, and let it come to rest.',
    told: '{pattern} in the water as it should lie.',
    verdicts: {
      floats: 'It floats.',
      suspends: 'It stays where it is let go.',
      sinks: 'It sinks.',
    },
    figures: {
      verdict: 'It should',
      nose: 'Nose tip',
      tail: 'Tail tip',
      trim: 'Trim',
      mass: 'Rigged',
    },
    over: '{value} over water',
    under: '{value} under water',
    up: 'nose up {value}',
    down: 'nose down {value}',
    band: 'right within {band} of it',
    bandG: 'right from {low} to {high}',
    net: 'It weighs {net} more than the water it takes the place of.',
    lift: 'It lacks {net} to go under.',
    noRest:
      'It has no attitude in which it stays; see the float picture and think the ballast over.',
    readings: '{pattern}: readings',
    readingColumns: {
      lure: 'Lure',
      mass: 'Rigged g',
      nose: 'Nose mm',
      tail: 'Tail mm',
      trim: 'Trim °',
      hung: 'Hung on, g',
      where: 'Where',
    },
    hang: '{pattern}: what a trial weight does',
    hangColumns: {
      at: 'Hung at',
      station: 'Station mm',
      nose: 'Nose mm for each g',
      tail: 'Tail mm for each g',
      trim: 'Trim ° for each g',
    },
    hangAbout:
      'Grams are those a weight has under water; lead keeps {share} of its weight there. A plus is up, nose up.',
    trial: '{pattern} rides too high: hang this, and look again',
    trialColumns: {
      nose: 'Nose high mm',
      tail: 'Tail high mm',
      mass: 'Hang g',
      station: 'Under station mm',
    },
    trialAbout:
      'Twice as much off wants twice the weight. Once it sits right, write weight and place down: glue so much into this lure under a last coat, and drill the next ones deeper. One that rides too low is too heavy and no weight mends it: take metal out of it, and drill the next ones less deep.',
    unwished:
      '*This is not what the pattern wishes.* The command *ballast* looks for holes that do, before wood is cut.',
    why: {
      'needs-lift': 'no weight does it: it needs lift',
      'off-the-lure': 'no weight on the lure does it',
      'hardly-afloat': 'it hardly floats: any weight takes it under',
      'under-water': 'it hangs under water',
      'no-stable-rest': 'it has no stable rest',
    },
    says: '{pattern}: what a difference says',
    saysColumns: {
      cause: 'One such slip',
      nose: 'Nose mm',
      tail: 'Tail mm',
      trim: 'Trim °',
      mass: 'Mass g',
    },
    cause: {
      'timber-heavier': 'timber {step} heavier',
      'timber-lighter': 'timber {step} lighter',
      'hole-deeper': 'hole {number}: {step} deeper, and its metal',
      'hole-shallower': 'hole {number}: {step} shallower, and its metal',
      'hole-aft': 'hole {number}: {step} too far aft',
      'hole-forward': 'hole {number}: {step} too far forward',
      'plug-short': 'hole {number}: metal {step} short',
    } satisfies Record<Says['cause'], string>,
    saysAbout:
      'Find the row, or two, whose signs and sizes are those of the lure in the tub. The command *float* with what was seen does the same reckoning with all of them at once.',
    verdictOf: { floats: 'float', suspends: 'suspend', sinks: 'sink' },
  },

  cautions: {
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
        'It spits violently on damp timber or a damp mold: dry blanks, dry ladle, nothing wet near the pot.',
        'Fume and dust are poisonous: outdoors or under draft; no food or drink, hands washed, work clothes kept apart, no children and nobody pregnant near.',
        'Face shield, leather gloves, long sleeves, closed shoes; a firm stand for the pot.',
        'Never into, on or near printed plastic: take the blank out of every jig first.',
        'Sand no lead: take a flush plug down with a file, wet, and collect the chips.',
        'Lead is restricted or banned for fishing in some places. Tin, bismuth, tungsten and steel are free of lead; change the metal in the pattern and build again.',
      ],
    },
    metal: {
      title: 'Molten metal',
      items: [
        'It spits violently on damp timber or a damp mold: dry blanks, dry ladle, nothing wet near the pot.',
        'Face shield, leather gloves, long sleeves, closed shoes; moving air; no children near.',
        'Never into, on or near printed plastic: take the blank out of every jig first.',
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
  },
} as const;

export type Texts = typeof TEXTS;
