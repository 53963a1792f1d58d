/** A pattern’s table of offsets, and the timber it names. */
import type { Entry } from './entry.js';

const FORMAT = 'the file format';
const SHAPE = 'the shape of the body';

export const offsetsProblems = {
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
} as const satisfies Record<string, Entry>;
