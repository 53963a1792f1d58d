/** Every check must complain about the damage it is there for. */
import { describe, expect, test } from 'vitest';
import { stl } from '../../src/formats/stl.js';
import type { Mesh } from '../../src/geometry/mesh.js';
import { checkJig, checkJigFile, checkPrinted, joined } from '../../src/jig/check.js';
import { ballastBorings } from '../../src/jig/drill-stop/boring.js';
import { checkDrillGuides } from '../../src/jig/drill-stop/check.js';
import { isDrillStop } from '../../src/jig/drill-stop/jig.js';
import { drillStopJig } from '../../src/jig/drill-stop/make.js';
import type { DrillStopSetup } from '../../src/jig/drill-stop/setup.js';
import type { Jig, JigBlank } from '../../src/jig/jig.js';
import { checkSawSlot } from '../../src/jig/lip-slot-guide/check.js';
import type { LipSlotGuide } from '../../src/jig/lip-slot-guide/jig.js';
import { lipSlotGuide } from '../../src/jig/lip-slot-guide/make.js';
import type { LipSlotGuideSetup } from '../../src/jig/lip-slot-guide/setup.js';
import { printed } from '../../src/jig/print.js';
import { type Csg, movedBy } from '../../src/solid/csg.js';
import { evaluate } from '../../src/solid/evaluate.js';
import { loadKernel } from '../../src/solid/kernel.js';
import {
  inverse,
  type Matrix,
  placement,
  pointBy,
  translation,
} from '../../src/solid/placement.js';
import { box } from '../solid/shapes.js';
import { BODIES, lureBlank } from './lure-blanks.js';
import { drillStopSetup, lipSlotSetup, printer } from './set-ups.js';

const kernel = await loadKernel();
type Setups = { readonly drillStop: DrillStopSetup; readonly lipSlotGuide: LipSlotGuideSetup };
const setups: Setups = { drillStop: drillStopSetup, lipSlotGuide: lipSlotSetup };
const blank = lureBlank({ ...BODIES[1], lipAngleDeg: 60 });
const drillOf = (setup: DrillStopSetup) => drillStopJig(kernel, blank, { setup, printer }).jigs[0];
const drill = drillOf(drillStopSetup);
const [guide] = lipSlotGuide(kernel, { blank }, { setup: lipSlotSetup, printer }).jigs;

const check = (jig: Jig, against: JigBlank, { drillStop, lipSlotGuide: lip }: Setups) => {
  const common = checkJig(kernel, jig, { blank: against });
  if (common.flaws.some((f) => f.code === 'mesh-open')) return common;
  const own = isDrillStop(jig)
    ? checkDrillGuides(kernel, jig, ballastBorings(against.holes), drillStop)
    : checkSawSlot(kernel, jig as LipSlotGuide, { blank: against }, lip);
  return joined([common, own]);
};
const codes = (jig: Jig, other: { blank?: JigBlank; setups?: Setups } = {}) => [
  ...new Set(
    check(jig, other.blank ?? blank, other.setups ?? setups)
      .flaws.map((f) => f.code)
      .sort(),
  ),
];

/** The jig printed from another tree. */
const rebuilt = <J extends Jig>(jig: J, change: (csg: Csg) => Csg): J => ({
  ...jig,
  mesh: evaluate(kernel, change(jig.csg)),
});
const product = (m: Matrix, n: Matrix): Matrix =>
  Array.from({ length: 16 }, (_, i) =>
    [0, 1, 2, 3].reduce((sum, k) => sum + m[(i % 4) + 4 * k] * n[k + 4 * Math.floor(i / 4)], 0),
  );
/** Believed to sit elsewhere: the jig's own coordinates moved first. */
const believed = <J extends Jig>(jig: J, move: Matrix): J => ({
  ...jig,
  jigToBlank: product(jig.jigToBlank, move),
});
const turned = (axis: 'X' | 'Y' | 'Z', deg: number, about: readonly number[]): Matrix => {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const turn =
    axis === 'X'
      ? placement([1, 0, 0], [0, c, s], [0, -s, c], [0, 0, 0])
      : axis === 'Y'
        ? placement([c, 0, -s], [0, 1, 0], [s, 0, c], [0, 0, 0])
        : placement([c, s, 0], [-s, c, 0], [0, 0, 1], [0, 0, 0]);
  const [x, y, z] = about;
  return product(product(translation(x, y, z), turn), translation(-x, -y, -z));
};
const without = (n: number) => (csg: Csg) =>
  csg.kind === 'subtract' ? { ...csg, parts: csg.parts.filter((_, i) => i !== n) } : csg;
const withoutFirst = (csg: Csg): Csg =>
  csg.kind === 'union' ? { ...csg, parts: csg.parts.slice(1) } : csg;
/** Cut by one more part. */
const cutBy = (part: Csg) => (csg: Csg) =>
  csg.kind === 'subtract' ? { ...csg, parts: [...csg.parts, part] } : csg;

test('sound jigs pass', () => {
  expect(codes(drill)).toEqual([]);
  expect(codes(guide)).toEqual([]);
});

describe('the solid', () => {
  test('a facet missing', () => {
    const { positions, triangles } = drill.mesh;
    expect(codes({ ...drill, mesh: { positions, triangles: triangles.slice(3) } as Mesh })).toEqual(
      ['mesh-open'],
    );
  });

  test('a loose piece beside it', () => {
    const [x] = drill.sizeMm;
    const crumb = box(3, 3, 3, [x + 1, 0, 0]);
    const two = rebuilt(drill, (csg) => ({ kind: 'union', parts: [csg, crumb] }));
    expect(codes(two)).toContain('not-one-piece');
  });

  test('not resting on the bed, or larger than it', () => {
    const [part] = printed(kernel, drill, drillStopSetup, printer).parts;
    const found = (mesh: Mesh, bed = printer.bed) =>
      checkPrinted({ ...part, mesh }, bed).flaws.map((f) => f.code);
    expect(found(drill.mesh)).toEqual([]);
    expect(found(rebuilt(drill, (csg) => movedBy(translation(0, 0, 1), csg)).mesh)).toEqual([
      'not-on-bed',
    ]);
    expect(found(drill.mesh, { xMm: 60, yMm: 60, zMm: 60 })).toEqual(['off-bed']);
    expect(found(drill.mesh, { xMm: 200, yMm: 200, zMm: 20 })).toEqual(['off-bed']);
  });

  test('walls thinner than asked', () => {
    expect(codes({ ...guide, leastWallMm: 5 })).toContain('wall-thin');
    expect(codes({ ...drill, leastWallMm: 5 })).toContain('wall-thin');
  });

  test('a file that is not the mesh', () => {
    expect(checkJigFile(drill, stl(drill.mesh, 'drill')).flaws).toEqual([]);
    const other = checkJigFile(drill, stl(guide.mesh, 'guide')).flaws;
    expect(other.map((f) => f.code)).toEqual(['file-differs', 'file-differs']);
  });
});

describe('the fit', () => {
  test('a blank thicker or wider than the jig was made for', () => {
    expect(codes(guide, { blank: { ...blank, thicknessMm: 21 } })).toContain('overlaps-blank');
    const fat = lureBlank({ ...BODIES[1], lipAngleDeg: 60, allowanceMm: 1.7 });
    expect(codes(drill, { blank: fat })).toContain('overlaps-blank');
    expect(codes(guide, { blank: fat })).toContain('overlaps-blank');
  });

  test('a way out that is blocked', () => {
    expect(codes({ ...drill, freeDirection: [0, -1, 0] })).toEqual(['blank-cannot-move']);
    const [x, , z] = guide.freeDirection!;
    expect(codes({ ...guide, freeDirection: [-x, 0, -z] })).toContain('blank-cannot-move');
    // A beam over the cheeks leaves the seated blank alone, but it cannot be put in.
    const [length, width, height] = guide.sizeMm;
    const beam = box(4, width, 4, [length - 4, 0, height + 8]);
    const post = box(4, 3, 9, [length - 4, 0, height - 1]);
    const caged = rebuilt(guide, (csg) => ({ kind: 'union', parts: [csg, post, beam] }));
    expect(codes(caged)).toContain('blank-cannot-move');
  });
});

describe('the guides of the drill', () => {
  test('a bore missing', () => {
    const parts = drill.csg.kind === 'subtract' ? drill.csg.parts : [];
    const holes = parts.findIndex((p) => p.kind === 'union');
    const without = (csg: Csg): Csg =>
      csg.kind === 'subtract'
        ? { ...csg, parts: csg.parts.map((p, i) => (i === holes ? withoutFirst(p) : p)) }
        : csg;
    expect(codes(rebuilt(drill, without))).toEqual(['guide-missing', 'openings']);
  });

  test('station, squareness and diameter', () => {
    expect(codes(believed(drill, translation(0.02, 0, 0)))).toEqual([
      'gap-narrow',
      'guide-off-station',
    ]);
    const about = [40, 0, drill.sizeMm[2] / 2];
    const tilted = believed(drill, turned('Z', 0.02, about));
    expect(codes(tilted)).toContain('guide-out-of-square');
    expect(codes(tilted)).toContain('stop-face-out-of-square');
    const wider = { ...blank, holes: [{ ...blank.holes[0], diameterMm: 8.1 }] };
    expect(codes(drill, { blank: wider })).toEqual(['guide-diameter']);
    const narrower = { ...blank, holes: [{ ...blank.holes[0], diameterMm: 7.9 }] };
    expect(codes(drill, { blank: narrower })).toEqual(['guide-diameter']);
  });

  test('a stop face that is not square to the axis', () => {
    // A shaving off the face, 0.06 mm deep at the nose end and nothing at the tail end.
    const [length, width, height] = drill.sizeMm;
    const slope = Math.atan2(0.06, length);
    const turn = turned('Z', (slope * 180) / Math.PI, [length, width, 0]);
    const shaving = movedBy(turn, box(2 * length, 5, height + 2, [-length / 2, width, -1]));
    const shaved = codes(rebuilt(drill, cutBy(shaving)));
    expect(shaved).toContain('stop-face-out-of-square');
    expect(shaved).toContain('collar-setting');
    expect(shaved).not.toContain('guide-out-of-square');
  });

  test('the seat of a sleeve: too narrow, or its shoulder elsewhere', () => {
    const setup = { ...drillStopSetup, bushingOuterDiameterMm: 12 };
    const sleeved = drillOf(setup);
    const set = { setups: { ...setups, drillStop: setup } };
    expect(codes(sleeved, set)).toEqual([]);
    const thicker = { ...setups, drillStop: { ...setup, bushingOuterDiameterMm: 12.1 } };
    expect(codes(sleeved, { setups: thicker })).toEqual(['sleeve-seat']);
    const [first] = sleeved.guides;
    const lengthMm = (first.sleeve?.lengthMm ?? 0) + 1;
    const through = { ...first, sleeve: { seatDiameterMm: 12.1, lengthMm } };
    const believing = { ...sleeved, guides: [through] } as Jig;
    expect(codes(believing, set)).toContain('sleeve-seat');
  });

  test('a collar setting that does not give the depth', () => {
    const [first] = drill.guides;
    const guides = [{ ...first, collarSettingMm: first.collarSettingMm + 0.1 }];
    expect(codes({ ...drill, guides } as Jig)).toEqual(['collar-setting']);
  });
});

describe('the slot of the saw', () => {
  const [slotX] = pointBy(inverse(guide.jigToBlank), [
    blank.slot!.mouth[0],
    0,
    blank.slot!.mouth[1],
  ]);
  const wing = lipSlotSetup.wingMm;

  test('missing', () => {
    expect(codes(rebuilt(guide, without(1)))).toEqual(['openings', 'slot-missing']);
  });

  test('place, angle and squareness', () => {
    expect(codes(believed(guide, translation(0.012, 0, 0)))).toEqual([
      'gap-narrow',
      'slot-off-place',
    ]);
    const middle = guide.sizeMm.map((v) => v / 2);
    expect(codes(believed(guide, turned('Y', 0.02, middle)))).toContain('slot-off-angle');
    expect(codes(believed(guide, turned('Z', 0.02, middle)))).toContain('slot-out-of-square');
  });

  test('width and depth', () => {
    const coarse = { ...setups, lipSlotGuide: { ...lipSlotSetup, sawKerfMm: 2.2 } };
    expect(codes(guide, { setups: coarse })).toContain('slot-width');
    expect(codes({ ...guide, guideSlotMm: 1.5 } as Jig)).toEqual(['slot-width']);
    const deep = { ...setups, lipSlotGuide: { ...lipSlotSetup, stopHeightMm: 36 } };
    expect(codes(guide, { setups: deep })).toContain('slot-depth');
  });

  test('a stop face that is not there in one cheek, or on one side of the slot', () => {
    const [length, width] = guide.sizeMm;
    const hollow = (csg: Csg): Csg => ({
      kind: 'subtract',
      from: csg,
      parts: [box(6, 4, 0.05, [slotX - 8, wing - 1, -0.01])],
    });
    expect(codes(rebuilt(guide, hollow))).toContain('stop-missing');
    const aft = (csg: Csg): Csg => ({
      kind: 'subtract',
      from: csg,
      parts: [box(length, width, 0.05, [slotX + 0.2, 0, -0.01])],
    });
    expect(codes(rebuilt(guide, aft))).toContain('stop-missing');
  });

  test('a wing nearer the blade or shorter than asked, cheeks too far apart, no line', () => {
    const asked = (lip: Partial<LipSlotGuideSetup>) =>
      codes(guide, { setups: { ...setups, lipSlotGuide: { ...lipSlotSetup, ...lip } } });
    expect(asked({ guardMm: lipSlotSetup.guardMm + 0.1 })).toEqual(['wing-at-blade']);
    expect(asked({ wingMm: lipSlotSetup.wingMm + 0.1 })).toEqual(['wing-short']);
    expect(asked({ sideClearanceMm: 0.2 })).toEqual(['cheeks-apart']);
    // Parts: cavity, saw's way, lines and marks, letters.
    expect(codes(rebuilt(guide, without(2)))).toEqual(['slot-line-missing']);
  });

  test('a saddle that holds no angle', () => {
    const open = (csg: Csg): Csg =>
      csg.kind === 'subtract'
        ? {
            ...csg,
            parts: [...csg.parts, box(30, 100, 60, [guide.sizeMm[0] * 0.45, -5, 17])],
          }
        : csg;
    expect(codes(rebuilt(guide, open))).toContain('angle-not-held');
  });
});
