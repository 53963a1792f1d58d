/** Blanks and cuts made up for tests: a lure-like one of chords, and one whose every size is known. */
import type { BallastHole, Blank } from '../../src/blank/blank.js';
import { nominal } from '../../src/blank/nominal.js';
import type { LipSlot } from '../../src/blank/slot.js';
import type { ReadyCut } from '../../src/drawing/drawing.js';
import { slotPolygon } from '../../src/drawing/marks.js';
import { type ArcPath, type Circle, flatten, polyline } from '../../src/geometry/arcpath.js';
import { asRegion, offset, subtract } from '../../src/geometry/clip.js';
import { type Ring, ring } from '../../src/geometry/ring.js';
import type { Point2 } from '../../src/geometry/vec.js';

/** y = ±c ξ^½ (1 − ξ)^¾ grown by an allowance of 1.5 mm, with a lip slot, two holes and two hangers. */
export function lureBlank(name = 'skerry', lengthMm = 110, heightMm = 26): Blank {
  // ξ^½ (1 − ξ)^¾ is greatest at ξ = 0.4: 0.4313
  const c = heightMm / 2 / (0.4 ** 0.5 * 0.6 ** 0.75);
  const shares = Array.from({ length: 81 }, (_, i) => (1 - Math.cos((Math.PI * i) / 80)) / 2);
  const half = shares.map((s): Point2 => [lengthMm * s, c * s ** 0.5 * (1 - s) ** 0.75]);
  const finished = ring([...half.map(([x, y]): Point2 => [x, -y]), ...half.reverse()]);
  const profileRing = offset([asRegion(finished)], 1.5)[0].outer;
  const slot: LipSlot = {
    angleDeg: 50,
    mouth: [0.06 * lengthMm, -0.27 * heightMm],
    end: [0.06 * lengthMm + 8 * 0.642788, -0.27 * heightMm + 8 * 0.766044],
    outward: [-0.642788, -0.766044],
    widthMm: 1.6,
    depthMm: 8,
  };
  const outlineRing = subtract([asRegion(profileRing)], [asRegion(ring(slotPolygon(slot)))])[0]
    .outer;
  return {
    name,
    version: '1.3',
    lengthMm,
    thicknessMm: 22,
    outline: nominal(polyline(outlineRing, true)),
    profile: nominal(polyline(profileRing, true)),
    outlineRing,
    profileRing,
    slot,
    holes: [holeAt(0.32 * lengthMm, profileRing), holeAt(0.62 * lengthMm, profileRing, 6, 7)],
    hangers: [{ stationMm: 0.47 * lengthMm }, { stationMm: 0.85 * lengthMm }],
  };
}

/** A stadium 100 long and 20 high, ends round (two arcs of radius 10, two lines), nose end at x = 0. */
export const STADIUM: ArcPath = {
  closed: true,
  vertices: [
    { x: 10, y: -10, bulge: 0 },
    { x: 90, y: -10, bulge: 1 },
    { x: 90, y: 10, bulge: 0 },
    { x: 10, y: 10, bulge: 1 },
  ],
};

/** A blank with the stadium for an outline, one hole 8 wide and 12 deep at station 30, one hanger at 50. */
export function stadiumBlank(): Blank {
  const outlineRing = flatten(STADIUM, 0.005);
  return {
    name: 'stadium',
    version: '1',
    lengthMm: 100,
    thicknessMm: 20,
    outline: nominal(STADIUM),
    profile: nominal(STADIUM),
    outlineRing,
    profileRing: outlineRing,
    slot: null,
    holes: [
      {
        stationMm: 30,
        tiltDeg: 0,
        diameterMm: 8,
        depthMm: 12,
        metal: 'lead',
        pointAngleDeg: 118,
        pour: 'topped-up',
        fillMm: null,
        weight: null,
        bellyMm: -10,
      },
    ],
    hangers: [{ stationMm: 50 }],
  };
}

export const outlineCut = (path: ArcPath): ReadyCut => ({
  layer: 'CUT_OUTSIDE',
  shape: { kind: 'path', path },
});

export const holeCut = (circle: Circle): ReadyCut => ({
  layer: 'CUT_INSIDE',
  shape: { kind: 'circle', circle },
});

function holeAt(stationMm: number, outline: Ring, diameterMm = 8, depthMm = 14): BallastHole {
  const near = outline.filter(([, y]) => y < 0);
  const [, bellyMm] = near.reduce((a, b) =>
    Math.abs(a[0] - stationMm) <= Math.abs(b[0] - stationMm) ? a : b,
  );
  return {
    stationMm,
    tiltDeg: 0,
    diameterMm,
    depthMm,
    metal: 'lead',
    pointAngleDeg: 118,
    pour: 'topped-up',
    fillMm: null,
    weight: null,
    bellyMm,
  };
}
