/** A pattern ready to build: stations in mm, scaled, with nothing left to look up. */
import type { KeyPath } from '../problem.js';
import type { StationFields } from './fields.js';
import type { PatternFile } from './schema.js';
import type { WaterFile } from './water-schema.js';
import type { WishFile } from './wish-schema.js';

/** Distance from the datum line at a station, positive away from it. */
export type OffsetPoint = { readonly stationMm: number; readonly offsetMm: number };

export type Pattern = {
  /** Unique in a run; names files and stands on jigs and labels. */
  readonly name: string;
  readonly version: string;
  readonly note: string;
  readonly scaleRatio: number;
  readonly lengthMm: number;
  readonly radii: {
    readonly noseMm: number;
    readonly tailMm: number;
    readonly planNoseMm: number | null;
    readonly planTailMm: number | null;
  };
  readonly back: readonly OffsetPoint[];
  readonly belly: readonly OffsetPoint[];
  readonly halfBreadth: readonly OffsetPoint[];
  readonly fullness: readonly {
    readonly stationMm: number;
    readonly upper: number;
    readonly lower: number;
  }[];
  readonly lip: Lip | null;
  readonly ballast: readonly Ballast[];
  readonly towEye: EndEye | null;
  readonly tailEye: EndEye | null;
  readonly hangers: readonly Hanger[];
  readonly throughWire: ThroughWire | null;
  readonly timber: string;
  /** Null: the table's. */
  readonly timberDensityKgM3: number | null;
  readonly sandingAllowanceMm: number;
  readonly blockThicknessMm: number;
  readonly coats: PatternFile['coats'];
  /** Null: the run's, or fresh at 15 °C. */
  readonly water: WaterFile | null;
  readonly wish: WishFile | null;
};

export type ThroughWire = {
  readonly diameterMm: number;
  readonly boreMm: number;
  /** Turns of the tail at each eye at an end; 0 for a loop that is only closed. */
  readonly twistTurns: number;
};

export type Lip = {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly thicknessMm: number;
  /** A row of the table of plates. */
  readonly material: string;
  readonly angleDeg: number;
  readonly slotStationMm: number;
  readonly slotDepthMm: number;
  readonly slotWidthMm: number;
  /** Of the two corners at its tip. */
  readonly cornerRadiusMm: number;
  /** The narrower part in the slot; null for a plate of one width. */
  readonly tab: { readonly widthMm: number; readonly insideRadiusMm: number } | null;
  /** On the center line, its middle so far from where the slot meets the belly. */
  readonly eyeHole: { readonly diameterMm: number; readonly forwardMm: number } | null;
};

export type Ballast = {
  /** Where the axis meets the sawn belly. */
  readonly stationMm: number;
  /** From the perpendicular to the datum line to the axis; positive: the floor lies aft of the mouth. */
  readonly tiltDeg: number;
  readonly diameterMm: number;
  readonly depthMm: number;
  readonly pointAngleDeg: number;
  readonly metal: string;
  readonly pour: 'topped-up' | 'single';
  /** Height of the metal above the full-diameter floor; null: up to the sawn belly. */
  readonly fillMm: number | null;
  /** A ready-made weight on the hole's floor instead of poured metal, or null. */
  readonly weight: string | null;
};

/** An eye and what hangs on it; names are rows of the table of fittings. */
export type Eye = {
  readonly kind: 'screw' | 'wire';
  readonly screwEye: string;
  readonly ring: string | null;
  readonly treble: string | null;
};
export type EndEye = Eye & { readonly heightMm: number };
export type Hanger = Eye & { readonly stationMm: number };

/** The screw eye that is meant when none is named. */
const USUAL_SCREW_EYE = 'screw-eye';

/** What a line of an order may change of the pattern it names. */
export type Size = {
  readonly scaleRatio?: number | undefined;
  readonly name?: string | undefined;
  readonly blockThicknessMm?: number | undefined;
};

/**
 * Scales a pattern file and turns every station into mm. Lengths of the design scale; hardware (lip
 * thickness and fit, wire, bore), bits, allowances and coats do not, unless the file says so.
 */
export function resolvePattern(file: PatternFile, size: Size = {}): Pattern {
  const k = size.scaleRatio ?? file.scaleRatio;
  const hard = file.scaleHardware ? k : 1;
  const lengthMm = file.body.lengthMm * k;
  const at = (s: StationFields) => stationMm(s, file.body.lengthMm) * k;
  const column = (key: 'backMm' | 'bellyMm' | 'halfBreadthMm'): OffsetPoint[] =>
    file.body.offsets.flatMap((row) => {
      const offset = row[key];
      return offset === undefined ? [] : [{ stationMm: at(row), offsetMm: offset * k }];
    });
  const { body, lip } = file;
  return {
    name: size.name ?? sizeName(file, size, lengthMm),
    version: file.version,
    note: file.note,
    scaleRatio: k,
    lengthMm,
    radii: {
      noseMm: body.noseRadiusMm * k,
      tailMm: body.tailRadiusMm * k,
      planNoseMm: body.planNoseRadiusMm === undefined ? null : body.planNoseRadiusMm * k,
      planTailMm: body.planTailRadiusMm === undefined ? null : body.planTailRadiusMm * k,
    },
    back: column('backMm'),
    belly: column('bellyMm'),
    halfBreadth: column('halfBreadthMm'),
    fullness: body.fullness.map((f) => ({
      stationMm: at(f),
      upper: f.upperExponent,
      lower: f.lowerExponent,
    })),
    lip: lip
      ? {
          widthMm: lip.widthMm * k,
          lengthMm: lip.lengthMm * k,
          thicknessMm: lip.thicknessMm * hard,
          material: lip.material,
          angleDeg: lip.angleDeg,
          slotStationMm: at(lip.slot),
          slotDepthMm: lip.slot.depthMm * k,
          slotWidthMm: (lip.thicknessMm + lip.slot.fitMm) * hard,
          cornerRadiusMm: lip.cornerRadiusMm * k,
          tab: lip.tab ? tab(lip, lip.tab, k) : null,
          eyeHole: lip.eyeHole
            ? {
                diameterMm: lip.eyeHole.diameterMm * hard,
                forwardMm: lip.eyeHole.forwardMm * k,
              }
            : null,
        }
      : null,
    ballast: file.ballast.map((b) => ({
      stationMm: at(b),
      tiltDeg: b.tiltDeg,
      diameterMm: b.diameterMm * hard,
      depthMm: b.depthMm * k,
      pointAngleDeg: b.pointAngleDeg,
      metal: b.metal,
      pour: b.pour,
      fillMm: b.fillMm === undefined ? null : b.fillMm * k,
      weight: b.weight ?? null,
    })),
    towEye: file.towEye ? { ...eye(file.towEye), heightMm: file.towEye.heightMm * k } : null,
    tailEye: file.tailEye ? { ...eye(file.tailEye), heightMm: file.tailEye.heightMm * k } : null,
    hangers: file.hangers.map((h) => ({ ...eye(h), stationMm: at(h) })),
    throughWire: file.throughWire
      ? {
          diameterMm: file.throughWire.diameterMm * hard,
          boreMm: file.throughWire.boreMm * hard,
          twistTurns: file.throughWire.twistTurns,
        }
      : null,
    timber: file.timber,
    timberDensityKgM3: file.timberDensityKgM3 ?? null,
    sandingAllowanceMm: file.sandingAllowanceMm,
    blockThicknessMm: size.blockThicknessMm ?? file.blockThicknessMm * k,
    coats: file.coats,
    water: file.water ?? null,
    wish: file.wish ? scaledWish(file.wish, k) : null,
  };
}

/** Rounds an inside corner enough that it does not crack, mm: common practice, no source. */
const INSIDE_RADIUS_MM = 1;

type LipFile = NonNullable<PatternFile['lip']>;

function tab(lip: LipFile, file: NonNullable<LipFile['tab']>, k: number): Lip['tab'] {
  const widthMm = file.widthMm * k;
  const roomMm = Math.min(((lip.widthMm - file.widthMm) / 2) * k, lip.slot.depthMm * k);
  const insideRadiusMm =
    file.insideRadiusMm === undefined
      ? Math.max(0, Math.min(INSIDE_RADIUS_MM, roomMm))
      : file.insideRadiusMm * k;
  return { widthMm, insideRadiusMm };
}

const scaledWish = (wish: WishFile, k: number): WishFile =>
  wish.freeboardMm === undefined ? wish : { ...wish, freeboardMm: wish.freeboardMm * k };

const eye = (file: PatternFile['hangers'][number] | NonNullable<PatternFile['towEye']>): Eye => ({
  kind: file.kind,
  screwEye: file.screwEye ?? USUAL_SCREW_EYE,
  ring: file.ring ?? null,
  treble: file.treble ?? null,
});

/** A station of the file in its own (unscaled) mm; NaN when none is given. */
export const stationMm = (s: StationFields, lengthMm: number): number =>
  s.stationMm ?? (s.stationRatio === undefined ? Number.NaN : s.stationRatio * lengthMm);

/** The name of a size: the pattern's own, with the length when the order asks for another scale. */
const sizeName = (file: PatternFile, size: Size, lengthMm: number): string =>
  size.scaleRatio === undefined || size.scaleRatio === file.scaleRatio
    ? file.name
    : `${file.name}-${Math.round(lengthMm)}`;

/** Paths into the pattern file for what later stages complain of. */
export const PATHS = {
  allowance: ['sandingAllowanceMm'],
  thickness: ['blockThicknessMm'],
  slot: ['lip', 'slot'],
  ballast: (i: number): KeyPath => ['ballast', i],
} as const;
