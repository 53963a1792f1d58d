/** Paper that is too small for what must lie whole on one page, or that overlaps itself away. */
import type { Box, Point2 } from '../geometry/vec.js';
import type { Paper } from '../pattern/paper.js';
import { type Problem, problem } from '../problem.js';
import { BARS_WIDE_MM } from './footer.js';
import { frameOf } from './frame.js';
import type { Leaflet } from './paper-file.js';
import { canJoin, fits, roomsOn, sizeOf } from './tiling.js';

/** What one page must be able to show whole, with its ink, mm. */
export type Whole = {
  readonly leaflet: Leaflet;
  /** Its name, at the head of a sentence. */
  readonly part: string;
  readonly sizeMm: Point2;
  /** It may be one of several pages: inside their border. */
  readonly isJoined: boolean;
};

/** Room for the bars beside the printer's long line, and for the words of that page, mm. */
const LEAST_MM: Point2 = [BARS_WIDE_MM + 10, 160];
/** Less of an overlap can not be glued, mm. */
const LEAST_OVERLAP_MM = 8;

/** The worst of it: one problem, or none. */
export function paperProblems(paper: Paper, wholes: readonly Whole[]): Problem[] {
  const { clear } = frameOf(paper, 'upright');
  if (!fits(LEAST_MM, sizeOf(clear)))
    return [tooSmall(paper, 'The place for bars and words', LEAST_MM, [clear])];
  const worst = wholes
    .filter((whole) => !roomsFor(paper, whole).some((room) => fits(whole.sizeMm, sizeOf(room))))
    .sort((a, b) => b.sizeMm[0] * b.sizeMm[1] - a.sizeMm[0] * a.sizeMm[1]);
  if (worst.length > 0) {
    const [whole] = worst;
    return [tooSmall(paper, whole.part, whole.sizeMm, roomsFor(paper, whole))];
  }
  return wholes.flatMap(({ leaflet }) => overlapProblem(paper, leaflet)).slice(0, 1);
}

const roomsFor = (paper: Paper, { leaflet, isJoined }: Whole): readonly Box[] =>
  roomsOn(paper, leaflet).map(({ whole, joined }) => (isJoined ? joined : whole));

function tooSmall(paper: Paper, needs: string, [w, h]: Point2, rooms: readonly Box[]): Problem {
  const told = (room: Box | undefined) => {
    const [wide, high] = room ? sizeOf(room).map((side) => Math.floor(side)) : [0, 0];
    return wide > 0 && high > 0 ? `${wide} × ${high} mm` : 'nothing';
  };
  const { acrossMm, alongMm, marginMm } = paper;
  return problem('paper-too-small', ['paper'], {
    needs,
    needWidthMm: w,
    needHeightMm: h,
    upright: told(rooms[0]),
    turned: told(rooms[1]),
    acrossMm,
    alongMm,
    marginMm,
  });
}

function overlapProblem(paper: Paper, leaflet: Leaflet): Problem[] {
  const { overlapMm } = paper;
  const rooms = roomsOn(paper, leaflet);
  if (rooms.some((room) => canJoin(room, overlapMm))) return [];
  const windowMm = Math.max(...rooms.map(({ joined }) => Math.min(...sizeOf(joined))));
  const limitMm = Math.floor(windowMm / 2);
  const least: Point2 = [2 * LEAST_OVERLAP_MM, 2 * LEAST_OVERLAP_MM];
  return limitMm < LEAST_OVERLAP_MM
    ? [
        tooSmall(
          paper,
          `Any piece of ${leaflet.file}`,
          least,
          rooms.map((r) => r.joined),
        ),
      ]
    : [problem('paper-overlap-too-wide', ['paper', 'overlapMm'], { overlapMm, limitMm, windowMm })];
}
