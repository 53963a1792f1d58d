/** What is screwed in, bent, glued in or hung on: for one lure, and for the run. */
import { eyePlaces } from '../mass/eyes.js';
import type { Item } from '../mass/item.js';
import { rowOf } from '../mass/row.js';
import { isPoured } from './ballast.js';
import type { BallastFill, Hardware, HardwareTotal } from './shop.js';
import type { ShopLine, ShopWork } from './work.js';

type Piece = Omit<Hardware, 'perLure' | 'total'>;

export function hardwareOf(
  line: ShopLine,
  ballast: readonly BallastFill[],
  work: Pick<ShopWork, 'materials'>,
): Hardware[] {
  const pieces = [...eyePieces(line, work), ...plateAndWire(line), ...gluedIn(line, ballast, work)];
  const alike = (a: Piece, b: Piece): boolean => sameKind(a, b) && a.massEachG === b.massEachG;
  return pieces
    .filter((piece, i) => pieces.findIndex((p) => alike(p, piece)) === i)
    .map((piece) => {
      const perLure = pieces.filter((p) => alike(p, piece)).length;
      return { ...piece, perLure, total: perLure * line.count };
    });
}

const PLAIN = { sizeMm: null, lengthMm: null };

function eyePieces(
  { pattern, body }: ShopLine,
  { materials: { fittings } }: Pick<ShopWork, 'materials'>,
): Piece[] {
  const eyes = eyePlaces(pattern, body.shape).map((p) => p.eye);
  const named = (what: 'screw-eye' | 'ring' | 'treble', name: string | null): Piece[] =>
    name === null ? [] : [{ what, name, ...PLAIN, massEachG: rowOf(fittings, name, what).massG }];
  return [
    ...eyes.flatMap((e) => named('screw-eye', e.kind === 'screw' ? e.screwEye : null)),
    ...eyes.flatMap((e) => named('ring', e.ring)),
    ...eyes.flatMap((e) => named('treble', e.treble)),
  ];
}

function plateAndWire({ pattern, wire, floating }: ShopLine): Piece[] {
  const massOf = (name: string): number =>
    floating.lure.items.find((item: Item) => item.kind === 'rig' && item.name === name)?.massG ?? 0;
  const { lip } = pattern;
  return [
    ...(lip
      ? [
          {
            what: 'lip' as const,
            name: pattern.name,
            sizeMm: lip.thicknessMm,
            lengthMm: null,
            massEachG: massOf('lip'),
          },
        ]
      : []),
    ...(wire
      ? [
          {
            what: 'wire' as const,
            name: 'through-wire',
            sizeMm: wire.spec.diameterMm,
            lengthMm: wire.lengthToCutMm,
            massEachG: massOf('through-wire'),
          },
        ]
      : []),
  ];
}

function gluedIn(
  { blank }: ShopLine,
  ballast: readonly BallastFill[],
  { materials }: Pick<ShopWork, 'materials'>,
): Piece[] {
  return blank.holes.flatMap((hole, i): Piece[] => {
    if (isPoured(hole, materials)) return [];
    const massEachG = ballast[i].filledG;
    return hole.weight === null
      ? [{ what: 'rod', name: hole.metal, ...PLAIN, sizeMm: hole.diameterMm, massEachG }]
      : [
          {
            what: 'weight',
            name: hole.weight,
            ...PLAIN,
            sizeMm: rowOf(materials.weights, hole.weight).diameterMm,
            massEachG,
          },
        ];
  });
}

const sameKind = (
  a: Pick<Hardware, 'what' | 'name' | 'sizeMm'>,
  b: Pick<Hardware, 'what' | 'name' | 'sizeMm'>,
): boolean => a.what === b.what && a.name === b.name && a.sizeMm === b.sizeMm;

const KINDS = ['screw-eye', 'ring', 'treble', 'lip', 'wire', 'weight', 'rod'] as const;

/** By kind, then in the order they first come up. */
export function hardwareTotals(lists: readonly (readonly Hardware[])[]): HardwareTotal[] {
  const all = lists.flat();
  const first = all.filter((h, i) => all.findIndex((other) => sameKind(other, h)) === i);
  return KINDS.flatMap((kind) => first.filter((h) => h.what === kind)).map(
    ({ what, name, sizeMm, lengthMm }) => {
      const like = all.filter((h) => sameKind(h, { what, name, sizeMm }));
      return {
        what,
        name,
        sizeMm,
        count: like.reduce((sum, h) => sum + h.total, 0),
        lengthMm:
          lengthMm === null ? null : like.reduce((sum, h) => sum + h.total * (h.lengthMm ?? 0), 0),
      };
    },
  );
}
