/** The lure at rest seen from the side, with its centers, its trim and its freeboards. */
import type { Attitude } from '../../float/attitude.js';
import { add, type Box, boxOf, type Point2, times, unit } from '../../geometry/vec.js';
import { type Centers, centerMarks, type Marked, verticalLine } from './centers.js';
import { heightMark } from './height-mark.js';
import type { FloatInput } from './input.js';
import {
  boxOnSheet,
  fittedPose,
  lureView,
  onSheet,
  type Pose,
  stroke,
  surfaceY,
} from './lure-view.js';
import { type Shape, textWidthMm } from './picture.js';
import { type Label, labeled } from './place.js';
import { type SeenLure, seenLure } from './seen-lure.js';
import { arcLine, buoyancySign, gravitySign, LEVEL_SIGN_MM, levelSign, scaleBar } from './signs.js';
import { seen, sideView } from './view.js';
import { SIZES, spelled, words } from './words.js';

/** Room kept left and right for dimensions and angle, above and below for labels, mm. */
const ASIDE_MM = 36;
const ABOVE_MM = 6;
/** Sheet over true at most: the scale bar and the legend must fit under a narrow view. */
const MOST_SCALE = 1.5;
/** Height of the line with title or legend, mm. */
const STRIP_MM = 6;
/** Reach of the datum line and of the angle's arc beyond the tail, mm. */
const REACH_MM = 11;
/** Below this the datum line and the level are one line, degrees. */
const LEAST_ANGLE_DEG = 0.5;

export function sidePanel(input: FloatInput, panel: Box): readonly Shape[] {
  const { lure, attitude } = input;
  const window: Box = [panel[0], panel[1] + STRIP_MM, panel[2], panel[3] - STRIP_MM];
  const view = sideView(attitude.upInBody);
  // The datum line reaches beyond the tail.
  const rise = REACH_MM * seen(view, [1, 0, 0])[1];
  const room: Box = [
    window[0] + ASIDE_MM,
    window[1] + ABOVE_MM + Math.max(0, -rise),
    window[2] - ASIDE_MM,
    window[3] - ABOVE_MM - Math.max(0, rise),
  ];
  const drawn = seenLure(lure, view);
  const pose = fittedPose(drawn, room, MOST_SCALE);
  const surface = surfaceY(pose, attitude);
  const box = boxOnSheet(drawn, pose);
  const [datum, datumLabels] = datumLine(input, pose, surface);
  const boards = surface === null ? NOTHING : freeboards(input, pose, surface, box);
  const centers: Centers = {
    g: onSheet(pose, lure.cgMm),
    b: onSheet(pose, attitude.cbMm),
    m: null,
  };
  const under = [
    ...lureView(drawn, pose, window, surface),
    ...datum,
    ...boards.shapes,
    verticalLine(centers, boxOnSheet({ box: boxOf(drawn.body) }, pose), window),
    ...(surface === null ? [] : levelSign([window[0] + LEVEL_SIGN_MM, surface])),
  ];
  const marks = centerMarks(centers, under, window);
  const shapes = [...under, ...marks.shapes];
  return [
    words('Side view', panel[0], panel[3] - 4, { size: 'title', bold: true }),
    ...labeled(
      shapes,
      [
        ...marks.labels,
        ...boards.labels,
        ...datumLabels,
        ...(surface === null ? [hidden(window)] : []),
      ],
      window,
    ),
    ...legend(panel, pose.scale),
  ];
}

const NOTHING: Marked = { shapes: [], labels: [] };

/** The datum line through nose and tail, a level line from the tail and the angle between them. */
function datumLine(
  { lure, attitude }: FloatInput,
  pose: Pose,
  surface: number | null,
): readonly [readonly Shape[], readonly Label[]] {
  const [nose, tail] = [onSheet(pose, [0, 0, 0]), onSheet(pose, [lure.shape.lengthMm, 0, 0])];
  const [dx, dy] = seen(pose.view, [1, 0, 0]);
  const way = unit([dx, dy]);
  const angleDeg = (Math.atan2(way[1], way[0]) * 180) / Math.PI;
  const end = add(tail, times(way, REACH_MM));
  const datum: Shape = { ...stroke([nose, end], 'line', 'hair'), dashed: true, clear: true };
  const label = (at: Point2, firstDeg: number): Label => ({
    text: `${spelled(Math.abs(attitude.trimDeg), 1)}°`,
    at,
    firstDeg,
  });
  if (Math.abs(angleDeg) < LEAST_ANGLE_DEG) return [[datum], [label(end, 0)]];
  const level = stroke([tail, [tail[0] + REACH_MM, tail[1]]], 'line', 'hair');
  const radius = REACH_MM - 3;
  const half = (angleDeg / 2) * (Math.PI / 180);
  const middle = add(tail, [radius * Math.cos(half), radius * Math.sin(half)]);
  const shapes: Shape[] = [datum, arcLine(tail, radius, 0, angleDeg)];
  // With freeboards the level line is part of the tail's dimension.
  if (surface === null) shapes.push({ ...level, clear: true });
  return [shapes, [label(middle, angleDeg / 2)]];
}

/** Heights of nose and tail over the water, left and right of the lure. */
function freeboards({ lure, attitude }: FloatInput, pose: Pose, surface: number, box: Box): Marked {
  const tail = onSheet(pose, [lure.shape.lengthMm, 0, 0]);
  const ends = [
    heightMark({
      text: `nose ${spelled(attitude.freeboardNoseMm, 1)} mm`,
      from: onSheet(pose, [0, 0, 0]),
      foot: [box[0] - 6, surface],
    }),
    heightMark({
      text: `tail ${spelled(attitude.freeboardTailMm, 1)} mm`,
      from: tail,
      foot: [Math.max(box[2] + 5, tail[0] + REACH_MM + 3), surface],
    }),
  ];
  return {
    shapes: ends.flatMap(({ shapes }) => shapes),
    labels: ends.flatMap(({ labels }) => labels),
  };
}

const hidden = (window: Box): Label => ({
  text: 'surface out of view',
  at: [window[0] + 2, window[3] - 4],
});

/** Scale bar at the left, what G and B are at the right: in full where there is room. */
function legend(panel: Box, scale: number): Shape[] {
  const y = panel[1] + 1;
  const room = panel[2] - panel[0] - 50 * scale - 20;
  const texts =
    room > 105 ? ['G center of gravity', 'B center of buoyancy'] : ['G gravity', 'B buoyancy'];
  const [gravity, buoyancy] = texts.map((text) => textWidthMm(text, SIZES.note));
  const b = panel[2] - buoyancy;
  const g = b - 8 - gravity;
  return [
    ...scaleBar([panel[0], y], 50, scale),
    ...gravitySign([g - 3, y + 1.1]),
    words(texts[0], g, y),
    ...buoyancySign([b - 3.5, y + 1.1]),
    words(texts[1], b, y),
  ];
}

/** A small view: lure and water only. */
export function smallView(
  lure: SeenLure,
  attitude: Attitude,
  window: Box,
  most?: number,
): readonly Shape[] {
  const inner: Box = [window[0] + 2, window[1] + 2, window[2] - 2, window[3] - 2];
  const pose = fittedPose(lure, inner, most);
  return lureView(lure, pose, window, surfaceY(pose, attitude));
}
