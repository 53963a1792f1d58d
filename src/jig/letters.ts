/**
 * Letters in a flat face of a jig: how large they can be, where they go, what is cut away. They are
 * sunk; what must be seen and felt is raised: it stands in a sunken panel, level with the face, so that
 * nothing rests or rubs on it.
 */
import { asRegion, subtract } from '../geometry/clip.js';
import { centeredLines } from '../geometry/lettering.js';
import { rectRing } from '../geometry/ring.js';
import { thinnedLine } from '../geometry/thin.js';
import { type Box, boxOf, type Point2, type Point3 } from '../geometry/vec.js';
import { type Csg, extruded, movedBy, OVERSHOOT, strokeAreas } from '../solid/csg.js';
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

/** Lines of text on a face, centered in `box`, the room their ink takes (raised: their panel). */
export type Sunk = {
  readonly face: Face;
  readonly lines: readonly string[];
  /** The lines in one. */
  readonly text: string;
  readonly heightMm: number;
  readonly depthMm: number;
  readonly box: Room;
  /** The letters stand in a panel, which is what is sunk. */
  readonly raised?: true;
};

/** Rooms on one face, none better than another. */
export type Place = { readonly face: Face; readonly rooms: readonly Room[] };

/** A text with the ways to break it into lines, and the places it may go to, best first. */
export type Wish = {
  readonly breaks: readonly (readonly string[])[];
  readonly places: readonly Place[];
  readonly raised?: true;
};

/** Raised in every jig that is printed: a plastic jig is no mold, and melts under poured metal. */
export const NO_POURING: readonly (readonly string[])[] = [
  ['NEVER POUR METAL HERE'],
  ['NEVER POUR', 'METAL HERE'],
  ['NEVER', 'POUR', 'METAL', 'HERE'],
];

const BOW = 0.1; // how far a letter's bow may be flattened, as a share of the stroke: finer than a nozzle draws
const MARGIN = 1; // mm kept between ink and the edge of a room, or other ink
const PANEL = 1; // mm a panel goes on beyond its raised letters

/**
 * Sets each text into the first of its places where it fits at full height clear of the texts before
 * it; where it does not, into the one where it can be largest; the first of equal rooms wins. Texts
 * that would be smaller than the least height everywhere are left out and listed.
 */
export function placed(wishes: readonly Wish[], letters: Letters) {
  const sunk: Sunk[] = [];
  const leftOut: string[] = [];
  for (const { breaks, places, raised } of wishes) {
    const set = breaks.map((lines) => ({ lines, unit: boxOf(inkOf(lines, 1).flat()), raised }));
    let best: Sunk | null = null;
    for (const place of places) {
      if (best && best.heightMm >= letters.heightMm) break;
      best = larger(best, largest(set, place, sunk, letters));
    }
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
    .reduce<Sunk | null>(larger, null);
}

const larger = (a: Sunk | null, b: Sunk | null): Sunk | null =>
  a && (!b || a.heightMm >= b.heightMm) ? a : b;

type Text = {
  readonly lines: readonly string[];
  readonly unit: Box;
  readonly raised?: true | undefined;
};

function fitted(text: Text, face: Face, room: Room, letters: Letters): Sunk | null {
  const { lines, unit, raised } = text;
  const [x0, y0, x1, y1] = unit;
  const beyond = letters.strokeMm / 2 + (raised ? PANEL : 0);
  const wide = room.right - room.left - 2 * (MARGIN + beyond);
  const high = room.top - room.bottom - 2 * (MARGIN + beyond);
  const heightMm = Math.min(letters.heightMm, wide / (x1 - x0), high / (y1 - y0));
  if (!(heightMm >= letters.leastHeightMm)) return null;
  const [halfWide, halfHigh] = [x1 - x0, y1 - y0].map((d) => (d * heightMm) / 2 + beyond);
  const [x, y] = [(room.left + room.right) / 2, (room.bottom + room.top) / 2];
  const box = { left: x - halfWide, bottom: y - halfHigh, right: x + halfWide, top: y + halfHigh };
  return {
    face,
    lines,
    text: lines.join(' '),
    heightMm,
    depthMm: letters.depthMm,
    box,
    ...(raised ? { raised } : {}),
  };
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

/** What to cut away for the letters: one cutter a face for those that are sunk, and one a panel. */
export function grooves(sunk: readonly Sunk[], letters: Letters): readonly Csg[] {
  const flat = sunk.filter((s) => !s.raised);
  const faces = [...new Map(flat.map((s) => [s.face.name, s.face])).values()];
  return [
    ...faces.map((face) => groove(face, flat, letters)),
    ...sunk.filter((s) => s.raised).map((s) => panel(s, letters)),
  ];
}

function groove(face: Face, sunk: readonly Sunk[], { strokeMm, depthMm }: Letters): Csg {
  const lines = sunk
    .filter((s) => s.face.name === face.name)
    .flatMap((s) => strokesOf(s, strokeMm));
  return onFace(face, {
    kind: 'strokes',
    lines,
    width: strokeMm,
    fromZ: -depthMm,
    toZ: OVERSHOOT,
  });
}

/** The panel round raised letters: the letters themselves stay. */
function panel(text: Sunk, { strokeMm, depthMm }: Letters): Csg {
  const { left, bottom, right, top } = text.box;
  const whole = [asRegion(rectRing(left, bottom, right, top))];
  const ink = strokeAreas(strokesOf(text, strokeMm), strokeMm);
  return onFace(text.face, extruded(subtract(whole, ink), -depthMm, OVERSHOOT));
}

const onFace = ({ right, up, out, origin }: Face, part: Csg): Csg =>
  movedBy(placement(right, up, out, origin), part);

/** Strokes of a text where it stands on its face. */
function strokesOf({ lines, heightMm, box }: Sunk, strokeMm: number): Point2[][] {
  const ink = inkOf(lines, heightMm);
  const [x0, y0, x1, y1] = boxOf(ink.flat());
  const [dx, dy] = [(box.left + box.right - x0 - x1) / 2, (box.bottom + box.top - y0 - y1) / 2];
  return ink.map((stroke) =>
    thinnedLine(stroke, BOW * strokeMm).map(([x, y]): Point2 => [x + dx, y + dy]),
  );
}
