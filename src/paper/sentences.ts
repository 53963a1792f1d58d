/** Sentences that stand on paper. Cautions leave the last word to local rules. */
import type { Blank } from '../blank/blank.js';
import { plain } from '../drawing/strokes.js';
import type { Paper } from '../pattern/paper.js';
import type { Leaflet } from './paper-file.js';

export const titleOf = (what: string, { name, version }: Pick<Blank, 'name' | 'version'>): string =>
  `${what}: ${name}, version ${version}`;

/** What every page says first: how to print it, whether kerf is in it, whose error is in it. */
export const printNotes = ({ kerf }: Pick<Leaflet, 'kerf'>, paper: Paper): string[] => [
  'Print at 100 %, not fitted to the page. Lay a steel rule on both bars before you use it.',
  ...(kerf === null
    ? []
    : [
        'Kerf is not in the lines: leave the line, cut on its waste side. The outline is the line’s middle.',
      ]),
  correctionNote(paper),
];

function correctionNote({ check, printed }: Paper): string {
  const { acrossMm, alongMm } = printed;
  return acrossMm === check.acrossMm && alongMm === check.alongMm
    ? 'Not corrected: paper/printer-check.pdf measures the printer.'
    : `Corrected for a printer that makes ${plain(acrossMm)} of ${plain(check.acrossMm)} mm across and ${plain(alongMm)} of ${plain(check.alongMm)} mm along.`;
}

export const HAND_CAUTION =
  'Small parts: push block or jig, never fingers near the blade. Local rules come first.';
export const PLASTIC_CAUTION =
  'Sheet chips when it is sawn: eye protection. Polycarbonate gives harmful fume under a laser; never laser PVC. The sheet’s and the machine’s own rules come first.';
export const WIRE_CAUTION =
  'Ends of wire fly when they are cut, and spring when they are bent: eye protection. Local rules come first.';
export const DUST_CAUTION = 'Sanding: dust mask. Local rules come first.';
export const ROUTER_CAUTION =
  'Router: small parts in a holder, never fingers near the bit. Local rules come first.';
