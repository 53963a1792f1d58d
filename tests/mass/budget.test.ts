import { describe, expect, test } from 'vitest';
import { lipSlot } from '../../src/blank/slot.js';
import { bodyShape, makeBody } from '../../src/body/body.js';
import { meshFlaws, meshVolume } from '../../src/geometry/mesh.js';
import type { Point3 } from '../../src/geometry/vec.js';
import { ballastItems } from '../../src/mass/ballast.js';
import { bellyOver } from '../../src/mass/belly.js';
import { checkLure, lureWithoutBallast, makeLure } from '../../src/mass/budget.js';
import { beadsMesh, cellsMesh } from '../../src/mass/cells.js';
import { coatRowOf, meshSurface } from '../../src/mass/coats.js';
import { grown } from '../../src/mass/grown.js';
import type { Item, Lure } from '../../src/mass/item.js';
import { lipParts } from '../../src/mass/lip.js';
import { composed, massOf, ofMass } from '../../src/mass/moments.js';
import { halfBreadthAt, inSlot, insideStrip, stripLines } from '../../src/mass/strip.js';
import { wireParts } from '../../src/mass/wire.js';
import type { PatternFile } from '../../src/pattern/schema.js';
import { bar, designOf, ellipsoid, MATERIALS, patternOf, rel, seeded, TIMBER } from './lures.js';

const hung: Partial<PatternFile> = {
  towEye: { kind: 'screw', heightMm: 1, ring: 'ring-4' },
  hangers: [{ stationMm: 46, kind: 'screw', ring: 'ring-5', treble: 'treble-6' }],
  tailEye: { kind: 'screw', heightMm: 0, ring: 'ring-5', treble: 'treble-4' },
};
const lures = [
  designOf(patternOf('diver')),
  designOf(patternOf('diver', hung)),
  designOf(patternOf('slim')),
  designOf(patternOf('plain')),
];
const made = lures.map((design) => makeLure(design, MATERIALS, TIMBER));
const named = (lure: Lure, name: string): Item => {
  const item = lure.items.find((i) => i.name === name);
  if (!item) throw new Error(`${name} of ${lure.items.map((i) => i.name).join(', ')}`);
  return item;
};

/** Everything within a share of the whole. */
function near(a: Item | Lure, b: typeof a, share: number): void {
  expect(rel(a.massG, b.massG)).toBeLessThan(share);
  for (const k of [0, 1, 2]) expect(Math.abs(a.cgMm[k] - b.cgMm[k])).toBeLessThan(100 * share);
  for (const key of ['xx', 'yy', 'zz', 'xz'] as const)
    expect(Math.abs(a.inertiaGMm2[key] - b.inertiaGMm2[key])).toBeLessThan(
      share * b.inertiaGMm2.yy + 1e-12,
    );
}

test('there are lures to look at', () => expect(lures).toHaveLength(4));

describe.each(
  lures.map((design, i) => ({ name: `${design.pattern.name} ${i}`, design, lure: made[i] })),
)('$name', ({ design, lure }) => {
  test('holds what a lure must', () => {
    expect(checkLure(lure, design.body)).toEqual([]);
  });

  test('items add up to the whole, about the nose and about the center', () => {
    const sum = (f: (i: Item) => number) => lure.items.reduce((s, i) => s + f(i), 0);
    expect(
      rel(
        sum((i) => i.massG),
        lure.massG,
      ),
    ).toBeLessThan(1e-12);
    for (const k of [0, 2])
      expect(sum((i) => i.massG * i.cgMm[k]) / lure.massG).toBeCloseTo(lure.cgMm[k], 9);
    // Parallel axes, item by item.
    const [cx, , cz] = lure.cgMm;
    const about = sum(
      (i) => i.inertiaGMm2.yy + i.massG * ((i.cgMm[0] - cx) ** 2 + (i.cgMm[2] - cz) ** 2),
    );
    expect(rel(about, lure.inertiaGMm2.yy)).toBeLessThan(1e-9);
    expect(lure.spreadG).toBeCloseTo(Math.sqrt(sum((i) => i.spreadG ** 2)), 9);
  });

  test('nothing leaves the center plane', () => {
    for (const item of [...lure.items, lure]) expect(item.cgMm[1]).toBe(0);
  });

  test('a lure with holes is the one without, and what the holes bring', () => {
    const bare = lureWithoutBallast(design, MATERIALS, TIMBER);
    const brought = design.blank.holes.flatMap((hole, index) =>
      ballastItems(bellyOver(design.body.shape, hole.stationMm, hole.diameterMm), hole, {
        index,
        materials: MATERIALS,
        timber: TIMBER,
      }),
    );
    expect(brought.length).toBeGreaterThan(0);
    const whole = composed([...bare.items, ...brought]);
    near({ ...lure, ...whole }, lure, 1e-11);
  });

  test('every solid is closed and outward; eyes keep out what their items say', () => {
    for (const { name, mesh } of lure.displacing) {
      const flaws = meshFlaws(mesh.positions, mesh.triangles);
      expect({ ...flaws, volume: 0 }).toEqual({
        openEdges: 0,
        degenerate: 0,
        notFinite: 0,
        volume: 0,
      });
      if (name !== 'body')
        expect(rel(flaws.volume, named(lure, name).displacedMm3)).toBeLessThan(1e-9);
    }
    expect(lure.displacing[0].name).toBe('body');
  });

  test('timber twice as heavy adds the timber once more', () => {
    const heavy = makeLure(design, MATERIALS, {
      densityKgM3: 2 * TIMBER.densityKgM3,
      spreadKgM3: 0,
    });
    expect(heavy.massG - lure.massG).toBeCloseTo(named(lure, 'timber').massG, 9);
    expect(named(heavy, 'timber').spreadG).toBe(0);
  });
});

test('a damaged lure is complained of, each way', () => {
  const [design, lure] = [lures[1], made[1]];
  const [first, ...rest] = lure.items;
  const complaints = (items: readonly Item[], other: Partial<Lure> = {}) =>
    checkLure({ ...lure, items, ...other }, design.body).map((c) =>
      c.split(':')[1].trim().slice(0, 12),
    );
  expect(complaints([{ ...first, name: rest[0].name }, ...rest])).toEqual(['two items of']);
  expect(complaints([{ ...first, massG: -1 }, ...rest])).toContain('an item with');
  expect(complaints([{ ...first, massG: first.massG + 0.01 }, ...rest])).toEqual(['items weigh ']);
  expect(complaints([{ ...first, displacedMm3: 1 }, ...rest])).toEqual(['solids keep ']);
  expect(complaints(lure.items, { displacing: lure.displacing.slice(1) })).toEqual([
    'solids keep ',
  ]);
});

test('every item of a rigged lure has a name of its own, in the order of the budget', () => {
  expect(made[1].items.map((i) => i.name)).toEqual([
    'timber',
    'plug 1',
    'glue',
    'lip',
    'tow eye',
    'tow ring',
    'hanger 1 eye',
    'hanger 1 ring',
    'hanger 1 treble',
    'tail eye',
    'tail ring',
    'tail treble',
    'sealer',
    'epoxy',
  ]);
});

test('coats that share a name, or the name of a part, are told apart', () => {
  const coats = ['lip', 'epoxy', 'epoxy'].map((name) => ({ name, thicknessMm: 0.1, count: 1 }));
  const lure = makeLure(designOf(patternOf('diver', { coats })), MATERIALS, TIMBER);
  expect(lure.items.slice(-3).map((i) => i.name)).toEqual(['lip 2', 'epoxy', 'epoxy 2']);
});

describe('moments', () => {
  test('mass to moments and back', () => {
    for (const item of made[2].items) near({ ...item, ...massOf(ofMass(item)) }, item, 1e-11);
  });

  test('two halves of a bar, put together, are the bar: mL²/12', () => {
    const half = (x: number) => ({
      massG: 3,
      cgMm: [x, 0, 0] as Point3,
      inertiaGMm2: { xx: 0, yy: (3 * 100) / 12, zz: (3 * 100) / 12, xz: 0 },
    });
    const whole = composed([half(5), half(15)]);
    expect(whole.cgMm).toEqual([10, 0, 0]);
    expect(whole.inertiaGMm2.yy).toBeCloseTo((6 * 400) / 12, 12);
  });
});

describe('lip', () => {
  const design = lures[0];
  const { shape } = design.body;
  const lip = design.pattern.lip;
  const slot = design.blank.slot;
  if (!lip || !slot) throw new Error('diver has a lip');
  const parts = lipParts(shape, slot, lip);

  test('part outside the body, slot and room against a sample of points, seed 3', () => {
    const random = seeded(3);
    const n = 400_000;
    const count = { outside: 0, slot: 0, room: 0 };
    const [wide, thick, long] = [28, slot.widthMm, lip.lengthMm];
    for (let k = 0; k < n; k++) {
      const [s, t, y] = [long * random(), thick * (random() - 0.5), wide * (random() - 0.5)];
      const inBody = Math.abs(y) < halfBreadthAt(shape, inSlot(slot, s, t));
      const inPlate = Math.abs(t) < lip.thicknessMm / 2 && Math.abs(y) < lip.widthMm / 2;
      if (inPlate && !inBody) count.outside++;
      if (inBody) count.slot++;
      if (inBody && !inPlate) count.room++;
    }
    const each = (wide * thick * long) / n;
    // Three standard errors: 3·√(n·p) points.
    const within = (got: number, points: number) =>
      expect(Math.abs(got - points * each)).toBeLessThan(3 * Math.sqrt(points) * each);
    within(parts.outsideMm3, count.outside);
    within(parts.slot.amount, count.slot);
    within(parts.room.amount, count.room);
  });

  test('plate inside and outside make the plate; slot is plate inside and room', () => {
    const inside = parts.slot.amount - parts.room.amount;
    expect(parts.outsideMm3 + inside).toBeCloseTo(lip.widthMm * lip.lengthMm * lip.thicknessMm, 6);
    expect(meshVolume(parts.outside ?? beadsMesh([]))).toBeCloseTo(parts.outsideMm3, 6);
  });

  test('the boxes have the center of the part outside, by a sample of points, seed 5', () => {
    const random = seeded(5);
    let [count, along, x] = [0, 0, 0];
    for (let k = 0; k < 200_000; k++) {
      const s = lip.lengthMm * random();
      const t = lip.thicknessMm * (random() - 0.5);
      const y = (lip.widthMm / 2) * random();
      const at = inSlot(slot, s, t);
      if (y < halfBreadthAt(shape, at)) continue;
      count++;
      along += s;
      x += at[0];
    }
    const center = solidCenter(parts.outside ?? beadsMesh([]));
    const [ox, oz] = slot.outward;
    const got = (center[0] - slot.end[0]) * ox + (center[2] - slot.end[1]) * oz;
    expect(Math.abs(got - along / count)).toBeLessThan(0.06); // three standard errors of points spread over 34 mm
    expect(Math.abs(center[0] - x / count)).toBeLessThan(0.06);
    expect(center[1]).toBeCloseTo(0, 9);
  });

  test('a plate is a cuboid: m(l² + w²)/12 across its face', () => {
    const item = named(made[0], 'lip');
    const { massG, inertiaGMm2: i } = item;
    expect(massG).toBeCloseTo(22 * 34 * 1.5 * 1.2e-3, 9);
    const [ox, oz] = slot.outward;
    // Turned about y: trace and the moment about y do not change.
    expect(i.yy).toBeCloseTo((massG * (34 ** 2 + 1.5 ** 2)) / 12, 6);
    expect(i.xx + i.zz).toBeCloseTo((massG * (34 ** 2 + 1.5 ** 2 + 2 * 22 ** 2)) / 12, 6);
    expect(i.xz).toBeCloseTo((massG * (34 ** 2 - 1.5 ** 2) * ox * oz) / 12, 6);
    expect(item.cgMm[0]).toBeCloseTo(slot.end[0] + 17 * ox, 9);
    expect(item.cgMm[2]).toBeCloseTo(slot.end[1] + 17 * oz, 9);
  });

  test('square to a slab-sided bar, all is plain: width, depth and thickness multiply', () => {
    const slab = bar({ b: 8, back: 10, belly: 10, n: 400 });
    const straight = { ...lip, angleDeg: 90, slotStationMm: 40, slotDepthMm: 6, slotWidthMm: 1.6 };
    const plain = lipParts(slab, lipSlot(slab, straight), straight);
    expect(rel(plain.slot.amount, 6 * 16 * 1.6)).toBeLessThan(2e-3); // its corners are rounded by exponent 400
    expect(rel(plain.outsideMm3, 1.5 * (34 * 22 - 6 * 16))).toBeLessThan(2e-3);
  });

  test('through a round bar: ∫ 2√(R² − z²) in closed form', () => {
    const round = bar({ b: 10, back: 10, belly: 10 });
    const straight = { ...lip, angleDeg: 90, slotStationMm: 40, slotDepthMm: 10, slotWidthMm: 2 };
    const lines = stripLines(round, lipSlot(round, straight), { thicknessMm: 2, farMm: 100 });
    const got = insideStrip(round, lipSlot(round, straight), {
      lines,
      fromMm: 0,
      toMm: 100,
      halfWidthAt: () => Number.POSITIVE_INFINITY,
    });
    expect(rel(got.amount, Math.PI * 50 * 2)).toBeLessThan(1e-9); // half a disk, 2 mm thick
    expect(rel(got.z, (-2 / 3) * 1000 * 2)).toBeLessThan(1e-9); // first moment of half a disk 2R³/3
    expect(rel(got.yy, (Math.PI / 8) * 1e4 * 2)).toBeLessThan(1e-9);
  });

  test('a lip narrower than the body is covered over the slot’s depth', () => {
    const narrow = { ...lip, widthMm: 2 };
    const { outsideMm3 } = lipParts(shape, slot, narrow);
    // What is outside starts at the belly: the slot’s 11 mm are inside, but for the curve of the belly.
    expect(outsideMm3).toBeGreaterThan(2 * 1.5 * (34 - 11) * 0.98);
    expect(outsideMm3).toBeLessThan(2 * 1.5 * (34 - 11) * 1.02);
  });
});

function solidCenter({ positions: p, triangles }: ReturnType<typeof cellsMesh>): Point3 {
  let volume = 0;
  const sum = [0, 0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const det =
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
    volume += det;
    for (let k = 0; k < 3; k++) sum[k] += (det * (p[a + k] + p[b + k] + p[c + k])) / 4;
  }
  return [sum[0] / volume, sum[1] / volume, sum[2] / volume];
}

describe('through-wire', () => {
  const pattern = patternOf('slim');
  const wire = wireParts(pattern, bodyShape(pattern), MATERIALS);
  if (!wire) throw new Error('slim has a through-wire');

  test('straight from nose to tail, a leg down and up to the hanger, three loops', () => {
    const belly = halfBreadthAt(bodyShape(pattern), [58, 0]); // only to show the station is inside
    expect(belly).toBeGreaterThan(0);
    const [a, b] = [
      [0, 0.5],
      [125, 0],
    ];
    const hanger = designOf(pattern).body.shape.bellySquared.value(58) ** 0.5;
    const leg = hanger + a[1] + ((b[1] - a[1]) * 58) / 125;
    const want = Math.hypot(125, 0.5) + 2 * leg + 3 * Math.PI * (3 + 1.2);
    // Square corners and whole circles: the bends save 2·1.8·(2 − π/2) mm, the legs their 1.2 mm of the
    // run, and the necks of the eyes take 2·1.20 and give 0.25 mm (by hand, from `neckOf`).
    const saved = 3.6 * (2 - Math.PI / 2) + 1.2 - 2 * 1.2 + 0.25;
    expect(wire.lengthMm).toBeCloseTo(want - saved, 1); // the nose at 0.5 mm height is 0.04 mm further aft
    expect(wire.loops).toHaveLength(3);
  });

  test('mass is length times section times density', () => {
    const section = (Math.PI / 4) * 1.2 ** 2;
    const item = named(made[2], 'through-wire');
    expect(item.massG).toBeCloseTo(wire.lengthMm * section * 7.9e-3, 9);
    expect(item.displacedMm3).toBeCloseTo(3 * Math.PI * 4.2 * section, 9);
  });

  test('the bore holds wire and glue', () => {
    expect(wire.bore.amount / wire.room.amount).toBeCloseTo(4 / (4 - 1.44), 9);
  });

  test('windings weigh with the wire, take their place from the glue and leave wood and water alone', () => {
    const throughWire = { diameterMm: 1.2, boreMm: 3.6, twistTurns: 0 };
    const [plain, wound] = [0, 5].map((twistTurns) => {
      const design = designOf(patternOf('slim', { throughWire: { ...throughWire, twistTurns } }));
      const parts = wireParts(design.pattern, design.body.shape, MATERIALS);
      if (!parts) throw new Error('slim has a through-wire');
      return { parts, lure: makeLure(design, MATERIALS, TIMBER) };
    });
    const section = (Math.PI / 4) * 1.2 ** 2;
    const more = wound.parts.lengthMm - plain.parts.lengthMm;
    // Two windings of five turns, each turn a helix of radius and rise 1.2 mm, and the way along the necks.
    expect(more).toBeGreaterThan(2 * 5 * Math.hypot(2 * Math.PI * 1.2, 1.2));
    expect(more).toBeLessThan(2 * (5 * Math.hypot(2 * Math.PI * 1.2, 1.2) + 2.5));
    const [wire, glue] = ['through-wire', 'glue'].map(
      (n) => named(wound.lure, n).massG - named(plain.lure, n).massG,
    );
    expect(wire).toBeCloseTo(more * section * 7.9e-3, 9);
    expect(glue).toBeCloseTo(-more * section * MATERIALS.glue.densityKgM3 * 1e-6, 4); // the bore stays straight where the run tilts a little more
    expect(named(wound.lure, 'timber')).toEqual(named(plain.lure, 'timber'));
    expect(named(wound.lure, 'through-wire').displacedMm3).toBe(
      named(plain.lure, 'through-wire').displacedMm3,
    );
    expect(checkLure(wound.lure, designOf(patternOf('slim')).body)).toEqual([]);
  });
});

describe('what hangs', () => {
  const lure = made[1];
  test('ring and treble weigh at the eye, where its loop is', () => {
    const [eye, ring, treble] = ['eye', 'ring', 'treble'].map((p) => named(lure, `tail ${p}`));
    expect(ring.cgMm).toEqual(treble.cgMm);
    expect(ring.cgMm[0]).toBeCloseTo(100 + 1.5 + 1.2, 9);
    expect(treble.massG).toBe(1.6);
    expect(treble.displacedMm3).toBeCloseTo(1.6 / 7.85e-3, 9);
    expect(eye.cgMm[0]).toBeLessThan(100); // most of the screw is in the wood
    expect(eye.displacedMm3).toBeCloseTo(Math.PI * 4.2 * (Math.PI / 4) * 1.44, 9);
  });
  test('the hanger is under the belly, the tow eye ahead of the nose at its height', () => {
    const belly = lures[1].body.shape.bellySquared.value(46) ** 0.5;
    expect(named(lure, 'hanger 1 ring').cgMm[2]).toBeCloseTo(-belly - 2.7, 9);
    const tow = named(lure, 'tow ring').cgMm;
    expect(tow[2]).toBe(1);
    expect(tow[0]).toBeCloseTo(-2.7 + 1 / (2 * 4.5), 1); // the round of the nose starts z²/2R aft
  });
});

describe('coats', () => {
  test('worked example: ellipsoid 100 × 30 × 20 mm, 3 coats of 0.15 mm at 1.15 g/cm³ weigh 3.301 g', () => {
    const body = makeBody(ellipsoid(50, 15, 10));
    const coats = [{ name: 'epoxy', thicknessMm: 0.15, count: 3 }];
    const pattern = { ...patternOf('plain', { coats }), hangers: [], towEye: null, tailEye: null };
    const lure = makeLure({ pattern, body, blank: { slot: null, holes: [] } }, MATERIALS, TIMBER);
    const epoxy = named(lure, 'epoxy');
    expect(epoxy.massG).toBeCloseTo(3.301, 3);
    expect(epoxy.cgMm[0]).toBeCloseTo(50, 3);
    expect(epoxy.displacedMm3).toBeCloseTo(6378.945 * 0.45, 2);
    expect(lure.items.map((i) => i.name)).toEqual(['timber', 'epoxy']);
    expect(meshVolume(lure.displacing[0].mesh)).toBeCloseTo(
      meshVolume(body.mesh) + 6378.945 * 0.45,
      2,
    );
  });

  test('the surface of a sphere: ∫x² over the shell is 4πR⁴/3', () => {
    const skin = massOf(meshSurface(makeBody(ellipsoid(10, 10, 10)).mesh));
    const mean = (skin.massG * 2 * 100) / 3; // inertia of a shell 2mR²/3
    for (const key of ['xx', 'yy', 'zz'] as const)
      expect(rel(skin.inertiaGMm2[key], mean)).toBeLessThan(2e-3); // chords
  });

  test('a row goes by a word of the coat’s name, the last of two, else by other', () => {
    const rows = ['Epoxy', 'clear epoxy, thin', 'epoxy primer', 'sealer (2:1)', 'boat soup'];
    expect(rows.map((r) => coatRowOf(r, MATERIALS))).toEqual([
      'epoxy',
      'epoxy',
      'primer',
      'sealer',
      'other',
    ]);
  });

  test('a density in the file goes before the table', () => {
    const coats = [{ name: 'epoxy', thicknessMm: 0.15, count: 3, densityKgM3: 2300 }];
    const heavy = makeLure(designOf(patternOf('diver', { coats })), MATERIALS, TIMBER);
    expect(named(heavy, 'epoxy').massG).toBeCloseTo(2 * named(made[0], 'epoxy').massG, 9);
  });

  test('nothing on: the body’s own mesh, untouched', () => {
    const design = designOf(patternOf('diver', { coats: [] }));
    const lure = makeLure(design, MATERIALS, TIMBER);
    expect(lure.displacing[0].mesh).toBe(design.body.mesh);
  });

  test('a cube grown by Newton has the volume asked for, to rounding', () => {
    const cube = cellsMesh([
      {
        corner: [0, 0, 0],
        edges: [
          [10, 0, 0],
          [0, 10, 0],
          [0, 0, 10],
        ],
      },
    ]);
    for (const add of [1, 100, 700])
      expect(rel(meshVolume(grown(cube, add)), 1000 + add)).toBeLessThan(1e-13);
  });
});

test('scaled lure, scaled mass: twice as long with hardware and coats alike is eight times as heavy', () => {
  const coats = (k: number) => [{ name: 'epoxy', thicknessMm: 0.15 * k, count: 1 }];
  const bare = { towEye: undefined, tailEye: undefined, hangers: [] };
  const of = (k: number) =>
    makeLure(
      designOf(
        patternOf('diver', {
          ...bare,
          coats: coats(k),
          scaleRatio: k,
          scaleHardware: true,
          sandingAllowanceMm: 1.5 * k,
        }),
      ),
      MATERIALS,
      TIMBER,
    );
  const [small, large] = [of(1), of(2)];
  expect(rel(large.massG, 8 * small.massG)).toBeLessThan(1e-6); // the sawn belly is fitted by arcs of fixed tolerance
  expect(large.cgMm[0]).toBeCloseTo(2 * small.cgMm[0], 3);
  expect(rel(large.inertiaGMm2.yy, 32 * small.inertiaGMm2.yy)).toBeLessThan(1e-4); // the mesh under the coat
});

test('fittings that a table does not hold are our fault, not a number', () => {
  const pattern = patternOf('diver', {
    tailEye: { kind: 'screw', heightMm: 0, treble: 'treble-99' },
  });
  expect(() => makeLure(designOf(pattern), MATERIALS, TIMBER)).toThrow('treble-99');
  const wrong = patternOf('diver', { tailEye: { kind: 'screw', heightMm: 0, ring: 'treble-4' } });
  expect(() => makeLure(designOf(wrong), MATERIALS, TIMBER)).toThrow('no ring treble-4');
});
