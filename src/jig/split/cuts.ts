/**
 * Which planes to cut at: so many pieces that fit the bed and hold together, each cut in a section as
 * large as can be had; among like sections the pieces are made even.
 */

/** Sections are held for alike within this part of the largest. */
const ALIKE = 0.05;
/** Spans whose pieces may turn out unsound before so many pieces are given up. */
const MOST_UNSOUND = 200;

/** From one x to another. */
export type Span = readonly [fromX: number, toX: number];

export type Plane = { readonly xMm: number; readonly areaMm2: number };

export type Cuttable = {
  readonly planes: readonly Plane[];
  readonly ends: Span;
  readonly mostPieceMm: number;
  /** Between two cuts the bores of both must find room, one after the other. */
  readonly leastMiddleMm: number;
  /** Whether what is between is one piece that rests on the bed. */
  readonly holds: (span: Span) => boolean;
};

/** Planes with room for dowels are opened one by one, the best first, until some of them part the whole into so many sound pieces; null if they never do. */
export function cutsFor(
  solid: Cuttable,
  count: number,
  hasRoom: (x: number) => boolean,
): number[] | null {
  const open: number[] = [];
  const unsound = new Set<string>();
  for (const x of bestFirst(solid, count)) {
    if (!hasRoom(x)) continue;
    open.push(x);
    open.sort((a, b) => a - b);
    for (;;) {
      const chain = linked(solid, count, open, unsound);
      if (!chain) break;
      const bad = spansOf(chain).find((span) => !solid.holds(span));
      if (!bad) return chain.slice(1, -1);
      if (unsound.size === MOST_UNSOUND) return null;
      unsound.add(String(bad));
    }
  }
  return null;
}

/** Planes that can part the whole into so many pieces, by their sections; like sections by how even the pieces get. */
function bestFirst({ planes, ends: [from, to], mostPieceMm }: Cuttable, count: number): number[] {
  const even = (to - from) / count;
  const useful = planes.filter(({ xMm }) => {
    const [before, after] = [xMm - from, to - xMm];
    return Array.from({ length: count - 1 }, (_, j) => j + 1).some(
      (j) => before <= j * mostPieceMm && after <= (count - j) * mostPieceMm,
    );
  });
  const largest = Math.max(...useful.map((p) => p.areaMm2));
  const rank = ({ areaMm2 }: Plane): number => Math.ceil(areaMm2 / (ALIKE * largest) - 1e-6);
  const unevenness = ({ xMm }: Plane): number => {
    const share = (xMm - from) / even;
    return Math.abs(share - Math.round(share));
  };
  return [...useful]
    .sort((a, b) => rank(b) - rank(a) || unevenness(a) - unevenness(b) || a.xMm - b.xMm)
    .map((p) => p.xMm);
}

/** So many spans from end to end with cuts at open planes, as even as each step finds them; the ends are in it. */
function linked(
  { ends: [from, to], mostPieceMm, leastMiddleMm }: Cuttable,
  count: number,
  open: readonly number[],
  unsound: ReadonlySet<string>,
): number[] | null {
  const even = (to - from) / count;
  const fits = (a: number, b: number): boolean =>
    b - a <= mostPieceMm &&
    (a === from || b === to || b - a >= leastMiddleMm) &&
    !(unsound.size > 0 && unsound.has(String([a, b])));
  let reached: readonly number[][] = [[from]];
  for (let j = 1; j <= count; j++) {
    reached = (j === count ? [to] : open).flatMap((x) => {
      const before = reached
        .filter((chain) => chain[j - 1] < x && fits(chain[j - 1], x))
        .map((chain) => ({ chain, off: Math.abs(x - chain[j - 1] - even) }));
      if (before.length === 0) return [];
      return [[...before.reduce((a, b) => (b.off < a.off ? b : a)).chain, x]];
    });
  }
  return reached[0] ?? null;
}

const spansOf = (chain: readonly number[]): Span[] =>
  chain.slice(1).map((x, i) => [chain[i], x] as const);
