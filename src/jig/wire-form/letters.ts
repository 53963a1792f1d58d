/** What is written on a wire form: whose wire it is, and how long to cut it. */
import { type Blank, labelOf } from '../../blank/blank.js';
import { type Ring, ringBox } from '../../geometry/ring.js';
import { boxOf, type Point2 } from '../../geometry/vec.js';
import type { BentWire } from '../../wire/bent.js';
import { type Face, placed, type Room } from '../letters.js';
import type { WireFormSetup } from './setup.js';

const WIDTHS = [80, 64, 50, 38, 28, 18]; // mm, rooms tried
const STEP = 2; // mm between the places tried

type Board = {
  readonly area: Ring;
  readonly way: readonly Point2[];
  readonly pegs: readonly Point2[];
};

/** Over and under the wire, clear of its groove and of pins. */
export function formLetters(
  blank: Pick<Blank, 'name' | 'lengthMm' | 'version'>,
  wire: BentWire,
  setup: WireFormSetup,
  board: Board,
) {
  const face: Face = {
    name: 'board',
    origin: [0, 0, setup.boardMm],
    right: [1, 0, 0],
    up: [0, 1, 0],
    out: [0, 0, 1],
  };
  const clear = Math.max(wire.spec.diameterMm, wire.spec.bendInsideMm + setup.pinClearanceMm);
  const places = [{ face, rooms: roomsBeside(board, clear) }];
  const label = labelOf(blank);
  const cut = `CUT ${Math.ceil(wire.lengthToCutMm)} MM`;
  return placed(
    [
      { breaks: [[label], label.split(' ')], places },
      { breaks: [[cut], cut.split(' ')], places },
    ],
    setup.letters,
  );
}

function roomsBeside({ area, way, pegs }: Board, clear: number): Room[] {
  const [minX, minY, maxX, maxY] = ringBox(area);
  return WIDTHS.flatMap((width) =>
    Array.from(
      { length: Math.max(0, Math.floor((maxX - minX - width) / STEP)) },
      (_, i): Room[] => {
        const [left, right] = [minX + i * STEP, minX + i * STEP + width];
        const near = [
          ...within(way, left - clear, right + clear),
          ...pegs.filter(([x]) => x > left - clear && x < right + clear),
        ];
        if (near.length === 0) return [{ left, right, bottom: minY, top: maxY }];
        const [, low, , high] = boxOf(near);
        return [
          { left, right, bottom: minY, top: low - clear },
          { left, right, bottom: high + clear, top: maxY },
        ];
      },
    ).flat(),
  );
}

/** Places of a line between two x: its corners there, and where it comes in and leaves. */
function within(line: readonly Point2[], from: number, to: number): Point2[] {
  return line.slice(1).flatMap((q, i) => {
    const p = line[i];
    const [a, b] = p[0] <= q[0] ? [p, q] : [q, p];
    if (b[0] < from || a[0] > to) return [];
    const at = (x: number): Point2 => {
      const clamped = Math.min(b[0], Math.max(a[0], x));
      const share = b[0] > a[0] ? (clamped - a[0]) / (b[0] - a[0]) : 0;
      return [clamped, a[1] + share * (b[1] - a[1])];
    };
    return b[0] > a[0] ? [at(from), at(to)] : [p, q];
  });
}
