/** Why a wire can not be bent to where it should go. */
import { type EndName, runEnd } from './end.js';
import { type Legs, roomMm } from './leg.js';
import type { Run } from './line.js';
import { formOf, type WireSpec } from './spec.js';

/** Hangers by their index in the spec; `needMm` is the least that works. */
export type WireFlaw =
  | {
      readonly kind: 'too-close';
      readonly hanger: number;
      readonly other: EndName | number;
      readonly betweenMm: number;
      readonly needMm: number;
      /** Station of the hanger that is far enough from the other. */
      readonly nearestMm: number;
    }
  | { readonly kind: 'ends-too-close'; readonly betweenMm: number; readonly needMm: number }
  | {
      readonly kind: 'leg-too-short';
      readonly hanger: number;
      /** Belly below the run; negative where the run is below the belly. */
      readonly depthMm: number;
      readonly needMm: number;
    };

/** The ends leave no straight run between them; at one height it takes no bends to lead into it. */
export function endsTooClose(spec: WireSpec): WireFlaw {
  const { nose, tail } = spec;
  const [fore, aft] = [runEnd(spec, 'tow'), runEnd(spec, 'tail')];
  const bendsMm = nose.at[1] === tail.at[1] ? 0 : fore.radiusMm + aft.radiusMm;
  return {
    kind: 'ends-too-close',
    betweenMm: tail.at[0] - nose.at[0],
    needMm: fore.at[0] - nose.at[0] + (tail.at[0] - aft.at[0]) + bendsMm,
  };
}

/** Neighbors along the run: an end with what it takes of it, or a hanger. */
type Stop = { readonly name: EndName | number; readonly at: number; readonly room: number };

/** Every two neighbors that need more of the run than lies between them. Of two hangers the later is to move. */
export function crowding(spec: WireSpec, run: Run): WireFlaw[] {
  const room = roomMm(run, formOf(spec));
  const { nose, tail } = spec;
  const stops: Stop[] = [
    { name: 'tow', at: nose.at[0], room: run.from[0] - nose.at[0] },
    ...spec.hangers.map(([at], name) => ({ name, at, room })),
    { name: 'tail', at: tail.at[0], room: tail.at[0] - run.to[0] },
  ];
  return stops.slice(1).flatMap((b, i): WireFlaw[] => {
    const a = stops[i];
    const [betweenMm, needMm] = [b.at - a.at, a.room + b.room];
    if (betweenMm >= needMm) return [];
    if (typeof b.name === 'number')
      return [tooClose(b.name, a, { betweenMm, needMm, nearestMm: a.at + needMm })];
    if (typeof a.name === 'number')
      return [tooClose(a.name, b, { betweenMm, needMm, nearestMm: b.at - needMm })];
    return [];
  });
}

const tooClose = (
  hanger: number,
  { name: other }: Stop,
  numbers: { betweenMm: number; needMm: number; nearestMm: number },
): WireFlaw => ({ kind: 'too-close', hanger, other, ...numbers });

export const shortLegs = (legs: readonly Legs[]): WireFlaw[] =>
  legs.flatMap(({ depthMm, needMm }, hanger): WireFlaw[] =>
    depthMm < needMm ? [{ kind: 'leg-too-short', hanger, depthMm, needMm }] : [],
  );
