/**
 * The judge of a nest. It shares no code with the placement: it measures every pair of outlines by
 * brute force and counts blanks and blocks anew.
 */
import type { Point2 } from '../geometry/vec.js';
import { boxDistance, distanceBelow, extentOf } from './apart.js';
import { flawComplaints, turnedAndMoved } from './check-flaws.js';
import { type NestComplaint, ROUNDING_MM } from './complaint.js';
import type { Block, Nest, NestFace, NestPart, NestRules, Placement } from './nest.js';

export type NestCheck = {
  readonly complaints: readonly NestComplaint[];
  /** Pairs of outlines measured: n(n − 1)/2 a face. */
  readonly pairs: number;
  /** Least distance between two outlines of a face, mm; null if none is within 1 mm of the gap. */
  readonly leastGapMm: number | null;
};

const ROUNDING_DEG = 1e-9;
/** Part and block may differ in thickness by this, mm. */
const LIKE_THICKNESS_MM = 0.2 + ROUNDING_MM;
/** Distances up to this beyond the gap are measured exactly, so that the least can be told, mm. */
const REPORTED_BEYOND_GAP_MM = 1;

/** Checks a nest against the order it was made for. */
export function checkNest(
  nest: Nest,
  parts: readonly NestPart[],
  blocks: readonly Block[],
  rules: NestRules,
): NestCheck {
  const measured = nest.faces.map(measurePairs);
  const complaints = [
    ...nest.faces.flatMap((face, i) => [
      ...measured[i].complaints,
      ...edgeComplaints(face),
      ...flawComplaints(face, parts, rules),
      ...turnComplaints(face, rules),
      ...outlineComplaints(face, parts),
      ...stackComplaints(face, blocks, rules),
    ]),
    ...countComplaints(nest, parts),
    ...blockComplaints(nest, blocks),
    ...timberComplaints(nest, blocks),
  ];
  const least = Math.min(Infinity, ...measured.map((m) => m.least));
  return {
    complaints,
    pairs: measured.reduce((sum, m) => sum + m.pairs, 0),
    leastGapMm: Number.isFinite(least) ? least : null,
  };
}

type Measured = {
  readonly complaints: readonly NestComplaint[];
  readonly pairs: number;
  readonly least: number;
};

/** Every pair, from both sides; a pair whose boxes are far apart needs no closer look. */
function measurePairs({ id, gapMm, placements }: NestFace): Measured {
  const complaints: NestComplaint[] = [];
  const limit = gapMm + REPORTED_BEYOND_GAP_MM;
  const boxes = placements.map((p) => extentOf(p.outline));
  let least = Infinity;
  let pairs = 0;
  for (let a = 0; a < placements.length; a++) {
    for (let b = a + 1; b < placements.length; b++) {
      pairs++;
      if (boxDistance(boxes[a], boxes[b]) >= limit) continue;
      const [one, other] = [placements[a].outline, placements[b].outline];
      const distanceMm = Math.min(
        distanceBelow(one, other, limit),
        distanceBelow(other, one, limit),
      );
      if (distanceMm < limit) least = Math.min(least, distanceMm);
      if (distanceMm < gapMm - ROUNDING_MM) {
        complaints.push({ kind: 'gap', face: id, a, b, distanceMm, gapMm });
      }
    }
  }
  return { complaints, pairs, least };
}

function edgeComplaints(face: NestFace): NestComplaint[] {
  const { id, lengthMm, widthMm, marginMm } = face;
  return face.placements.flatMap(({ outline }, a): NestComplaint[] => {
    const { left, bottom, right, top } = extentOf(outline);
    const insideMm = Math.min(left, bottom, lengthMm - right, widthMm - top);
    if (insideMm >= marginMm - ROUNDING_MM) return [];
    return [{ kind: 'margin', face: id, a, insideMm, marginMm }];
  });
}

function turnComplaints(
  { id, placements }: NestFace,
  { largestTiltDeg }: NestRules,
): NestComplaint[] {
  return placements.flatMap(({ turnDeg }, a): NestComplaint[] => {
    const offGrain = Math.abs(turnDeg - 180 * Math.round(turnDeg / 180));
    if (offGrain <= largestTiltDeg + ROUNDING_DEG) return [];
    return [{ kind: 'turn', face: id, a, turnDeg, largestTiltDeg }];
  });
}

function outlineComplaints(face: NestFace, parts: readonly NestPart[]): NestComplaint[] {
  return face.placements.flatMap((placement, a): NestComplaint[] => {
    const part = parts.find((p) => p.id === placement.part);
    const where = { face: face.id, a, part: placement.part };
    if (!part || !isPlaced(part.outline, placement)) return [{ kind: 'outline', ...where }];
    const off = Math.abs(part.thicknessMm - face.thicknessMm);
    return off > LIKE_THICKNESS_MM ? [{ kind: 'thickness', ...where }] : [];
  });
}

function isPlaced(outline: readonly Point2[], placement: Placement): boolean {
  if (placement.outline.length !== outline.length) return false;
  return outline.every((p, i) => {
    const [x, y] = turnedAndMoved(p, placement);
    const [px, py] = placement.outline[i];
    return Math.max(Math.abs(x - px), Math.abs(y - py)) <= ROUNDING_MM;
  });
}

function stackComplaints(
  face: NestFace,
  blocks: readonly Block[],
  rules: NestRules,
): NestComplaint[] {
  const shares = face.stacks.flatMap((mix) => mix.blocks);
  const copies = face.stacks.reduce((sum, mix) => sum + mix.copies, 0);
  const height = face.layers * face.thicknessMm + (face.layers - 1) * rules.tapeThicknessMm;
  const wrong: readonly (readonly [boolean, string])[] = [
    [copies !== face.copies, 'copies'],
    [face.stacks.some((m) => !isCount(m.copies)), 'copies'],
    [!isCount(face.layers) || face.layers > rules.layers, 'layers'],
    [face.stacks.some((m) => blockCount(m.blocks) !== face.layers), 'layers'],
    [shares.some((s) => !isCount(s.count)), 'blocks'],
    [Math.abs(height - face.stackHeightMm) > ROUNDING_MM, 'height told'],
    [height > rules.largestHeightMm + ROUNDING_MM, 'height under the guide'],
    [face.gapMm !== rules.gapMm, 'gap'],
  ];
  const named = [...new Set(shares.map((s) => s.block))];
  return [
    ...wrong
      .filter(([is]) => is)
      .map(([, what]): NestComplaint => ({ kind: 'stack', face: face.id, what })),
    ...named.flatMap((name) => {
      const block = blocks.find((b) => b.name === name);
      const off = block ? differences(face, block) : ['name'];
      return off.map(
        (what): NestComplaint => ({ kind: 'block', face: face.id, block: name, what }),
      );
    }),
  ];
}

const isCount = (n: number): boolean => Number.isInteger(n) && n > 0;

const blockCount = (shares: readonly { readonly count: number }[]): number =>
  shares.reduce((sum, s) => sum + s.count, 0);

function differences(face: NestFace, block: Block): string[] {
  const sizes = (['lengthMm', 'widthMm', 'thicknessMm', 'marginMm'] as const).filter(
    (key) => face[key] !== block[key],
  );
  const forgotten = (['knots', 'splits', 'poorZones'] as const).filter((kind) => {
    const drawn = face[kind].map((flaw) => JSON.stringify(flaw));
    return block[kind].some((flaw) => !drawn.includes(JSON.stringify(flaw)));
  });
  return [...sizes, ...forgotten];
}

function countComplaints(nest: Nest, parts: readonly NestPart[]): NestComplaint[] {
  const made = (id: string): number =>
    nest.faces.reduce(
      (sum, f) => sum + f.layers * f.copies * f.placements.filter((p) => p.part === id).length,
      0,
    );
  const stacks = nest.faces.reduce((sum, f) => sum + f.copies, 0);
  const rows = parts.flatMap(({ id, orderedCount }) => [
    { what: 'made' as const, of: id, told: nest.made[id], counted: made(id) },
    { what: 'ordered' as const, of: id, told: nest.ordered[id], counted: orderedCount },
    {
      what: 'missing' as const,
      of: id,
      told: nest.missing[id] ?? 0,
      counted: Math.max(0, orderedCount - made(id)),
    },
  ]);
  return [...rows, { what: 'stacks' as const, of: 'nest', told: nest.stacks, counted: stacks }]
    .filter(({ told, counted }) => told !== counted)
    .map((row): NestComplaint => ({ kind: 'count', ...row }));
}

function blockComplaints(nest: Nest, blocks: readonly Block[]): NestComplaint[] {
  const mixes = nest.faces.flatMap((f) => f.stacks);
  return blocks.flatMap(({ name, count }): NestComplaint[] => {
    const used = mixes.reduce(
      (sum, m) => sum + m.copies * blockCount(m.blocks.filter((s) => s.block === name)),
      0,
    );
    const told = nest.blocksUsed[name] ?? 0;
    return [
      ...(told === used
        ? []
        : [
            { kind: 'count' as const, what: 'blocks used' as const, of: name, told, counted: used },
          ]),
      ...(used <= count ? [] : [{ kind: 'blocks' as const, block: name, used, available: count }]),
    ];
  });
}

/** Volumes that agree to this are equal, relative. */
const SAME_VOLUME = 1e-9;

function timberComplaints(nest: Nest, blocks: readonly Block[]): NestComplaint[] {
  const names = nest.faces.flatMap((f) =>
    f.stacks.flatMap((m) => m.blocks.map((b) => ({ name: b.block, count: b.count * m.copies }))),
  );
  const usedMm3 = names.reduce((sum, { name, count }) => {
    const block = blocks.find((b) => b.name === name);
    return sum + (block ? count * block.lengthMm * block.widthMm * block.thicknessMm : 0);
  }, 0);
  const { timberUsedMm3, timberBoundMm3, timberAreaBoundMm3, timberBoundKind } = nest;
  const room = SAME_VOLUME * usedMm3;
  const rows = [
    {
      wrong: !(Math.abs(timberUsedMm3 - usedMm3) <= room),
      what: 'used' as const,
      toldMm3: timberUsedMm3,
      againstMm3: usedMm3,
    },
    {
      wrong: !(timberBoundMm3 >= 0 && timberBoundMm3 <= usedMm3 + room),
      what: 'bound' as const,
      toldMm3: timberBoundMm3,
      againstMm3: usedMm3,
    },
    {
      wrong:
        !(timberAreaBoundMm3 >= 0 && timberAreaBoundMm3 <= timberBoundMm3 + room) ||
        (timberBoundKind === 'every-plan' && timberAreaBoundMm3 !== timberBoundMm3),
      what: 'area bound' as const,
      toldMm3: timberAreaBoundMm3,
      againstMm3: timberBoundMm3,
    },
  ];
  return rows
    .filter((row) => row.wrong)
    .map(({ what, toldMm3, againstMm3 }) => ({ kind: 'timber', what, toldMm3, againstMm3 }));
}
