/** Lines that go in under a body and come out again. */
import { insideRing } from '../../geometry/ring.js';
import { distance, mix, type Point2 } from '../../geometry/vec.js';

/** How finely a line is looked at for where it goes in, mm. */
const LOOK_MM = 0.25;
const STRAIGHT = 1e-9;

export type SeenLine = { readonly points: readonly Point2[]; readonly hidden: boolean };

/** A line in its parts inside and outside of an outline. */
export function parted(line: readonly Point2[], outline: readonly Point2[]): readonly SeenLine[] {
  const fine = line.flatMap((to, i) => {
    if (i === 0) return [to];
    const pieces = Math.max(1, Math.ceil(distance(line[i - 1], to) / LOOK_MM));
    return Array.from({ length: pieces }, (_, k) => mix(line[i - 1], to, (k + 1) / pieces));
  });
  const parts: { points: Point2[]; hidden: boolean }[] = [];
  fine.slice(1).forEach((to, i) => {
    const hidden = insideRing(mix(fine[i], to, 0.5), outline);
    const last = parts[parts.length - 1];
    if (last?.hidden === hidden) last.points.push(to);
    else parts.push({ points: [fine[i], to], hidden });
  });
  return parts.map(({ points, hidden }) => ({ points: straightened(points), hidden }));
}

/** Without the points that lie on a line with their neighbors. */
const straightened = (points: readonly Point2[]): readonly Point2[] =>
  points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    if (!a || !b) return true;
    const area = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    return Math.abs(area) > STRAIGHT;
  });
