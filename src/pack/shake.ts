/** A way out of a dead end: two large items change places, and what lies inside them goes along. */
import { type Crowd, clampX, clampY, put } from './crowd.js';

/** Large are the items that together make up this share of all area, greatest first. */
const LARGE_SHARE = 0.75;
/** What has its middle inside a large item's box goes along if its own box is smaller than this share. */
const GOES_ALONG = 0.5;

export function exchangeTwo(
  crowd: Crowd,
  { areas, items }: { readonly areas: readonly number[]; readonly items: readonly number[] },
  draw: () => number,
): void {
  const [a, b] = twoLarge(areas, items, draw);
  if (a === b) return;
  const { places, table, movable } = crowd;
  const boxOf = (i: number) => {
    const { box } = table.turned[places.turned[i]];
    const [x, y] = [places.x[i], places.y[i]];
    return { left: x + box[0], bottom: y + box[1], right: x + box[2], top: y + box[3] };
  };
  type Extent = ReturnType<typeof boxOf>;
  const middle = ({ left, bottom, right, top }: Extent) => [(left + right) / 2, (bottom + top) / 2];
  const size = ({ left, bottom, right, top }: Extent) => (right - left) * (top - bottom);
  const [boxA, boxB] = [boxOf(a), boxOf(b)];
  const liesIn = (own: Extent, box: Extent): boolean => {
    const [x, y] = middle(own);
    const within = x > box.left && x < box.right && y > box.bottom && y < box.top;
    return within && size(own) < GOES_ALONG * size(box);
  };
  const [ax, ay] = middle(boxA);
  const [bx, by] = middle(boxB);
  const move = (i: number, dx: number, dy: number): void => {
    const k = places.turned[i];
    put(crowd, i, k, clampX(crowd, k, places.x[i] + dx), clampY(crowd, k, places.y[i] + dy));
  };
  const others = Array.from({ length: movable }, (_, i) => i).filter((i) => i !== a && i !== b);
  const withA = others.filter((i) => liesIn(boxOf(i), boxA));
  const withB = others.filter((i) => !withA.includes(i) && liesIn(boxOf(i), boxB));
  for (const i of [a, ...withA]) move(i, bx - ax, by - ay);
  for (const i of [b, ...withB]) move(i, ax - bx, ay - by);
}

/** Two items of different outlines, large ones if there are such; the same twice if all are alike. */
function twoLarge(
  areas: readonly number[],
  items: readonly number[],
  draw: () => number,
): readonly [number, number] {
  const order = items.map((_, i) => i).sort((i, j) => areas[items[j]] - areas[items[i]] || i - j);
  const total = items.reduce((sum, o) => sum + areas[o], 0);
  let sum = 0;
  const large = order.filter((i) => {
    const isLarge = sum <= LARGE_SHARE * total;
    sum += areas[items[i]];
    return isLarge;
  });
  const a = large[Math.floor(draw() * large.length)];
  const unlike = (i: number): boolean => items[i] !== items[a];
  const pool = large.some(unlike) ? large.filter(unlike) : order.filter(unlike);
  return [a, pool.length === 0 ? a : pool[Math.floor(draw() * pool.length)]];
}
