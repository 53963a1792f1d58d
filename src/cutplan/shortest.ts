/** Shortest ways on a map (E. Dijkstra, 1959), from its exits inward. */
import { distance, type Point2 } from '../geometry/vec.js';

export type Shortest = {
  /** Length of the way from each node out; Infinity where there is none. */
  readonly far: Float64Array;
  /** The next node on that way; −1 at the last one. */
  readonly next: Int32Array;
};

/** `exits` gives, for some nodes, the point outside to which they lead straight. */
export function shortestFrom(
  points: readonly Point2[],
  links: readonly (readonly number[])[],
  exits: ReadonlyMap<number, Point2>,
): Shortest {
  const far = new Float64Array(points.length).fill(Infinity);
  const next = new Int32Array(points.length).fill(-1);
  const heap: Entry[] = [];
  for (const [node, exit] of exits) {
    far[node] = distance(points[node], exit);
    push(heap, { far: far[node], node });
  }
  for (let least = pop(heap); least; least = pop(heap)) {
    const { node } = least;
    if (least.far > far[node]) continue;
    for (const to of links[node]) {
      const length = far[node] + distance(points[node], points[to]);
      if (length >= far[to]) continue;
      far[to] = length;
      next[to] = node;
      push(heap, { far: length, node: to });
    }
  }
  return { far, next };
}

/**
 * A late index from `first` to `last` that holds, found by strides that double while it holds and
 * then halve; `first` itself is taken to hold.
 */
export function latest(first: number, last: number, holds: (index: number) => boolean): number {
  let [good, stride] = [first, 1];
  while (good + stride <= last && holds(good + stride)) {
    good += stride;
    stride *= 2;
  }
  for (; stride >= 1; stride = Math.floor(stride / 2))
    if (good + stride <= last && holds(good + stride)) good += stride;
  return good;
}

/** Binary heap, least first; equal lengths by node, so that the same map gives the same way. */
type Entry = { readonly far: number; readonly node: number };

const before = (a: Entry, b: Entry): boolean =>
  a.far < b.far || (a.far === b.far && a.node < b.node);

function push(heap: Entry[], entry: Entry): void {
  let at = heap.length;
  heap.push(entry);
  while (at > 0) {
    const up = (at - 1) >> 1;
    if (!before(entry, heap[up])) break;
    heap[at] = heap[up];
    at = up;
  }
  heap[at] = entry;
}

function pop(heap: Entry[]): Entry | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!last || heap.length === 0) return top;
  let at = 0;
  for (let down = 1; down < heap.length; down = 2 * at + 1) {
    if (down + 1 < heap.length && before(heap[down + 1], heap[down])) down++;
    if (!before(heap[down], last)) break;
    heap[at] = heap[down];
    at = down;
  }
  heap[at] = last;
  return top;
}
