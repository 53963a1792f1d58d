/**
 * The through-wire bent to shape: its center line in the side view (station, height) from the tow end
 * to the tail end, with an eye wherever one hangs on it.
 */
import { type ArcPath, pathOf, segmentLength } from '../geometry/arcpath.js';
import type { Point2 } from '../geometry/vec.js';
import { endPieces, runEnd, twistAt } from './end.js';
import { crowding, endsTooClose, shortLegs, type WireFlaw } from './flaw.js';
import { type Legs, legsTo } from './leg.js';
import { arcPiece, type Run, runBetween } from './line.js';
import { straight, type WirePiece } from './piece.js';
import { formOf, type WireForm, type WireSpec } from './spec.js';
import type { Twist } from './twist.js';

export type BentWire = WireForm & {
  readonly spec: WireSpec;
  /** Each starts where the one before ends, and goes on in its direction. */
  readonly pieces: readonly WirePiece[];
  /** The same as one open path. */
  readonly path: ArcPath;
  readonly twists: readonly Twist[];
  /** Center line, eyes and twists: what is in the lure. */
  readonly lengthMm: number;
  /** That, and what the pliers hold at each eye at an end. */
  readonly lengthToCutMm: number;
};

export type Bent = { readonly wire: BentWire | null; readonly flaws: readonly WireFlaw[] };

/**
 * The run lies straight from end to end. At an eye at an end the wire is level for as long as it is
 * wound, then bends into the run. To a hanger it bends down, goes round and comes up again close
 * beside itself; such an eye has no end that could be wound, its legs close it. Every bend has the
 * least radius. The wire is null when there are flaws.
 */
export function bentWire(spec: WireSpec): Bent {
  const form = formOf(spec);
  const run = runBetween(runEnd(spec, 'tow'), runEnd(spec, 'tail'));
  if (!run) return { wire: null, flaws: [endsTooClose(spec)] };
  const legs = spec.hangers.map((belly, i) => legsTo(i, belly, run, form));
  const flaws = [...crowding(spec, run), ...shortLegs(legs)];
  if (flaws.length > 0) return { wire: null, flaws };
  const pieces = [
    ...endPieces(spec, 'tow'),
    ...arcPiece(runEnd(spec, 'tow').at, run.from, [LEVEL, run.way], BEND),
    ...along(run, legs),
    ...arcPiece(run.to, runEnd(spec, 'tail').at, [run.way, LEVEL], BEND),
    ...endPieces(spec, 'tail'),
  ];
  const twists = [...twistAt(spec, 'tow'), ...twistAt(spec, 'tail')];
  const lengthMm = [...pieces.map(segmentLength), ...twists.map((t) => t.lengthMm)].reduce(
    (sum, mm) => sum + mm,
    0,
  );
  const held = Number(spec.nose.eye) + Number(spec.tail.eye);
  const lengthToCutMm = lengthMm + held * spec.holdMm;
  const wire = { ...form, spec, pieces, path: pathOf(pieces, false), twists, lengthMm };
  return { wire: { ...wire, lengthToCutMm }, flaws: [] };
}

const LEVEL: Point2 = [1, 0];
const BEND = { role: 'bend', eye: null } as const;

/** The run with its hangers let in. */
function along(run: Run, legs: readonly Legs[]): WirePiece[] {
  const starts = [run.from, ...legs.map(({ pieces }) => pieces[pieces.length - 1].to)];
  const ends = [...legs.map(({ pieces }) => pieces[0].from), run.to];
  return starts.flatMap((from, i) => [
    ...straight(from, ends[i], { role: 'run', eye: null }),
    ...(legs[i]?.pieces ?? []),
  ]);
}
