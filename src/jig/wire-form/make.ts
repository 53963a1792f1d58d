/**
 * The wire form: a board with a peg, or a bore for a steel pin, at every bend of the through-wire, as
 * thick as the bend is round inside, and a shallow groove that shows the way. The wire is bent from
 * the tow eye to the tail eye, cut to the length that stands on the board. Printed flat.
 *
 * Jig coordinates: X aft, Y up in the lure's side view, Z toward the maker.
 */

import { pathPoints } from '../../geometry/arcpath.js';
import { asRegion, union } from '../../geometry/clip.js';
import { meshBox, meshVolume } from '../../geometry/mesh.js';
import { circleRing, movedRing, type Region, type Ring, ringBox } from '../../geometry/ring.js';
import { distance, type Point2 } from '../../geometry/vec.js';
import { bentFor } from '../../mass/wire-bent.js';
import { type Csg, extruded, OVERSHOOT, segmentsAround } from '../../solid/csg.js';
import { evaluate } from '../../solid/evaluate.js';
import type { SolidKernel } from '../../solid/kernel.js';
import { placement } from '../../solid/placement.js';
import type { BentWire } from '../../wire/bent.js';
import { type Peg, pegBoard } from '../../wire/pegs.js';
import type { Jig, JigOutcome, JigProblem, JigWork } from '../jig.js';
import { grooves } from '../letters.js';
import { told } from '../wording.js';
import { formLetters } from './letters.js';
import type { WireFormSetup } from './setup.js';

const ROUND = 0.01; // mm the corners of pegs and bores stand beside their circle
const GROOVE_CHORD = 0.1; // mm the groove may be flattened: it only shows the way

/** A peg as it stands on the board. */
export type FormPeg = Peg & { readonly isPrinted: boolean };

export type WireForm = Jig & {
  readonly kind: 'wire-form';
  readonly pegs: readonly FormPeg[];
  readonly wireMm: number;
  readonly lengthToCutMm: number;
};

/** None for a pattern without a through-wire. */
export function wireForm(
  kernel: SolidKernel,
  { pattern, body, blank, materials }: JigWork,
  setup: WireFormSetup,
): JigOutcome<WireForm> {
  const wire = bentFor(pattern, body.shape, materials)?.wire;
  if (!wire) return { jigs: [], problems: [] };
  const board = pegBoard(wire, { marginMm: setup.marginMm });
  const [left, bottom] = ringBox(board.outline);
  const pegs = board.pegs.map(
    (peg): FormPeg => ({ ...peg, isPrinted: 2 * peg.radiusMm >= setup.leastPrintedPegMm }),
  );
  const problems = tooNear(pegs, setup);
  if (problems.length > 0) return { jigs: [], problems };
  const flat = (r: Ring): Ring => movedRing({ turnDeg: 0, move: [-left, -bottom] }, r);
  const onBoard = ({ center: [x, z] }: Peg): Point2 => [x - left, z - bottom];
  const area = flat(board.outline);
  const way = flatWay(wire, [left, bottom]);
  const { sunk, leftOut } = formLetters(blank, wire, setup, { area, way, pegs: pegs.map(onBoard) });
  const csg = formCsg({ area, pegs, onBoard, way, wire, setup, sunk });
  const mesh = evaluate(kernel, csg);
  const { boardMm } = setup;
  const half = wire.spec.diameterMm / 2;
  const bores = pegs.filter((p) => !p.isPrinted);
  const jig: WireForm = {
    kind: 'wire-form',
    pattern: blank.name,
    part: '',
    csg,
    mesh,
    jigToBlank: placement([1, 0, 0], [0, 0, 1], [0, -1, 0], [left, boardMm + half, bottom]),
    workpiece: null,
    seatMm: 0,
    fit: null,
    freeDirection: null,
    leastWallMm: Math.min(boardMm, setup.webMm + setup.letters.depthMm),
    keepWholeMm: pegs.map((peg): [number, number] => {
      const [x] = onBoard(peg);
      return [x - peg.radiusMm - setup.webMm, x + peg.radiusMm + setup.webMm];
    }),
    sizeMm: meshBox(mesh)[1],
    volumeMm3: meshVolume(mesh),
    openings: bores.length,
    letters: sunk,
    lettersLeftOut: leftOut,
    words: wordsOf(wire, pegs),
    pegs,
    wireMm: wire.spec.diameterMm,
    lengthToCutMm: wire.lengthToCutMm,
  };
  return { jigs: [jig], problems: [] };
}

/** Two steel pins can not stand in one place, nor with a skin of plastic between them: the nearest two are told. */
function tooNear(pegs: readonly FormPeg[], { webMm, pinClearanceMm }: WireFormSetup): JigProblem[] {
  const pairs = pegs.flatMap((a, i) =>
    pegs
      .slice(i + 1)
      .filter((b) => !(a.isPrinted && b.isPrinted))
      .map((b) => ({
        stationMm: a.center[0],
        nextStationMm: b.center[0],
        betweenMm: distance(a.center, b.center) - a.radiusMm - b.radiusMm - pinClearanceMm,
      })),
  );
  const near = pairs.filter(({ betweenMm }) => betweenMm < webMm);
  if (near.length === 0) return [];
  const nearest = near.reduce((x, y) => (y.betweenMm < x.betweenMm ? y : x));
  return [{ code: 'jig-pins-too-close', facts: { ...nearest, webMm } }];
}

const flatWay = ({ path }: BentWire, [left, bottom]: Point2): Point2[] => {
  const points = pathPoints(path, GROOVE_CHORD);
  return points.map(([x, z]): Point2 => [x - left, z - bottom]);
};

function formCsg(given: {
  readonly area: Ring;
  readonly pegs: readonly FormPeg[];
  readonly onBoard: (peg: Peg) => Point2;
  readonly way: readonly Point2[];
  readonly wire: BentWire;
  readonly setup: WireFormSetup;
  readonly sunk: Parameters<typeof grooves>[0];
}): Csg {
  const { area, pegs, onBoard, way, wire, setup, sunk } = given;
  const { boardMm, grooveMm, pegHeightMm, pinClearanceMm } = setup;
  const printed = pegs
    .filter((p) => p.isPrinted)
    .map((p) => round(onBoard(p), p.radiusMm, 'inside'));
  const bores = pegs
    .filter((p) => !p.isPrinted)
    .map((p) => round(onBoard(p), p.radiusMm + pinClearanceMm / 2, 'outside'));
  const board: Csg = {
    kind: 'subtract',
    from: extruded([asRegion(area)], 0, boardMm),
    parts: [
      ...grooves(sunk, setup.letters),
      {
        kind: 'strokes',
        lines: [way],
        width: wire.spec.diameterMm,
        fromZ: boardMm - grooveMm,
        toZ: boardMm + OVERSHOOT,
      },
      ...(bores.length > 0 ? [extruded(bores, -OVERSHOOT, boardMm + OVERSHOOT)] : []),
    ],
  };
  if (printed.length === 0) return board;
  // From well inside the board, under the groove.
  const standing = extruded(union(printed), boardMm / 2, boardMm + pegHeightMm);
  return { kind: 'union', parts: [board, standing] };
}

/** A peg's polygon lies inside its circle, so that no bend comes out wider; a bore's outside. */
function round(center: Point2, radius: number, side: 'inside' | 'outside'): Region {
  const segments = segmentsAround(radius, ROUND);
  return asRegion(circleRing(center, radius, { segments, circumscribed: side === 'outside' }));
}

function wordsOf(wire: BentWire, pegs: readonly FormPeg[]): string[] {
  const pins = pegs.filter((p) => !p.isPrinted).map((p) => told(2 * p.radiusMm));
  const sizes = [...new Set(pins)].map((d) => `${pins.filter((p) => p === d).length} of ${d} mm`);
  const turns = wire.spec.twistTurns;
  return [
    `Cut ${Math.ceil(wire.lengthToCutMm)} mm of ${told(wire.spec.diameterMm)} mm wire.`,
    ...(pins.length > 0 ? [`Set steel pins in the bores: ${sizes.join(', ')}.`] : []),
    'Bend from the tow eye to the tail eye, along the groove, tight round every pin.',
    ...(turns > 0 ? [`Wind the end of each end eye ${turns} times round the wire.`] : []),
    'Wear eye protection: cut ends fly and spring. Local rules come first.',
  ];
}
