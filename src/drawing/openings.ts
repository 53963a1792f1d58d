/** Where a template can have its holes: nominal circles, for the kerf stage to turn into cuts. */
import type { Blank } from '../blank/blank.js';
import { fromUpright, uprightMouth } from '../blank/hole.js';
import type { Circle } from '../geometry/arcpath.js';
import { insideRing, ringBox } from '../geometry/ring.js';
import type { Point2 } from '../geometry/vec.js';
import { partsInside } from './parts.js';
import { isFree, type Wall, walled } from './room.js';

/** Sizes of a template's holes; 0 for a hole that is not wanted. */
export type OpeningSizes = {
  readonly pencilDiameterMm: number;
  readonly hangDiameterMm: number;
  /** Sheet to leave between a hole and any other edge. */
  readonly webMm: number;
};

const STEP_MM = 0.5;

export type TemplateOpenings = {
  /** One for each ballast hole of the blank, in its order; null where there is no room for one. */
  readonly pencils: readonly (Circle | null)[];
  /** Null when the template is too slender for it. */
  readonly hangUp: Circle | null;
};

/**
 * A pencil hole on the axis of each ballast hole, at half its depth or as near to that as the sheet
 * to leave around it allows, and a hole to hang the template up by, as far aft as fits. Searched in
 * steps of 0.5 mm.
 */
export function templateOpenings(
  blank: Blank,
  { pencilDiameterMm, hangDiameterMm, webMm }: OpeningSizes,
): TemplateOpenings {
  const outline = blank.outlineRing;
  const walls = walled(outline, true, webMm);
  const [minX, minY, maxX, maxY] = ringBox(outline);
  const pencils: (Circle | null)[] = [];
  const hole = (at: Point2, diameterMm: number): Circle | null => {
    if (diameterMm === 0 || !insideRing(at, outline)) return null;
    const made = pencils.flatMap((p) => (p ? [around(p, webMm)] : []));
    const circle = { center: at, radius: diameterMm / 2 };
    return hasRoom(circle, [...walls, ...made]) ? circle : null;
  };
  for (const drilled of blank.holes) {
    const [place, mouth] = uprightMouth(drilled);
    const heights = outwardFrom(mouth + drilled.depthMm / 2, minY, maxY);
    pencils.push(first(heights, (s) => hole(fromUpright(drilled, [place, s]), pencilDiameterMm)));
  }
  const middles = fromTail(minX, maxX).flatMap((x): Point2[] => {
    const wood = partsInside(
      [
        [x, minY - 1],
        [x, maxY + 1],
      ],
      outline,
    );
    return wood.map(([low, high]) => [x, (low[1] + high[1]) / 2]);
  });
  return { pencils, hangUp: first(middles, (at) => hole(at, hangDiameterMm)) };
}

const around = ({ center, radius }: Circle, webMm: number): Wall => ({
  from: center,
  to: center,
  room: radius + webMm,
});

const hasRoom = ({ center: [x, y], radius }: Circle, walls: readonly Wall[]): boolean =>
  isFree(
    [x, y, x, y],
    walls.map((wall) => ({ ...wall, room: wall.room + radius })),
  );

/** The first that gives something, or null. */
function first<T, R>(list: readonly T[], make: (item: T) => R | null): R | null {
  for (const item of list) {
    const made = make(item);
    if (made !== null) return made;
  }
  return null;
}

/** Heights along an axis from the wanted one outward, alternately up and down, as far as the blank is high. */
function outwardFrom(wanted: number, min: number, max: number): number[] {
  const steps = Math.ceil((max - min) / STEP_MM);
  return Array.from({ length: 2 * steps + 1 }, (_, i) => {
    const k = Math.ceil(i / 2);
    return wanted + (i % 2 === 1 ? k : -k) * STEP_MM;
  });
}

const fromTail = (minX: number, maxX: number): number[] =>
  Array.from({ length: Math.floor((maxX - minX) / STEP_MM) }, (_, i) => maxX - i * STEP_MM);
