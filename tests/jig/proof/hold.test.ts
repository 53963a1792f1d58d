/** Wrench closure against closed forms, and on jigs with a wall taken away. */
import { describe, expect, test } from 'vitest';
import type { Point3 } from '../../../src/geometry/vec.js';
import { checkJig } from '../../../src/jig/check.js';
import { drillStopJig } from '../../../src/jig/drill-stop/make.js';
import type { Fit, Press, Tool } from '../../../src/jig/fit.js';
import type { Jig, JigWork } from '../../../src/jig/jig.js';
import { lipSlotGuide } from '../../../src/jig/lip-slot-guide/make.js';
import type { Faced } from '../../../src/jig/proof/clearance.js';
import { outermost } from '../../../src/jig/proof/contacts.js';
import { type Held, holds } from '../../../src/jig/proof/hold.js';
import { sideOf } from '../../../src/jig/proof/side.js';
import { holdWords } from '../../../src/jig/proof/words.js';
import { makeJigs } from '../../../src/jig/set.js';
import type { Csg } from '../../../src/solid/csg.js';
import { evaluate } from '../../../src/solid/evaluate.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { box } from '../../solid/shapes.js';
import { BODIES, lureBlank } from '../lure-blanks.js';
import { randomLure } from '../random-lures.js';
import { drillStopSetup, lipSlotSetup, printer } from '../set-ups.js';

/** Places at the corners of a square of half side 10 about the origin, at a distance along the normal. */
function face(normal: Point3, afterPlayMm = 0): Faced[] {
  const k = normal.findIndex((n) => n !== 0);
  return [-10, 10].flatMap((a) =>
    [-10, 10].map((b): Faced => {
      const at = [0, 0, 0];
      at[k] = 10 * normal[k];
      at[(k + 1) % 3] = a;
      at[(k + 2) % 3] = b;
      return { at: [at[0], at[1], at[2]], normal, gapMm: 0.05 + afterPlayMm, afterPlayMm };
    }),
  );
}
const drillAlong = (direction: Point3, originMm: Point3 = [0, 0, 0]): Tool => ({
  kind: 'drill',
  called: 'the bit',
  axis: { originMm, direction },
  widthMm: 8,
});
const taking = (tools: readonly Tool[], pressed: readonly Press[] = []): Fit => ({
  gapMm: [0.05, 0.05],
  playMm: [],
  tools,
  pressed,
});
const clamp: Press = { called: 'down', at: [0, 0, 10], direction: [0, 0, -1] };
const of = (held: readonly Held[], load: string) => held.filter((h) => h.load === load);

describe('a block of 20 mm in a corner', () => {
  const corner = [...face([-1, 0, 0]), ...face([0, -1, 0]), ...face([0, 0, -1])];

  test('a push toward the walls is held by them, away from them it is not', () => {
    const held = holds(corner, taking([drillAlong([0, 0, -1])]), sideOf);
    expect(of(held, 'push')).toEqual([
      expect.objectContaining({ held: true, takenAt: ['belly'], afterPlayMm: 0, hands: [] }),
    ]);
    expect(of(held, 'pull')[0].held).toBe(false);
  });

  test('away from a wall a hand holds it newton for newton', () => {
    const held = holds(corner, taking([drillAlong([0, 0, -1])], [clamp]), sideOf);
    expect(of(held, 'pull')[0].hands).toEqual([{ called: 'down', ratio: expect.closeTo(1, 9) }]);
  });

  test('or a wall on the other side, once the play is used up', () => {
    const lid = face([0, 0, 1], 0.4);
    const [pull] = of(holds([...corner, ...lid], taking([drillAlong([0, 0, -1])]), sideOf), 'pull');
    expect(pull).toEqual(
      expect.objectContaining({ held: true, takenAt: ['back'], afterPlayMm: 0.4, hands: [] }),
    );
  });

  test('a push beyond the edge of the floor tips it', () => {
    const floor = face([0, 0, -1]);
    const push = (x: number) =>
      of(holds(floor, taking([drillAlong([0, 0, -1], [x, 0, 0])]), sideOf), 'push')[0].held;
    expect(push(9.9)).toBe(true);
    expect(push(10.1)).toBe(false);
  });
});

test('a couple of two points: a twist of 1 N·mm over a half width of 10 mm takes 0.1 N of clamp', () => {
  const held = holds(face([0, 0, -1]), taking([drillAlong([0, 1, 0])], [clamp]), sideOf);
  for (const twist of of(held, 'twist')) {
    expect(twist.hands).toEqual([{ called: 'down', ratio: expect.closeTo(0.1, 9) }]);
  }
  expect(of(held, 'push')[0].held).toBe(false);
});

test('a twist about a square to the floor finds no hold without walls, whatever the clamp', () => {
  const held = holds(face([0, 0, -1]), taking([drillAlong([0, 0, -1])], [clamp]), sideOf);
  expect(of(held, 'twist').map((h) => h.held)).toEqual([false, false]);
});

test('a blade is held along its stroke, in its feed and to both sides', () => {
  const saw: Tool = {
    ...drillAlong([0, 0, -1]),
    kind: 'saw',
    called: 'the saw',
    stroke: [0, 1, 0],
  };
  const walls = ([-1, 1] as const).flatMap((s) => [...face([s, 0, 0]), ...face([0, s, 0])]);
  const held = holds([...walls, ...face([0, 0, -1])], taking([saw]), sideOf);
  expect(held.map((h) => h.load)).toEqual(['stroke', 'stroke', 'feed', 'lean', 'lean']);
  expect(held.every((h) => h.held)).toBe(true);
});

test('of many places on a face the outermost say as much', () => {
  const many = Array.from({ length: 400 }, (_, i): Faced => {
    const at: Point3 = [(i % 20) - 9.5, Math.floor(i / 20) - 9.5, 0];
    return { at, normal: [0, 0, -1], gapMm: 0.05, afterPlayMm: 0 };
  });
  const few = outermost(many);
  expect(few.length).toBeLessThanOrEqual(26);
  for (const corner of [0, 19, 380, 399]) expect(few).toContain(many[corner]);
});

describe('the jigs', async () => {
  const kernel = await loadKernel();
  const blank = lureBlank({ ...BODIES[1], lipAngleDeg: 60 });
  const [drill] = drillStopJig(kernel, blank, { setup: drillStopSetup, printer }).jigs;
  const [guide] = lipSlotGuide(kernel, { blank }, { setup: lipSlotSetup, printer }).jigs;
  const cut = (jig: Jig, part: Csg): Jig => ({
    ...jig,
    mesh: evaluate(kernel, { kind: 'subtract', from: jig.csg, parts: [part] }),
  });
  const loose = (jig: Jig) => {
    const { flaws, held } = checkJig(kernel, jig, { blank });
    const loads = held.filter((h) => !h.held).map((h) => h.load);
    expect(flaws.some((f) => f.code === 'load-not-held')).toBe(loads.length > 0);
    return [...new Set(loads)];
  };
  const [length, width, height] = drill.sizeMm;

  test('hold every load, and say how', () => {
    expect(loose(drill)).toEqual([]);
    expect(loose(guide)).toEqual([]);
    const [words] = holdWords(checkJig(kernel, drill, { blank }).held);
    expect(words).toMatch(
      /^The bit at 35 mm: push is taken at the back.*; pull is taken at the belly.*after 0\.[5-7]\d mm of play; twist is taken at the starboard side, pressed to the floor with 0\.0\d N for each N·mm\.$/,
    );
  });

  test('not without the base, the belly wall or the floor', () => {
    const above = drillStopSetup.floorMm;
    expect(loose(cut(drill, box(length + 2, 25, height, [-1, -1, above])))).toContain('push');
    const belly = box(length + 2, 40, height, [-1, width - 30, above]);
    expect(loose(cut(drill, belly))).toContain('pull');
    // Without the floor nose and tail wall take the twist, aslant.
    const bottomless = cut(drill, box(length + 2, width + 2, above + 1.2, [-1, -1, -1]));
    const twists = of(checkJig(kernel, bottomless, { blank }).held, 'twist');
    expect(twists.flatMap((t) => t.takenAt)).not.toContain('starboard side');
  });

  test('the saw’s guide not without a cheek', () => {
    const [long, wide, tall] = guide.sizeMm;
    // All that is to starboard of the blank.
    const cheek = box(long + 2, (wide - blank.thicknessMm) / 2 + 1, tall + 2, [-1, -1, -1]);
    expect(loose(cut(guide, cheek))).toContain('stroke');
  });

  test('a saddle of five millimeters without any play is told of, with the tool and its load', () => {
    const { blank: long, lipSlotGuide: usual } = randomLure(36);
    const short = { reachMm: 5, cheekAboveMm: 3, cheekMm: 2, wallMm: 1.5, stopHeightMm: 40 };
    const setup = { ...usual, ...short, sideClearanceMm: 0.01, reliefMm: 0 };
    const { problems } = makeJigs(kernel, { blank: long } as JigWork, {
      asked: true,
      printer,
      byKind: { 'lip-slot-guide': setup },
    });
    const told = problems.find((p) => p.code === 'jig-load-not-held');
    expect(told?.facts).toMatchObject({ tool: 'the saw', load: 'lean' });
  });
});
