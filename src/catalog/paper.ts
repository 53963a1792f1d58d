/** True-scale paper: its size, its overlap, the printer's own error. */
import type { Entry } from './entry.js';

export const paperProblems = {
  'paper-size-twice': {
    severity: 'error',
    what: 'The paper is {size} and has a sizeMm too.',
    limit: 'One of them.',
    from: 'paper',
    fix: 'Delete size, or sizeMm.',
    about: 'A size by its name and another in millimeters were given for the same sheets.',
  },
  'paper-too-small': {
    severity: 'error',
    what: '{needs} is {needWidthMm} × {needHeightMm} mm with the room it needs.',
    limit:
      'The drawing’s part of a page is {upright} upright, {turned} turned, on {acrossMm} × {alongMm} mm with {marginMm} mm left white.',
    from: 'paper.size and paper.marginMm, less the bars and words that stand on every page',
    fix: 'Take a larger size ({enough}), or a smaller margin if the printer can.',
    about:
      'Long drawings are printed in pieces, but bars, a section gauge and the height of a blank at its deepest station must lie whole on one page.',
  },
  'paper-overlap-too-wide': {
    severity: 'error',
    what: 'Pages overlap by {overlapMm} mm.',
    limit: 'At most {limitMm} mm on this paper.',
    from: 'the drawing’s part of a page, {windowMm} mm where it is narrowest: half of it must be new on each page',
    fix: 'Give a smaller paper.overlapMm; 10 is enough to glue.',
    about: 'An overlap that leaves little or nothing new on each page.',
  },
  'printer-correction-large': {
    severity: 'error',
    what: '{key} is {printedMm} mm for a line of {nominalMm} mm: off by {offPercent} %.',
    limit: 'Within {mostPercent} %: {leastMm} to {mostMm} mm.',
    from: 'a printer errs by less (common practice, no source); a page that was fitted or shrunk by more',
    fix: 'Print printer-check.pdf at 100 %, not fitted to the page, and measure both lines once more; across comes first.',
    about:
      'The measured lengths of the printer’s check page are too far off to be the printer’s own error.',
  },
} as const satisfies Record<string, Entry>;
