/** Words of the shop sheet: edges rounded and bodies shaped. */
export const shape = {
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
} as const;
