/** The mass budget: every part of a lure with its weight and place, and the lure as a whole. */
import type { Blank } from '../blank/blank.js';
import type { Density } from '../blank/timber-density.js';
import type { Body } from '../body/body.js';
import { type Mesh, meshVolume } from '../geometry/mesh.js';
import type { Point2, Point3 } from '../geometry/vec.js';
import type { Pattern } from '../pattern/pattern.js';
import type { Materials } from '../tables/materials.js';
import { glueItem, itemOf, metalItem, metalName, NOTHING_G } from './ballast.js';
import { type BellyOver, bellyOverHole } from './belly.js';
import { beadsMesh } from './cells.js';
import { coatMaterial, filmMm3, surfaceOf } from './coats.js';
import { eyePlaces, hungOn } from './eyes.js';
import { grown } from './grown.js';
import type { Displacer, Item, Lure } from './item.js';
import { type LipParts, lipParts } from './lip.js';
import { composed, gPerMm3, type Moments, ofBody, summed } from './moments.js';
import { type Plug, plugOf } from './plug.js';
import { rowOf } from './row.js';
import { COAT_SPREAD_RATIO, FITTING_SPREAD_RATIO, spreadOf } from './spread.js';
import { type WireParts, wireParts } from './wire.js';

/** What a lure is made from. */
export type LureDesign = {
  readonly pattern: Pattern;
  readonly body: Body;
  readonly blank: Pick<Blank, 'slot' | 'holes'>;
};

/** The parts of a lure as sums, before they become a list of items. */
export type LureParts = {
  readonly holes: readonly { readonly belly: BellyOver; readonly plug: Plug }[];
  readonly lip: LipParts | null;
  readonly wire: WireParts | null;
  /** Timber left in the finished body, per mm³. */
  readonly wood: Moments;
};

export function lureParts({ pattern, body, blank }: LureDesign, materials: Materials): LureParts {
  const { shape } = body;
  const holes = blank.holes.map((hole) => {
    const belly = bellyOverHole(shape, hole);
    return { belly, plug: plugOf(belly, hole, materials) };
  });
  const lip = blank.slot && pattern.lip ? lipParts(shape, blank.slot, pattern.lip) : null;
  const wire = wireParts(pattern, shape, materials);
  const gone = [
    ...holes.map((h) => h.plug.bored),
    ...(lip ? [lip.slot] : []),
    ...(wire ? [wire.bore] : []),
  ];
  const wood = summed([[1, ofBody(body.properties)], ...gone.map((m) => [-1, m] as const)]);
  return { holes, lip, wire, wood };
}

/**
 * The whole lure. Every name in the design must be a row of its table (`itemRules`). Slot, bore
 * and what is left of a hole are closed with glue, so that the timber's item keeps out the water of
 * the whole body, and what is in it none.
 *
 * @param displacing the lure's outside, if it is known already: no hole, timber or metal changes it
 */
export function makeLure(
  design: LureDesign,
  materials: Materials,
  timber: Density,
  displacing: readonly Displacer[] = outsideOf(design, materials),
): Lure {
  const parts = lureParts(design, materials);
  const items = uniquelyNamed(
    [
      timberItem(design.body, parts, timber),
      ...metalItems(design, parts, materials),
      ...glueItems(parts, materials),
      ...rigOf(design, parts, materials).map((r) => r.item),
      ...coatItems(design, materials),
    ].filter((item) => Math.abs(item.massG) > NOTHING_G),
  );
  return { ...composed(items), items, spreadG: spreadOf(items), displacing };
}

/** What keeps water out: the body in its coats, then what stands out of it. */
export function outsideOf(design: LureDesign, materials: Materials): readonly Displacer[] {
  const rigged = rigOf(design, lureParts(design, materials), materials);
  return [
    { name: 'body', mesh: coated(design, design.body.mesh) },
    ...rigged.flatMap((r) => r.displacer ?? []),
  ];
}

/** A mesh of the bare body with the pattern's coats on. */
export const coated = ({ pattern, body }: LureDesign, bare: Mesh): Mesh =>
  grown(
    bare,
    pattern.coats.reduce((sum, coat) => sum + filmMm3(body, coat) * coat.count, 0),
  );

/** The same lure without its ballast: no holes, and the timber where they would be. */
export const lureWithoutBallast = (
  design: LureDesign,
  materials: Materials,
  timber: Density,
  displacing?: readonly Displacer[],
): Lure =>
  makeLure({ ...design, blank: { ...design.blank, holes: [] } }, materials, timber, displacing);

const timberItem = (body: Body, { wood }: LureParts, timber: Density): Item =>
  itemOf('timber', summed([[gPerMm3(timber.densityKgM3), wood]]), {
    kind: 'timber',
    displacedMm3: body.properties.volumeMm3,
    spreadG: gPerMm3(timber.spreadKgM3) * wood.amount,
  });

export const metalItems = (
  { blank }: LureDesign,
  { holes }: LureParts,
  materials: Materials,
): Item[] =>
  holes.flatMap(({ plug }, i) =>
    plug.metal.amount > NOTHING_G
      ? [metalItem(metalName(blank.holes[i], i), plug, blank.holes[i], materials)]
      : [],
  );

function glueItems({ holes, lip, wire }: LureParts, materials: Materials): Item[] {
  const volume = summed(
    [
      ...holes.map((h) => h.plug.glue),
      ...(lip ? [lip.room] : []),
      ...(wire ? [wire.room] : []),
    ].map((m) => [1, m]),
  );
  return volume.amount > 0 ? [glueItem(volume, materials)] : [];
}

/** One kind of coat in the order of the pattern, all its applications together. */
export function coatItems({ pattern, body }: LureDesign, materials: Materials): Item[] {
  if (pattern.coats.length === 0) return [];
  const surface = surfaceOf(body);
  return pattern.coats.map((coat) => {
    const { densityKgM3, spreadKgM3 } = coatMaterial(coat, materials);
    const displacedMm3 = filmMm3(body, coat) * coat.count;
    const film = coat.thicknessMm * coat.count;
    const moments = summed([[gPerMm3(densityKgM3) * film, surface]]);
    const ofDensity = spreadKgM3 / densityKgM3;
    const spreadG = moments.amount * Math.hypot(COAT_SPREAD_RATIO, ofDensity);
    return itemOf(coat.name, moments, { kind: 'coat', displacedMm3, spreadG });
  });
}

type Rigged = { readonly item: Item; readonly displacer: Displacer | null };

/** Lip, wire, screw eyes and what hangs on them. */
function rigOf({ pattern, body }: LureDesign, parts: LureParts, materials: Materials): Rigged[] {
  const places = eyePlaces(pattern, body.shape);
  return [
    ...(parts.lip && pattern.lip ? [lipItem(parts.lip, pattern.lip.material, materials)] : []),
    ...(parts.wire ? [wireItem(parts.wire, materials)] : []),
    ...places.flatMap((place) =>
      hungOn(place, pattern, materials).map(({ name, mass, displacedMm3, at }) => ({
        item: itemOf(name, mass, {
          kind: 'rig',
          displacedMm3,
          spreadG: mass.amount * FITTING_SPREAD_RATIO,
        }),
        displacer: { name, mesh: beadsMesh([{ centerMm: inPlane(at), volumeMm3: displacedMm3 }]) },
      })),
    ),
  ];
}

function lipItem({ plate, outsideMm3, outside }: LipParts, material: string, m: Materials): Rigged {
  const mass = summed([[gPerMm3(rowOf(m.plates, material).densityKgM3), plate]]);
  return {
    item: itemOf('lip', mass, {
      kind: 'rig',
      displacedMm3: outsideMm3,
      spreadG: mass.amount * FITTING_SPREAD_RATIO,
    }),
    displacer: outside && { name: 'lip', mesh: outside },
  };
}

function wireItem({ wire, loops }: WireParts, materials: Materials): Rigged {
  const name = 'through-wire';
  const mass = summed([[gPerMm3(materials.wire.densityKgM3), wire]]);
  const beads = loops.map(({ at, volumeMm3 }) => ({ centerMm: inPlane(at), volumeMm3 }));
  return {
    item: itemOf(name, mass, {
      kind: 'rig',
      displacedMm3: loops.reduce((sum, l) => sum + l.volumeMm3, 0),
      spreadG: mass.amount * FITTING_SPREAD_RATIO,
    }),
    displacer: beads.length > 0 ? { name, mesh: beadsMesh(beads) } : null,
  };
}

const inPlane = ([x, z]: Point2): Point3 => [x, 0, z];

/** A coat may be listed twice, or be called what another item is: the later one gets a number. */
function uniquelyNamed(items: readonly Item[]): Item[] {
  const taken = new Set<string>();
  return items.map((item) => {
    let name = item.name;
    for (let k = 2; taken.has(name); k++) name = `${item.name} ${k}`;
    taken.add(name);
    return { ...item, name };
  });
}

/**
 * What a lure must hold, by means that making it does not use: no two items of one name, nothing off
 * the center plane, and solids that keep out what the items say, but for the chords of the body's mesh.
 */
export function checkLure(lure: Lure, body: Body): string[] {
  const names = new Set(lure.items.map((i) => i.name));
  const said = lure.items.reduce((sum, i) => sum + i.displacedMm3, 0);
  const chords = body.properties.volumeMm3 - meshVolume(body.mesh);
  const kept = lure.displacing.reduce((sum, d) => sum + meshVolume(d.mesh), 0);
  const massG = lure.items.reduce((sum, i) => sum + i.massG, 0);
  return [
    ...(names.size === lure.items.length ? [] : ['lure: two items of one name']),
    ...(lure.items.every((i) => i.massG > 0 && i.cgMm.every(Number.isFinite))
      ? []
      : ['lure: an item without mass or place']),
    ...(Math.abs(massG - lure.massG) <= 1e-9 * massG
      ? []
      : [`lure: items weigh ${massG} g, the whole ${lure.massG} g`]),
    ...(Math.abs(said - chords - kept) <= 1e-9 * said
      ? []
      : [`lure: solids keep out ${kept} mm³, items ${said} mm³ less ${chords} mm³ of chords`]),
  ];
}
