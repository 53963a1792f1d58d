import { expect, test } from 'vitest';
import { pathPoints } from '../../src/geometry/arcpath.js';
import { ringBox } from '../../src/geometry/ring.js';
import { distance } from '../../src/geometry/vec.js';
import { bentWire } from '../../src/wire/bent.js';
import { pegBoard } from '../../src/wire/pegs.js';

const { wire } = bentWire({
  diameterMm: 1.2,
  bendInsideMm: 1.2,
  loopMm: 3,
  twistTurns: 3,
  holdMm: 25,
  nose: { at: [0, 0.5], eye: true },
  tail: { at: [125, 0], eye: true },
  hangers: [[58, -11]],
});
if (!wire) throw new Error('it can be bent');
const board = pegBoard(wire, { marginMm: 6 });

test('a peg at every bend but those of a degree, in the order of the wire', () => {
  expect(board.pegs.map((p) => [p.kind, p.eye])).toEqual([
    ['eye', 'tow'],
    ['neck', 'tow'],
    ['bend', 0],
    ['neck', 0],
    ['eye', 0],
    ['neck', 0],
    ['bend', 0],
    ['neck', 'tail'],
    ['eye', 'tail'],
  ]);
  expect(board.pegs[0].turnDeg).toBeCloseTo(-360, 9);
  // A hanger takes the wire from a level run to a level run.
  const middle = board.pegs.slice(2, 7).reduce((sum, p) => sum + p.turnDeg, 0);
  expect(Math.abs(middle)).toBeLessThan(1e-6);
});

test('pegs fill their bends: half a loop’s width in an eye, the bend radius elsewhere', () => {
  for (const { kind, radiusMm } of board.pegs)
    expect(radiusMm).toBeCloseTo(kind === 'eye' ? 1.5 : 1.2, 9);
  expect(board.pegs[0].center[0]).toBeCloseTo(-1.5 - 1.2, 9);
  expect(board.pegs[4].center[1]).toBeCloseTo(-11 - 2.7, 9);
});

test('the wire touches every peg and lies on none', () => {
  const points = pathPoints(wire.path, 1e-4);
  for (const { center, radiusMm } of board.pegs) {
    const near = Math.min(...points.map((p) => distance(p, center)));
    expect(near).toBeCloseTo(radiusMm + 0.6, 3);
  }
});

test('the board reaches beyond all of it by the margin', () => {
  const [minX, minZ, maxX, maxZ] = ringBox(board.outline);
  expect(minX).toBeCloseTo(-1.5 - 1.2 - 1.5 - 1.2 - 6, 6);
  expect(maxX).toBeCloseTo(125 + 5.4 + 6, 6);
  expect(minZ).toBeCloseTo(-11 - 5.4 - 6, 6);
  expect(maxZ).toBeGreaterThan(2 + 6);
});
