/** The same lure from the saw to the water: what it weighs at each stage, and what the scale shows. */
import type { Blank } from '../blank/blank.js';
import type { Density } from '../blank/timber-density.js';
import type { Point3 } from '../geometry/vec.js';
import type { Materials } from '../tables/materials.js';
import { coatItems, type LureDesign, type LureParts, lureParts, metalItems } from './budget.js';
import { sawnFilling } from './filling.js';
import type { Item, Lure } from './item.js';
import { gPerMm3, ofMass } from './moments.js';
import { added, roundedOff, type Sums, sawnHole, slab } from './outline.js';
import { HOLE_DEPTH_SPREAD_MM } from './spread.js';

export type Stage = {
  /** sawn blank, drilled, poured, rounded over, shaped, sealed, each later coat (`epoxy 1`), rigged. */
  readonly name: string;
  readonly massG: number;
  /** One standard deviation to expect of the mass. */
  readonly spreadG: number;
  /** Of what is there: wood, metal, glue, coats. Lip slot and wire bore are open from `drilled` on and closed when rigged. */
  readonly volumeMm3: number;
  readonly cgMm: Point3;
  /** What a kitchen scale in steps of 0.1 g shows. */
  readonly scaleG: number;
};

export type StageInput = LureDesign & {
  readonly blank: Blank;
  readonly materials: Materials;
  readonly timber: Density;
  /** The finished lure, and the bit its edges were rounded over with. */
  readonly lure: Lure;
  readonly roundOverMm: number;
};

/** A stage before it is put in words: its parts in g, their spreads, its volume. */
type Draft = {
  readonly name: string;
  readonly grams: Sums;
  readonly spreads: readonly number[];
  readonly volumeMm3: number;
};

/**
 * All stages in order.
 * Lip slot and wire bore are made in the sawn blank, so their wood goes at `drilled` (of the bore, the
 * part inside the finished body). Metal is poured, or a weight glued in and the hole closed, flush
 * with the sawn belly. Lip, wire, fittings and the glue round them come on at the last stage, which
 * is the lure.
 */
export function stagesOf(input: StageInput): Stage[] {
  const { materials, lure } = input;
  const wood = woodStages(input, lureParts(input, materials));
  const rigged: Draft = {
    name: 'rigged',
    grams: ofMass(lure),
    spreads: [lure.spreadG],
    volumeMm3: lure.items.reduce((sum, i) => sum + i.displacedMm3, 0),
  };
  const coated = coatStages(input, materials, wood[wood.length - 1]);
  return [...wood, ...coated, rigged].map(inWords);
}

function inWords({ name, grams, spreads, volumeMm3 }: Draft): Stage {
  const massG = grams.amount;
  return {
    name,
    massG,
    spreadG: Math.hypot(...spreads),
    volumeMm3,
    cgMm: [grams.x / massG, 0, grams.z / massG],
    scaleG: Math.round(massG * 10) / 10,
  };
}

function woodStages(input: StageInput, parts: LureParts): Draft[] {
  const { blank, materials, timber, roundOverMm } = input;
  const { profile, outline, holes, thicknessMm } = blank;
  const sawn = slab(profile.path, thicknessMm);
  const bored = holes.map((hole) => sawnHole(profile, hole));
  const slot = added([
    [1, sawn],
    [-1, slab(outline.path, thicknessMm)],
  ]);
  const openings: Sums[] = [
    ...(blank.slot ? [slot] : []),
    ...(parts.wire ? [parts.wire.bore] : []),
  ];
  const less = (from: Sums, gone: readonly Sums[]) =>
    added([[1, from], ...gone.map((g) => [-1, g] as const)]);
  const drilled = less(sawn, [...bored, ...openings]);
  const rounded = roundedOff(profile.path, roundOverMm);
  const routed = less(drilled, [rounded]);
  const filling = holes.flatMap((hole, i) => {
    const { metal, glue } = sawnFilling({ profile, hole, plug: parts.holes[i].plug }, materials);
    return glue ? [metal, glue] : [metal];
  });
  const shaped = shapedFilling(parts, materials);
  const metals = metalItems(input, parts, materials).map((i) => i.spreadG);

  const density = gPerMm3(timber.densityKgM3);
  const draft = (name: string, wood: Sums, fill: readonly Sums[], more: Partial<Draft>): Draft => ({
    name,
    grams: added([[density, wood], ...fill.map((f) => [1, f] as const)]),
    spreads: [gPerMm3(timber.spreadKgM3) * wood.amount, ...(more.spreads ?? [])],
    volumeMm3: more.volumeMm3 ?? sawn.amount,
  });
  const depths = holes.map(
    (h) => density * (Math.PI / 4) * h.diameterMm ** 2 * HOLE_DEPTH_SPREAD_MM,
  );
  const holesMm3 = bored.reduce((sum, b) => sum + b.amount, 0);
  return [
    draft('sawn blank', sawn, [], {}),
    draft('drilled', drilled, [], { spreads: depths, volumeMm3: drilled.amount }),
    draft('poured', drilled, filling, { spreads: metals, volumeMm3: drilled.amount + holesMm3 }),
    draft('rounded over', routed, filling, {
      spreads: metals,
      volumeMm3: routed.amount + holesMm3,
    }),
    draft('shaped', parts.wood, shaped, {
      spreads: metals,
      volumeMm3: parts.holes.reduce((sum, h) => sum + h.plug.bored.amount, parts.wood.amount),
    }),
  ];
}

/** Metal and glue of all holes in the finished body, in g. */
const shapedFilling = ({ holes }: LureParts, materials: Materials): Sums[] =>
  holes.flatMap(({ plug }) => [
    plug.metal,
    added([[gPerMm3(materials.glue.densityKgM3), plug.glue]]),
  ]);

const SEALS = /seal|prim/i;

/** A stage at which a coat is done, or one of its applications. */
export type CoatStep = {
  readonly name: string;
  /** Place of the coat in the pattern. */
  readonly coat: number;
  /** Applications of it that are on then, and how many of them went on since the step before. */
  readonly on: number;
  readonly added: number;
};

/**
 * `sealed` once every coat of the first sealer or primer is on; each other coat is a stage of its own,
 * counted by its name. A lure whose coats name neither has no stage `sealed`.
 */
export function coatSteps(coats: LureDesign['pattern']['coats']): CoatStep[] {
  const sealer = coats.findIndex((c) => SEALS.test(c.name));
  const counted = new Map<string, number>();
  return coats.flatMap((coat, i): CoatStep[] => {
    const before = counted.get(coat.name) ?? 0;
    counted.set(coat.name, before + coat.count);
    if (i === sealer) return [{ name: 'sealed', coat: i, on: coat.count, added: coat.count }];
    return Array.from({ length: coat.count }, (_, k) => ({
      name: `${coat.name} ${before + k + 1}`,
      coat: i,
      on: k + 1,
      added: 1,
    }));
  });
}

function coatStages(design: LureDesign, materials: Materials, shaped: Draft): Draft[] {
  const { coats } = design.pattern;
  const items = coatItems(design, materials);
  return coatSteps(coats).map(({ name, coat, on }) => {
    const now = [...items.slice(0, coat), share(items[coat], on / coats[coat].count)];
    return {
      name,
      grams: added([[1, shaped.grams], ...now.map((m) => [1, ofMass(m)] as const)]),
      spreads: [...shaped.spreads, ...now.map((m) => m.spreadG)],
      volumeMm3: shaped.volumeMm3 + now.reduce((sum, m) => sum + m.displacedMm3, 0),
    };
  });
}

/** The first of several equal coats: a share of the item they are together. */
const share = (item: Item, ratio: number): Item => ({
  ...item,
  massG: item.massG * ratio,
  spreadG: item.spreadG * ratio,
  displacedMm3: item.displacedMm3 * ratio,
});
