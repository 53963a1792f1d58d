/** The lure from above: body, block, lip and the mouths of the holes. */
import { boxOf, cosSinDeg, type Point2 } from '../../geometry/vec.js';
import type { Shape } from '../picture/picture.js';
import { planCurve } from './hull-lines.js';
import { boxLine, CLOSED, DASHED, ink } from './ink.js';
import type { ViewsInput } from './input.js';
import { lipFromAbove } from './lip-plan.js';
import type { Place } from './side-view.js';

const RIM_POINTS = 48;

/** `on` takes (station, distance from the center plane). */
export function planView(input: ViewsInput, { on }: Place): Shape[] {
  const { shape, blank } = input;
  const side = planCurve(shape);
  const mirrored = side.map(([x, y]): Point2 => [x, -y]);
  const body = [...side, ...mirrored.reverse().slice(1, -1)];
  const [from, , to] = boxOf(blank.profileRing);
  const half = blank.thicknessMm / 2;
  return [
    boxLine([...on([from, -half]), ...on([to, half])], 'hair'),
    ...lipFromAbove(input, body).map(({ points, hidden }) =>
      ink(points.map(on), hidden ? 'hair' : 'fine', hidden ? DASHED : {}),
    ),
    ...blank.holes.map((hole) => ink(rim(hole).map(on), 'hair', { ...CLOSED, ...DASHED })),
    ink(body.map(on), 'firm', CLOSED),
  ];
}

type Hole = ViewsInput['blank']['holes'][number];

/** Where a bit enters a belly along the datum line. */
function rim({ stationMm, diameterMm, tiltDeg }: Hole): Point2[] {
  const [upright] = cosSinDeg(tiltDeg);
  return Array.from({ length: RIM_POINTS }, (_, i): Point2 => {
    const [c, s] = cosSinDeg((360 * i) / RIM_POINTS);
    return [stationMm + ((diameterMm / 2) * c) / upright, (diameterMm / 2) * s];
  });
}
