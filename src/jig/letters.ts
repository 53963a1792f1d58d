/** Letters sunk into a flat face of a jig: how large they can be, where they go, what is cut away. */
import { centeredLines } from '../geometry/lettering.js';
import { thinnedLine } from '../geometry/thin.js';
import { type Box, boxOf, type Point2, type Point3 } from '../geometry/vec.js';
import { type Csg, movedBy } from '../solid/csg.js';
import { placement } from '../solid/placement.js';
import type { Letters } from './setup.js';

/**
 * A flat face as somebody sees it who looks at it from outside, in jig coordinates. `out`, away from
 * the plastic, must be right × up, or letters would be mirrored.
 */
export type Face = {
  readonly name: string;
  readonly origin: Point3;
  readonly right: Point3;
  readonly up: Point3;
  readonly out: Point3;
};

/** An empty rectangle on a face, in the face's right and up. */
export type Room = {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
};

/** Lines of text on a face, centered in `box`, the room their ink takes. */
export type Sunk = {
  readonly face: Face;
  readonly lines: readonly string[];
  /** The lines in one. */
  readonly text: string;
  readonly heightMm: number;
  readonly depthMm: number;
  readonly box: Room;
};

/** Rooms on one face, none better than another. */
export type Place = { readonly face: Face; readonly rooms: readonly Room[] };

/** A text with the ways to break it into lines, and the places it may go to, best first. */
export type Wish = {
  readonly breaks: readonly (readonly string[])[];
  readonly places: readonly Place[];
};

const BOW = 0.1; // how far a letter's bow may be flattened, as a share of the stroke: finer than a nozzle draws
const OVER_FACE = 1; // mm a letter's cutter goes on in free air, so that no skin stays
const MARGIN = 1; // mm kept between ink and the edge of a room, or other ink

/**
 * Sets each text into the first of its places where it fits clear of the texts before it, as large
 * as it can be there (up to the set-up's height); the first of equal rooms wins. Texts that would be
 * smaller than the least height everywhere are left out and listed.
 */
export function placed(wishes: readonly Wish[], letters: Letters) {
  const sunk: Sunk[] = [];
  const leftOut: string[] = [];
  for (const { breaks, places } of wishes) {
    const set = breaks.map((lines) => ({ lines, unit: boxOf(inkOf(lines, 1).flat()) }));
    const best = places
      .map((place) => largest(set, place, sunk, letters))
      .find((fit) => fit !== null);
    if (best) sunk.push(best);
    else leftOut.push(breaks[0].join(' '));
  }
  return { sunk, leftOut };
}

function largest(
  set: readonly Text[],
  { face, rooms }: Place,
  sunk: readonly Sunk[],
  letters: Letters,
): Sunk | null {
  return rooms
    .flatMap((room) => set.map((text) => fitted(text, face, room, letters)))
    .filter((fit): fit is Sunk => fit !== null && sunk.every((s) => clearOf(s, fit)))
    .reduce<Sunk | null>((a, b) => (a && a.heightMm >= b.heightMm ? a : b), null);
}

type Text = { readonly lines: readonly string[]; readonly unit: Box };

function fitted({ lines, unit }: Text, face: Face, room: Room, letters: Letters): Sunk | null {
  const [x0, y0, x1, y1] = unit;
  const wide = room.right - room.left - 2 * MARGIN - letters.strokeMm;
  const high = room.top - room.bottom - 2 * MARGIN - letters.strokeMm;
  const heightMm = Math.min(letters.heightMm, wide / (x1 - x0), high / (y1 - y0));
  if (!(heightMm >= letters.leastHeightMm)) return null;
  const [halfWide, halfHigh] = [x1 - x0, y1 - y0].map((d) => (d * heightMm + letters.strokeMm) / 2);
  const [x, y] = [(room.left + room.right) / 2, (room.bottom + room.top) / 2];
  const box = { left: x - halfWide, bottom: y - halfHigh, right: x + halfWide, top: y + halfHigh };
  return { face, lines, text: lines.join(' '), heightMm, depthMm: letters.depthMm, box };
}

function clearOf(a: Sunk, b: Sunk): boolean {
  if (a.face.name !== b.face.name) return true;
  return (
    a.box.right + MARGIN <= b.box.left ||
    b.box.right + MARGIN <= a.box.left ||
    a.box.top + MARGIN <= b.box.bottom ||
    b.box.top + MARGIN <= a.box.bottom
  );
}

const inkOf = (lines: readonly string[], heightMm: number) => centeredLines(lines, { heightMm });

/** What to cut away for the letters: one cutter a face. */
export function grooves(sunk: readonly Sunk[], letters: Letters): readonly Csg[] {
  const faces = [...new Map(sunk.map((s) => [s.face.name, s.face])).values()];
  return faces.map((face) => groove(face, sunk, letters));
}

function groove(face: Face, sunk: readonly Sunk[], { strokeMm, depthMm }: Letters): Csg {
  const here = sunk.filter((s) => s.face.name === face.name);
  const lines = here.flatMap(({ lines, heightMm, box }) => {
    const ink = inkOf(lines, heightMm);
    const [x0, y0, x1, y1] = boxOf(ink.flat());
    const [dx, dy] = [(box.left + box.right - x0 - x1) / 2, (box.bottom + box.top - y0 - y1) / 2];
    return ink.map((stroke) =>
      thinnedLine(stroke, BOW * strokeMm).map(([x, y]): Point2 => [x + dx, y + dy]),
    );
  });
  const { right, up, out, origin } = face;
  return movedBy(placement(right, up, out, origin), {
    kind: 'strokes',
    lines,
    width: strokeMm,
    fromZ: -depthMm,
    toZ: OVER_FACE,
  });
}
