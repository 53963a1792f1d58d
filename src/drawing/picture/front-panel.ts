/** The lure at rest seen from ahead, with its heel and its metacenter. */
import { type Box, type Point2, unit } from '../../geometry/vec.js';
import { centerMarks, verticalLine } from './centers.js';
import type { DrawnLure, FloatInput } from './input.js';
import { boxOnSheet, fittedPose, lureView, onSheet, stroke, surfaceY } from './lure-view.js';
import type { Shape } from './picture.js';
import { type Label, labeled } from './place.js';
import { seenLure } from './seen-lure.js';
import { arcLine, LEVEL_SIGN_MM, levelSign, metacenterSign, scaleBar } from './signs.js';
import { frontView, sectionPoints, seen, widestStationMm } from './view.js';
import { spelled, words } from './words.js';

/** Room around the lure, mm. */
const AROUND_MM = 8;
const STRIP_MM = 6;
/** A metacenter nearer to G than this on the sheet is not told from it, mm. */
const LEAST_GM_MM = 1;
/** Less heel than this is upright. */
const LEAST_ANGLE_DEG = 0.5;

export function frontPanel(input: FloatInput, panel: Box): readonly Shape[] {
  const { lure, attitude } = input;
  const window: Box = [panel[0], panel[1] + STRIP_MM, panel[2], panel[3] - STRIP_MM];
  const room: Box = [
    window[0] + AROUND_MM,
    window[1] + AROUND_MM,
    window[2] - AROUND_MM,
    window[3] - AROUND_MM,
  ];
  const drawn = seenLure(bare(lure), frontView(attitude.upInBody));
  const pose = fittedPose(drawn, room);
  const surface = surfaceY(pose, attitude);
  const box = boxOnSheet(drawn, pose);
  const section = sectionPoints(lure.shape, widestStationMm(lure.shape)).map((p) =>
    onSheet(pose, p),
  );
  const [g, b] = [onSheet(pose, lure.cgMm), onSheet(pose, attitude.cbMm)];
  const m: Point2 = [g[0], g[1] + attitude.gmAcrossMm * pose.scale];
  const showM = surface !== null && within(m, window, 4) && Math.abs(m[1] - g[1]) > LEAST_GM_MM;
  const [heel, heelLabels] = heelAngle(input, pose, box, window);
  const centers = { g, b, m: showM ? m : null };
  const under: Shape[] = [
    ...lureView(drawn, pose, window, surface),
    { ...stroke(section, 'line', 'hair'), closed: true, dashed: true },
    ...heel,
    verticalLine(centers, box, window),
    ...(surface === null ? [] : levelSign([window[0] + LEVEL_SIGN_MM, surface])),
  ];
  const marks = centerMarks(centers, under, window);
  const shapes = [...under, ...marks.shapes];
  const labels: Label[] = [...marks.labels, ...heelLabels];
  const y = panel[1] + 1;
  return [
    words('From ahead', panel[0], panel[3] - 4, { size: 'title', bold: true }),
    ...labeled(shapes, labels, window),
    ...scaleBar([panel[0], y], 10, pose.scale),
    ...(showM
      ? [...metacenterSign([panel[2] - 29, y + 1.1]), words('M metacenter', panel[2] - 26, y)]
      : []),
  ];
}

/** Without rings and trebles: seen on one line, they hide what this view is for. */
const bare = (lure: DrawnLure): DrawnLure => ({
  ...lure,
  eyes: lure.eyes.map((eye) => ({ ...eye, ring: false, treble: false })),
});

const within = ([x, y]: Point2, box: Box, margin: number): boolean =>
  x > box[0] + margin && x < box[2] - margin && y > box[1] + margin && y < box[3] - margin;

/** The lure's own middle line (keel to back) and the angle from the vertical to it. */
function heelAngle(
  { lure, attitude }: FloatInput,
  pose: Parameters<typeof onSheet>[0],
  box: Box,
  window: Box,
): readonly [readonly Shape[], readonly Label[]] {
  const back = seen(pose.view, [0, 0, 1]);
  // Standing on its end, the lure turns its back to the sky nowhere.
  if (Math.hypot(...back) < 0.05) return [[], []];
  const way = unit(back);
  const middle = onSheet(pose, [widestStationMm(lure.shape), 0, 0]);
  const edges = [0, 1, 2, 3].map((side) => Math.abs(window[side] - middle[side % 2]) - 1);
  const reach = Math.min(Math.hypot(box[2] - box[0], box[3] - box[1]) / 2 + 3, ...edges);
  const along = (k: number): Point2 => [middle[0] + k * way[0], middle[1] + k * way[1]];
  const line: Shape = {
    ...stroke([along(-reach), along(reach)], 'line', 'hair'),
    dashed: true,
    clear: true,
  };
  const angleDeg = (Math.atan2(way[1], way[0]) * 180) / Math.PI;
  if (Math.abs(angleDeg - 90) < LEAST_ANGLE_DEG) return [[], []];
  const turnDeg = ((angleDeg - 90 + 540) % 360) - 180;
  const half = ((90 + turnDeg / 2) * Math.PI) / 180;
  const at: Point2 = [middle[0] + reach * Math.cos(half), middle[1] + reach * Math.sin(half)];
  return [
    [line, arcLine(middle, reach, 90, 90 + turnDeg)],
    [{ text: `${spelled(Math.abs(attitude.heelDeg), 1)}°`, at, firstDeg: 90 + turnDeg / 2 }],
  ];
}
