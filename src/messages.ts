/**
 * Every problem this program can tell of, in words. `{name}` is replaced by the problem's fact of
 * that name. Stages give facts; this file alone makes sentences, so that they read alike and other
 * languages can follow.
 */

type Entry = {
  readonly severity: 'error' | 'warning';
  /** What is wrong, with the number found. */
  readonly what: string;
  /** The limit that was passed. */
  readonly limit: string;
  /** Where that limit comes from. */
  readonly from: string;
  readonly fix: string;
  /** For `explain`: what the code means. */
  readonly about: string;
};

const FORMAT = 'the file format';
const SHAPE = 'the shape of the body';

const entries = {
  // Reading a file
  'file-missing': {
    severity: 'error',
    what: 'There is no file {path}.',
    limit: 'A file that exists.',
    from: 'where it is named',
    fix: 'Check the spelling and the folder; a path inside a file starts from that file’s folder. `blankwright new` writes a file to start from.',
    about: 'A file named on the command line, or by a run, does not exist.',
  },
  'file-is-folder': {
    severity: 'error',
    what: '{path} is a folder.',
    limit: 'A file.',
    from: 'where it is named',
    fix: 'Name a file inside it.',
    about: 'A folder was named where a file is needed.',
  },
  'file-unreadable': {
    severity: 'error',
    what: '{path} cannot be read ({reason}).',
    limit: 'A file this user may read.',
    from: 'the operating system',
    fix: 'Check the file’s permissions and the disk.',
    about: 'The operating system refused to read the file.',
  },
  'file-too-large': {
    severity: 'error',
    what: 'The file has {bytes} bytes.',
    limit: 'At most {limitBytes} bytes.',
    from: FORMAT,
    fix: 'A parameter file is a page or two of text; check that this is the right file.',
    about: 'Parameter files are small; a huge one is a mistake.',
  },
  'file-binary': {
    severity: 'error',
    what: 'The file is not UTF-8 text (first bad byte at {byte}).',
    limit: 'Plain text in UTF-8.',
    from: FORMAT,
    fix: 'Check that this is the right file, and save it as UTF-8.',
    about: 'The file holds bytes that are not text.',
  },
  'file-empty': {
    severity: 'error',
    what: 'The file says nothing.',
    limit: 'Keys and values, starting with schema and kind.',
    from: FORMAT,
    fix: '`blankwright new pattern NAME` writes a commented file to start from.',
    about: 'The file is empty or holds comments only.',
  },
  'yaml-syntax': {
    severity: 'error',
    what: 'This is not valid YAML: {reason}.',
    limit: 'One YAML document.',
    from: 'YAML 1.2',
    fix: 'Look at the indentation, colons and quotes at this place.',
    about: 'The text cannot be read as YAML.',
  },
  'yaml-aliases': {
    severity: 'error',
    what: 'The anchors of this file multiply into more than {limit} copies.',
    limit: 'At most {limit} uses of anchors.',
    from: FORMAT,
    fix: 'Write the values out instead of repeating them by anchors.',
    about: 'YAML anchors that refer to each other can grow without end; such files are refused.',
  },
  // The form of a file
  'unknown-kind': {
    severity: 'error',
    what: 'The key kind says {value}.',
    limit: 'One of: {allowed}.',
    from: FORMAT,
    fix: 'Write `kind: pattern` for one lure or `kind: run` for an order.',
    about: 'Every file says what it is by its key kind.',
  },
  'wrong-kind': {
    severity: 'error',
    what: '{file} is a {kind} file.',
    limit: 'A {wanted} file.',
    from: 'the key that names it',
    fix: 'Name a file whose kind is {wanted}.',
    about: 'A file of one kind was named where another kind is needed.',
  },
  'unknown-key': {
    severity: 'error',
    what: 'There is no key {key} here.',
    limit: 'Known keys here: {allowed}.',
    from: FORMAT,
    fix: '{nearest}',
    about:
      'A key that the file format does not know. Nothing is ignored in silence, so it is an error.',
  },
  'missing-key': {
    severity: 'error',
    what: 'The key {key} is missing.',
    limit: '{about}',
    from: FORMAT,
    fix: 'Add it; `blankwright explain {key}` says more.',
    about: 'A key that must be there is not.',
  },
  'wrong-type': {
    severity: 'error',
    what: '{key} is {got}.',
    limit: 'It must be {expected}.',
    from: FORMAT,
    fix: 'Write {expected}; a text that looks like a number needs quotes, a number must not have any.',
    about: 'A value of the wrong kind: text for a number, a number for a list, and the like.',
  },
  'comma-number': {
    severity: 'error',
    what: '{key} is written {value}.',
    limit: 'A number with a decimal point.',
    from: FORMAT,
    fix: 'Write {pointed}.',
    about: 'A decimal comma makes YAML read the value as text.',
  },
  'not-finite': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: 'A finite number.',
    from: FORMAT,
    fix: 'Write the number itself.',
    about: 'Not-a-number and infinity are no lengths.',
  },
  'out-of-range': {
    severity: 'error',
    what: '{key} is {value}{unit}.',
    limit: '{bound} {limit}{unit}.',
    from: FORMAT,
    fix: 'Give a value inside the range; check the unit in the key’s name.',
    about: 'A number, a list’s length or a text’s length outside its range.',
  },
  'not-allowed': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: 'One of: {allowed}.',
    from: FORMAT,
    fix: 'Write one of them.',
    about: 'A value that is not in the list of allowed ones.',
  },
  'bad-name': {
    severity: 'error',
    what: '{key} is {value}.',
    limit: '{about}',
    from: FORMAT,
    fix: 'Names look like skerry-large, versions like "1.10".',
    about:
      'Names become file names and raised letters, so they keep to plain letters, digits and hyphens.',
  },
  // A pattern's table
  'station-missing': {
    severity: 'error',
    what: '{key} gives no station.',
    limit: 'stationMm or stationRatio.',
    from: FORMAT,
    fix: 'Add stationMm (distance aft of the nose) or stationRatio (share of the length).',
    about: 'A row or part that needs a station has none.',
  },
  'station-twice': {
    severity: 'error',
    what: '{key} gives both stationMm {stationMm} and stationRatio {stationRatio}.',
    limit: 'One of the two.',
    from: FORMAT,
    fix: 'Delete one of them.',
    about: 'A station is given twice, and the two could differ.',
  },
  'station-outside': {
    severity: 'error',
    what: '{key} is at station {stationMm} mm.',
    limit: 'Between nose and tail: above 0 and below {lengthMm} mm.',
    from: 'body.lengthMm',
    fix: 'Move it inside the body; nose and tail need no row of their own.',
    about: 'A station before the nose or behind the tail.',
  },
  'stations-disordered': {
    severity: 'error',
    what: '{key} is at station {stationMm} mm, after a row at {beforeMm} mm.',
    limit: 'Stations rise from row to row, at least {leastMm} mm apart.',
    from: FORMAT,
    fix: 'Sort the rows from nose to tail and keep one row a station.',
    about: 'Rows of a table are not in order along the body, or two are at one place.',
  },
  'column-empty': {
    severity: 'error',
    what: 'No row of the table of offsets gives {column}.',
    limit: 'At least one row.',
    from: FORMAT,
    fix: 'Add {column} to the rows; write 0 for a belly that is flat along the datum line.',
    about: 'A whole column of the table of offsets is missing.',
  },
  'offsets-cross': {
    severity: 'error',
    what: 'At station {stationMm} mm the back is {backMm} mm above and the belly {bellyMm} mm below the datum line.',
    limit: 'Neither below 0, and something between them.',
    from: 'the datum line runs inside the body from nose to tail',
    fix: 'Correct the offsets, or draw the datum line lower or higher through the side view.',
    about: 'Back and belly cross each other or the datum line.',
  },
  'end-radius-too-large': {
    severity: 'error',
    what: 'A {end} radius of {radiusMm} mm bulges beyond the {curve} at station {stationMm} mm.',
    limit: 'At most {limitMm} mm.',
    from: `${SHAPE}: 1.5 × offset² / distance of the nearest row, beyond which the curve overshoots`,
    fix: 'Use a radius of {limitMm} mm or less, or raise the offset of that row.',
    about: 'The round at nose or tail is larger than the neighboring offset leaves room for.',
  },
  'unknown-timber': {
    severity: 'error',
    what: 'The table has no timber {value}.',
    limit: 'A name from shared/timbers.yaml.',
    from: 'shared/timbers.yaml',
    fix: '{nearest}',
    about: 'Timber is looked up by name for its density.',
  },
  // A design that cannot be made
  'body-wider-than-block': {
    severity: 'error',
    what: 'The body is {breadthMm} mm wide.',
    limit: 'At most {thicknessMm} mm, the thickness of the block.',
    from: 'blockThicknessMm',
    fix: 'Use a block of {breadthMm} mm or more, or a slimmer body.',
    about: 'The finished body sticks out of the sides of its block.',
  },
  'hollow-too-tight': {
    severity: 'error',
    what: 'Near station {stationMm} mm the outline turns with a radius of {radiusMm} mm.',
    limit: 'More than {distanceMm} mm, {reason}.',
    from: SHAPE,
    fix: 'Ease the offsets there, or make the {reason} smaller.',
    about: 'A hollow so tight that the line parallel to it folds over itself.',
  },
  'lip-slot-outside': {
    severity: 'error',
    what: 'The inner end of the lip slot is {woodMm} mm inside the {side}, at station {stationMm} mm.',
    limit: 'At least {limitMm} mm of wood.',
    from: 'common practice, no source: a head with less splits',
    fix: 'Make the slot shallower, move it, or change lip.angleDeg.',
    about: 'The lip slot leaves the body, or leaves too little wood.',
  },
  'hole-outside': {
    severity: 'error',
    what: 'The ballast hole at station {stationMm} mm with its {diameterMm} mm bit reaches beyond the {end}.',
    limit: 'The whole bit between station {leastMm} mm and {mostMm} mm.',
    from: SHAPE,
    fix: 'Move the hole.',
    about: 'A ballast hole that leaves the body at nose or tail.',
  },
  'hole-too-wide': {
    severity: 'error',
    what: 'A bit of {diameterMm} mm at station {stationMm} mm, where the body is {breadthMm} mm wide.',
    limit: 'At most {limitMm} mm: {wallMm} mm of wood on both sides.',
    from: 'common practice, no source',
    fix: 'Use a smaller bit or move the hole to a wider place.',
    about: 'A bit that leaves no wall at the sides of the finished body.',
  },
  'hole-through-back': {
    severity: 'error',
    what: 'The ballast hole at station {stationMm} mm is {depthMm} mm deep and {pointMm} mm more at the bit’s point; wood left under the finished back: {woodMm} mm.',
    limit: 'At most {limitMm} mm deep: {leastMm} mm of wood under the back.',
    from: `${SHAPE}; the least wood is common practice, no source`,
    fix: 'Drill {limitMm} mm or less, use a flatter bit (pointAngleDeg), or move the hole.',
    about: 'A ballast hole that comes out of the back or leaves a skin there.',
  },
  'hole-sanded-away': {
    severity: 'error',
    what: 'The ballast hole at station {stationMm} mm is {depthMm} mm deep.',
    limit: 'More than {limitMm} mm, which sanding takes off the belly there.',
    from: 'sandingAllowanceMm',
    fix: 'Drill deeper.',
    about: 'A hole so shallow that shaping the belly removes all of it.',
  },
  'metal-sanded-into': {
    severity: 'error',
    what: 'Cover over the {what} in the hole at station {stationMm} mm, where the finished belly is nearest: {coverMm} mm.',
    limit: 'Above 0: under the belly all over. At most {limitMm} mm of it above the hole’s floor.',
    from: 'lead dust is poisonous: metal that is not poured flush stays covered',
    fix: 'Drill deeper, or give a shorter weight or a smaller fillMm.',
    about:
      'Metal that should end inside the wood sticks out of the finished belly, so that sandpaper meets it.',
  },
  'weight-too-wide': {
    severity: 'error',
    what: 'The weight {weight} is {weightMm} mm across, its hole {diameterMm} mm.',
    limit: 'At most {diameterMm} mm.',
    from: 'shared/weights.yaml',
    fix: 'Bore wider, or take a slimmer weight.',
    about: 'A ready-made weight does not go into its hole.',
  },
  'weight-metal': {
    severity: 'error',
    what: 'The weight {weight} is of {metal}; its hole is said to hold {said}.',
    limit: 'One metal.',
    from: 'shared/weights.yaml',
    fix: 'Write metal: {metal}, or choose a weight of {said}.',
    about: 'A ready-made weight is of another metal than the hole says.',
  },
  'hole-filled-twice': {
    severity: 'error',
    what: 'A hole is said to hold the weight {weight}, and metal to a height of {fillMm} mm.',
    limit: 'One of them.',
    from: 'what a hole can hold',
    fix: 'Take fillMm out to glue the weight in, or weight to pour.',
    about: 'fillMm is for poured metal; a ready-made weight has its own length.',
  },
  'metal-not-poured': {
    severity: 'error',
    what: 'A hole is said to be poured once with {metal}.',
    limit: 'A metal that melts in a pot: lead, tin, bismuth.',
    from: 'shared/metals.yaml',
    fix: 'Leave pour out and glue {metal} in, or choose another metal.',
    about: 'Tungsten and steel melt far too hot to be poured into wood.',
  },
  'unknown-item': {
    severity: 'error',
    what: '{key} is {value}, which {table} does not know.',
    limit:
      'A name of that table; plates, coats, fittings and weights may also be rows of the run’s own.',
    from: 'the tables that come with the program',
    fix: '{nearest}',
    about: 'A metal, plate, fitting or weight that has no row in its table.',
  },
  'row-incomplete': {
    severity: 'error',
    what: '{key} is a row of your own; these keys are missing or do not belong to it: {keys}.',
    limit: 'A new row gives everything the table’s own rows give.',
    from: 'the tables that come with the program',
    fix: 'Give them, or name a row of the table to change only some of its figures.',
    about: 'A row that a run adds to a table under materials: lacks a key.',
  },
  'wish-contradicts': {
    severity: 'error',
    what: 'The wish says {first} and also {second}.',
    limit: 'One of them: {why}.',
    from: 'what a wish can mean',
    fix: 'Take one of them out.',
    about: 'Two parts of the wish cannot both be had, or do not go together.',
  },
  'wish-incomplete': {
    severity: 'error',
    what: 'The wish says that the lure {buoyancy}, but not how fast.',
    limit: 'speedCmS must be there.',
    from: 'what a wish can mean',
    fix: 'Give speedCmS, or wish that it suspends.',
    about: 'A wish for a rising or sinking lure needs the speed.',
  },
  'holes-meet': {
    severity: 'error',
    what: 'The ballast holes at stations {firstMm} mm and {secondMm} mm are {betweenMm} mm apart at their walls.',
    limit: 'At least {limitMm} mm of wood between them.',
    from: 'common practice, no source',
    fix: 'Move one of them.',
    about: 'Two ballast holes run into each other.',
  },
  'hole-meets-slot': {
    severity: 'error',
    what: 'The ballast hole at station {stationMm} mm comes within {betweenMm} mm of the lip slot.',
    limit: 'At least {limitMm} mm of wood between them.',
    from: 'common practice, no source',
    fix: 'Move the hole aft, or make the slot shallower.',
    about: 'A ballast hole runs into the lip slot.',
  },
  'eye-outside': {
    severity: 'error',
    what: 'The {eye} is {heightMm} mm from the datum line.',
    limit: 'Within the body {insetMm} mm from its {end}: {lowMm} to {highMm} mm.',
    from: SHAPE,
    fix: 'Give a height inside the body.',
    about: 'A tow eye or tail eye that misses the wood.',
  },
  'lip-too-short': {
    severity: 'error',
    what: 'The lip is {lengthMm} mm long, and {depthMm} mm of it go into the slot.',
    limit: 'Longer than the slot is deep.',
    from: 'lip.slot.depthMm',
    fix: 'Give the length of the whole plate, the part in the slot included.',
    about: 'A lip that ends inside its own slot.',
  },
  'hanger-meets': {
    severity: 'error',
    what: 'The hanger at station {stationMm} mm is {betweenMm} mm from the {what}.',
    limit: 'At least {limitMm} mm of wood beside it.',
    from: 'common practice, no source',
    fix: 'Move the hanger or the {what}.',
    about: 'A hanger that would be screwed into the ballast or the lip slot.',
  },
  'wire-missing': {
    severity: 'error',
    what: '{key} is a loop of the through-wire, and there is no through-wire.',
    limit: 'A section throughWire.',
    from: FORMAT,
    fix: 'Add throughWire with diameterMm and boreMm, or make the eye a screw.',
    about: 'An eye bent from the wire needs the wire.',
  },
  'bore-too-small': {
    severity: 'error',
    what: 'The bore is {boreMm} mm for a wire of {diameterMm} mm.',
    limit: 'More than the wire’s diameter.',
    from: 'throughWire.diameterMm',
    fix: 'Use a larger bore.',
    about: 'The through-wire does not go into its bore.',
  },
  // A run
  'duplicate-name': {
    severity: 'error',
    what: 'Two entries are called {name}.',
    limit: 'A name of its own for each order line and each block.',
    from: 'names become file names and say which block is meant',
    fix: 'Give one of them another `name:`.',
    about:
      'Two sizes of a run would write the same files, or two piles of blocks could not be told apart.',
  },
  'no-block-of-timber': {
    severity: 'error',
    what: '{name} is made of {timber}, and no block is.',
    limit: 'At least one block of that timber.',
    from: 'the pattern’s timber',
    fix: 'Add blocks of {timber}, or change the pattern’s timber.',
    about: 'A pattern’s timber and the timber on the bench differ.',
  },
  'no-block-of-thickness': {
    severity: 'error',
    what: '{name} is sawn from {thicknessMm} mm blocks; there are {found} mm ones.',
    limit: 'Blocks of {thicknessMm} mm, within {withinMm} mm.',
    from: 'blockThicknessMm of the pattern, times its scale',
    fix: 'Plane blocks to {thicknessMm} mm, or set blockThicknessMm in this line of the order.',
    about: 'Jigs and weights depend on the block’s thickness, so it must be the pattern’s own.',
  },
  'blank-larger-than-block': {
    severity: 'error',
    what: 'The blank of {name} is {lengthMm} × {heightMm} mm.',
    limit:
      'The largest clear face is {clearLengthMm} × {clearWidthMm} mm inside its margins, clear of knots.',
    from: 'blocks, their margins and knots',
    fix: 'Use a larger block, or a smaller margin.',
    about: 'A lure that is longer or higher than every block.',
  },
  'knots-everywhere': {
    severity: 'error',
    what: 'Knots, splits and poor zones leave no room for {name} on any of its blocks ({blocks}).',
    limit: 'One clear place for the outline.',
    from: 'the knots, splits and poor zones of the blocks',
    fix: 'Use a clearer block, or turn the pile over and measure the flaws on the better face.',
    about:
      'A blank would fit a block by its size, but flaws of the wood are in the way wherever it is laid.',
  },
  'stack-too-high': {
    severity: 'error',
    what: 'One layer of {name} is {thicknessMm} mm high.',
    limit: 'At most {limitMm} mm under the guide.',
    from: 'stack.largestHeightMm',
    fix: 'Use thinner blocks or another saw.',
    about: 'Not even one block passes under the saw’s guide.',
  },
  'timber-short': {
    severity: 'error',
    what: 'The timber gives {made} of the {ordered} blanks of {name}.',
    limit: 'All that were ordered.',
    from: 'orders and blocks',
    fix: '{more}',
    about: 'There are not enough blocks for the order.',
  },
  'price-missing': {
    severity: 'error',
    what: '{name} has no price.',
    limit: 'A priceEach on every entry of blocks.',
    from: 'timberLeast',
    fix: 'Give priceEach, or leave timberLeast at volume.',
    about: 'The run is to spend least money, but one pile of blocks has no price.',
  },
  'margin-too-wide': {
    severity: 'error',
    what: 'The margin of {name} is {marginMm} mm all round.',
    limit: 'Less than {limitMm} mm, half the block’s smaller side.',
    from: 'blocks',
    fix: 'Give a smaller margin.',
    about: 'A margin that leaves nothing of the block.',
  },
  'knot-outside-block': {
    severity: 'error',
    what: 'A knot of {name} is at {xMm}, {yMm} mm.',
    limit: 'On the face, {lengthMm} × {widthMm} mm.',
    from: 'the block’s size',
    fix: 'Measure from the left end and the lower edge of the face.',
    about: 'A knot that does not lie on its block.',
  },
  'split-outside-block': {
    severity: 'error',
    what: 'A split of {name} has an end at {xMm}, {yMm} mm.',
    limit: 'On the face, {lengthMm} × {widthMm} mm.',
    from: 'the block’s size',
    fix: 'Measure from the left end and the lower edge of the face; a split that runs out ends at the edge.',
    about: 'A split that does not end on its block.',
  },
  'poor-zone-outside-block': {
    severity: 'error',
    what: 'A poor zone of {name} is at {xMm}, {yMm} mm.',
    limit: 'On the face, {lengthMm} × {widthMm} mm.',
    from: 'the block’s size',
    fix: 'Measure from the left end and the lower edge of the face.',
    about: 'A zone of poorer wood whose middle does not lie on its block.',
  },
  'density-impossible': {
    severity: 'error',
    what: 'The weighed block {name} has a density of {densityKgM3} kg/m³.',
    limit: 'Between {leastKgM3} and {mostKgM3} kg/m³.',
    from: 'lightest balsa to the heaviest woods (common practice, no source)',
    fix: 'Check massG (grams of one block) and the block’s size.',
    about: 'A block’s weight and size do not go together.',
  },
  // Cutting
  'slot-narrower-than-kerf': {
    severity: 'error',
    what: 'The lip slot of {name} is {slotMm} mm wide and the cut {kerfMm} mm.',
    limit: 'A slot wider than the cut.',
    from: '{key}',
    fix: 'Use a finer cutter, or set cutsLipSlot: false to leave the slot for the lip-slot guide.',
    about: 'The cutter removes more than the slot is wide.',
  },
  'opening-vanishes': {
    severity: 'error',
    what: 'A hole of {diameterMm} mm in the template of {name} vanishes in a cut of {kerfMm} mm.',
    limit: 'Larger than the kerf.',
    from: '{key}',
    fix: 'Make the hole larger or use a finer cutter.',
    about: 'An opening is smaller than what the cutter removes.',
  },
  'part-too-thin': {
    severity: 'error',
    what: 'The template of {name} is thinner than {limitMm} mm at {where}.',
    limit: 'At least {limitMm} mm.',
    from: 'templateSheet.leastWallMm',
    fix: 'Make the lip slot or the holes smaller, or allow a thinner neck.',
    about: 'What is left between openings and edge would break in the hand.',
  },
  'template-larger-than-sheet': {
    severity: 'error',
    what: 'The template of {name} is {lengthMm} × {heightMm} mm.',
    limit: 'The sheet inside its margin, {clearLengthMm} × {clearWidthMm} mm.',
    from: 'templateSheet',
    fix: 'Use a larger sheet, or a smaller marginMm.',
    about: 'A template that does not fit its sheet.',
  },
  'no-lip-sheet': {
    severity: 'error',
    what: 'The lip of {name} is {thicknessMm} mm thick; the lip sheets are {found} mm.',
    limit: 'A sheet of {thicknessMm} mm, within {withinMm} mm.',
    from: 'lip.thicknessMm of the pattern',
    fix: 'Add a sheet of that thickness to lipSheets.',
    about: 'A lip is cut from a sheet of its own thickness, and there is none.',
  },
  'lip-larger-than-sheet': {
    severity: 'error',
    what: 'The lip of {name} is {lengthMm} × {widthMm} mm.',
    limit: 'The sheet inside its margin, {clearLengthMm} × {clearWidthMm} mm.',
    from: 'lipSheets',
    fix: 'Use a larger sheet, or a smaller marginMm.',
    about: 'A lip that does not fit its sheet.',
  },
  'blade-too-wide': {
    severity: 'warning',
    what: 'The outline of {name} has a hollow of radius {radiusMm} mm near station {stationMm} mm.',
    limit: 'A {bladeWidthMm} mm blade turns no tighter than about {limitMm} mm (±25 %).',
    from: 'shared/blades.yaml, published band-saw blade radius charts',
    fix: 'Use a blade of {narrowerMm} mm or less, or saw relief cuts into the hollow first; those that help are drawn on the face.',
    about: 'A blade that is too wide for a hollow binds or wanders.',
  },
  'hollow-too-tight-for-saw': {
    severity: 'error',
    what: 'The outline of {name} has a hollow of radius {radiusMm} mm near station {stationMm} mm.',
    limit:
      'The narrowest blade, {narrowestMm} mm, turns no tighter than about {limitMm} mm (±25 %).',
    from: 'shared/blades.yaml, published band-saw blade radius charts',
    fix: 'Ease the offsets there, or cut the run with a laser or a router (guidance: follows). A saw with a finer blade than the table’s: leave bladeWidthMm out.',
    about: 'A hollow that no band-saw blade of the table can follow.',
  },
  'opening-needs-threading': {
    severity: 'error',
    what: 'The outline of {name} has a closed opening of {diameterMm} mm at station {stationMm} mm.',
    limit: 'No closed inside cuts for a blade that is a loop.',
    from: 'how a band saw works',
    fix: 'Bore it, or saw it on a fret or scroll saw whose blade is threaded through a hole.',
    about: 'An inside cut that a band saw has no way into.',
  },
  'outline-unreachable': {
    severity: 'error',
    what: 'No blade gets from the block’s edge to the line of {name} on face {face}, near x {xMm}, y {yMm} mm.',
    limit: 'A way through the waste as wide as the kerf.',
    from: 'saw.kerfMm and the outlines round it',
    fix: 'Use a thinner blade, or widen the mouth of the hollow there.',
    about: 'A place walled in by outlines, into which no saw cut leads.',
  },
  'pencil-hole-left-out': {
    severity: 'warning',
    what: 'The template of {name} has no room for a pencil hole of {diameterMm} mm at station {stationMm} mm.',
    limit: '{wallMm} mm of sheet round it.',
    from: 'templateSheet.leastWallMm',
    fix: 'Use a smaller pencilHoleMm; the line at the edge marks the station all the same.',
    about: 'The pencil hole at a weight mark does not fit and was left out.',
  },
  'hang-hole-left-out': {
    severity: 'warning',
    what: 'The template of {name} has no room for a hole of {diameterMm} mm.',
    limit: '{wallMm} mm of sheet round it.',
    from: 'templateSheet.hangHoleMm',
    fix: 'Use a smaller hole, or set hangHoleMm: 0.',
    about: 'The hole to hang a template up by does not fit and was left out.',
  },
  'label-left-out': {
    severity: 'warning',
    what: 'The outline of {name} has no room for its label.',
    limit: 'Letters of {leastMm} mm.',
    from: 'legibility',
    fix: 'Write the name on by hand, or use a shorter name.',
    about: 'A label that does not fit inside the outline was left out.',
  },
  // Printed jigs
  'jig-named-twice': {
    severity: 'error',
    what: 'Two set-ups of the {jig} are named.',
    limit: 'One for each jig.',
    from: 'jigs',
    fix: 'Delete one of them.',
    about: 'A run names two set-ups for one jig, and only one could count.',
  },
  'jig-bed-too-small': {
    severity: 'error',
    what: 'A jig of {name} is {needXMm} × {needYMm} × {needZMm} mm.',
    limit: 'The printer holds {bedXMm} × {bedYMm} × {bedZMm} mm.',
    from: 'bed of the jig’s set-up',
    fix: 'Set a smaller reachMm or your printer’s bed in a copy of the set-up, and name the copy under `jigs:` in a run.',
    about: 'A jig does not fit on the printer.',
  },
  'jig-bushing-too-narrow': {
    severity: 'error',
    what: 'The bushing of {bushingMm} mm for {name} does not hold the bit of {diameterMm} mm at station {stationMm} mm.',
    limit: 'At least {leastMm} mm on the outside.',
    from: 'bushingOuterDiameterMm of the drill-stop set-up',
    fix: 'Use a wider bushing, or set 0 for none.',
    about: 'A steel sleeve narrower than the bit that runs in it.',
  },
  'jig-wall-thin': {
    severity: 'error',
    what: 'The {jig} of {name} has a wall of {wallMm} mm.',
    limit: 'At least {limitMm} mm, the set-up’s walls less its letters.',
    from: 'the set-up of the jig, measured on the finished solid',
    fix: 'Bring the set-up’s values nearer to those that come with the program: reach, cheeks and collar first.',
    about: 'Values of a set-up that leave a wall which would break in the hand.',
  },
  'jig-letters-left-out': {
    severity: 'warning',
    what: 'The {jig} of {name} has no room for: {texts}.',
    limit: 'Letters of leastHeightMm of its set-up.',
    from: 'the faces of the jig',
    fix: 'Write it on by hand; build.json has the collar settings and the depth.',
    about: 'Letters that do not fit on a jig were left out.',
  },
  'jig-guides-too-close': {
    severity: 'error',
    what: 'The guides of {name} at stations {stationMm} mm and {nextStationMm} mm leave {betweenMm} mm of plastic between them.',
    limit: 'At least {webMm} mm.',
    from: 'webMm of the drill-stop set-up',
    fix: 'Move the holes apart, or use a bushing of a smaller outer diameter, or none.',
    about: 'Two guide holes of a drill-stop jig run into each other.',
  },
  'jig-hole-outside-blank': {
    severity: 'error',
    what: 'The guide of {name} at station {stationMm} mm is {guideDiameterMm} mm wide and reaches beyond the blank.',
    limit: 'The whole guide over the blank’s belly.',
    from: 'the outline of the blank and the bushing of the drill-stop set-up',
    fix: 'Move the hole, or use a bushing of a smaller outer diameter, or none.',
    about: 'A guide so wide that part of it has no blank under it.',
  },
  'jig-kerf-wider-than-slot': {
    severity: 'error',
    what: 'The saw of the lip-slot guide cuts {kerfMm} mm, and the slot of {name} is {slotMm} mm wide.',
    limit: 'At most {slotMm} mm.',
    from: 'sawKerfMm of the lip-slot-guide set-up, lip.thicknessMm and lip.slot.fitMm of the pattern',
    fix: 'Use a saw with a finer cut (sawKerfMm in a copy of the set-up, named under `jigs:` in a run), or a thicker lip; a run that needs no guide leaves it out of `jigs:`.',
    about: 'The saw that is led by the guide would make the slot too wide for the lip.',
  },
  'jig-stop-height-too-small': {
    severity: 'error',
    what: 'The saw of {name}’s lip-slot guide stops {stopHeightMm} mm from its teeth.',
    limit: 'At least {neededMm} mm: the slot’s depth and the wall under it.',
    from: 'stopHeightMm of the lip-slot-guide set-up',
    fix: 'Clamp the stop strip further from the teeth: set stopHeightMm in a copy of the set-up, and name the copy under `jigs:` in a run.',
    about: 'A saw too shallow to reach the slot’s inner end through the guide.',
  },
  'jig-angle-not-held': {
    severity: 'error',
    what: 'In the lip-slot guide of {name} at {angleDeg}° the blank rises only {riseMm} mm when it is turned by one degree.',
    limit: 'More than {leastRiseMm} mm, which a finger feels rock.',
    from: 'the outline of the blank in a saddle that reaches {reachMm} mm (common practice, no source)',
    fix: 'Raise reachMm in a copy of the set-up, so that the saddle holds more of the blank, and name the copy under `jigs:` in a run.',
    about: 'The saddle touches a part of the blank so round that it does not find the angle.',
  },
  'jig-wall-below-nozzle': {
    severity: 'error',
    what: 'The {jig} of {name} asks for {key} {wallMm} mm.',
    limit: 'At least {nozzleMm} mm, a line of the nozzle.',
    from: 'nozzleMm of the printer file',
    fix: 'Set {key} to {nozzleMm} or more in the set-up, or print with a finer nozzle.',
    about:
      'A wall of a jig that is thinner than the printer’s nozzle would be left out of the print.',
  },
  'jig-collar-hits-clamp': {
    severity: 'error',
    what: 'Drilling {name} at station {stationMm} mm, the collar of {collarMm} mm hits the clamp of {clampMm} mm on the ear at the {end}.',
    limit: 'A clamp of at most {limitMm} mm over the ear, or a collar of at most {fitsMm} mm.',
    from: 'ears.clampHeightMm and collarDiameterMm of the drill-stop set-up',
    fix: 'Use a lower clamp, or a bolt through the ear, and set ears.clampHeightMm to it; or a smaller collar.',
    about:
      'A collar on the bit reaches over the end of the jig, where the clamp stands higher than its stop face.',
  },
  'jig-collar-hits-guide': {
    severity: 'error',
    what: 'Drilling {name} at station {stationMm} mm, the collar of {collarMm} mm hits the boss of the leaning guide at station {otherMm} mm.',
    limit: 'A collar of at most {fitsMm} mm (0: none fits).',
    from: 'the stations of the holes and collarDiameterMm of the drill-stop set-up',
    fix: 'Use a smaller collar, move the holes apart, or lean them less.',
    about: 'The boss of a tilted hole’s guide stands in the way of a neighbor’s collar.',
  },
  'pilot-outside': {
    severity: 'warning',
    what: 'The bit of {diameterMm} mm for the {eye} of {name}, {depthMm} mm deep from the sawn blank and {tipMm} mm at its tip, leaves {woodMm} mm of wood (negative: it comes out).',
    limit: 'At least {limitMm} mm all round; {fitsMm} mm deep would do (0: at no depth).',
    from: 'the finished body, and shankMm and pilotMm of the screw eye or boreMm of the through-wire (limit: common practice, no source)',
    fix: 'Name a shorter or thinner screw eye, or move the eye. The jig is made without its guide.',
    about:
      'A pilot hole that would come out of the body; its guide is left out of the drilling jig.',
  },
  'pilot-meets': {
    severity: 'warning',
    what: 'The bit of {diameterMm} mm for the {eye} of {name}, {depthMm} mm deep, has {betweenMm} mm of wood between it and a {what}.',
    limit: 'At least {limitMm} mm.',
    from: 'common practice, no source',
    fix: 'Name a shorter screw eye, or move the eye. The jig is made without its guide.',
    about:
      'A pilot hole that would run into the lip slot or a ballast hole; its guide is left out of the drilling jig.',
  },
  // Writing
  'output-is-file': {
    severity: 'error',
    what: '{path} is a file.',
    limit: 'A folder, or nothing yet.',
    from: 'the command line',
    fix: 'Name another folder with --out.',
    about: 'The output folder’s name is taken by a file.',
  },
  'output-not-ours': {
    severity: 'error',
    what: '{path} holds {name}, which no earlier build lists.',
    limit: 'An empty folder, or one that holds an earlier build only.',
    from: 'nothing of yours is overwritten',
    fix: 'Move it away, or name another folder with --out.',
    about: 'The output folder holds files this program did not write.',
  },
  'output-changed': {
    severity: 'error',
    what: '{path} holds {name}, which was changed after it was built.',
    limit: 'Files as the earlier build left them.',
    from: 'nothing of yours is overwritten',
    fix: 'Keep your copy elsewhere and delete it there, or name another folder with --out.',
    about: 'A file of an earlier set was edited by hand and would be lost.',
  },
  'output-is-here': {
    severity: 'error',
    what: '{path} is the folder you are in.',
    limit: 'A folder that can be exchanged for a new one.',
    from: 'a set appears whole or not at all',
    fix: 'Go to another folder first, or name another folder with --out.',
    about: 'The output folder is the one the command was given in, or one above it.',
  },
  'output-unwritable': {
    severity: 'error',
    what: '{path} cannot be written ({reason}).',
    limit: 'A folder this user may write, with room on the disk.',
    from: 'the operating system',
    fix: 'Name another folder with --out.',
    about: 'The operating system refused to write the output.',
  },
} as const satisfies Record<string, Entry>;

export type ProblemCode = keyof typeof entries;

export const CATALOG: Readonly<Record<ProblemCode, Entry>> = entries;

export const PROBLEM_CODES = Object.keys(entries) as readonly ProblemCode[];

/** An error keeps everything from being made; a warning stands beside what is made. */
export const isError = ({ code }: { readonly code: ProblemCode }): boolean =>
  CATALOG[code].severity === 'error';

/** One problem in words. */
export type Told = {
  readonly severity: Entry['severity'];
  readonly what: string;
  readonly limit: string;
  readonly from: string;
  readonly fix: string;
};

export function tell(code: ProblemCode, facts: Readonly<Record<string, string | number>>): Told {
  const { severity, what, limit, from, fix } = CATALOG[code];
  const fill = (text: string): string =>
    text.replace(/\{(\w+)\}/g, (_, name: string) => spoken(facts[name]));
  return { severity, what: fill(what), limit: fill(limit), from: fill(from), fix: fill(fix) };
}

/** Numbers to three decimals at most, without trailing zeros. */
function spoken(fact: string | number | undefined): string {
  if (typeof fact !== 'number') return fact ?? '?';
  return Number.isFinite(fact) ? String(Math.round(fact * 1000) / 1000 + 0) : String(fact);
}
