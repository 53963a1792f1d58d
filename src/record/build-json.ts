/** Every stage's values as one JSON document: the debugger, the bug report, the machine-readable result. */
import type { CutPlan } from '../cutplan/cutplan.js';
import { FIGURE_PITCH_MM, spaced } from '../gauge/round-over-map.js';
import type { Point2 } from '../geometry/vec.js';
import type { ReadyJig } from '../jig/set.js';
import { faceLimitRatio } from '../nest/limit.js';
import type { NestFace, Placement } from '../nest/nest.js';
import { nestTotals } from '../nest/totals.js';
import type { Build, MadeSheet, Product } from '../pipeline.js';
import { Fault } from '../problem.js';
import type { BentWire } from '../wire/bent.js';
import { floatData } from './float-json.js';
import { paperRecord } from './paper-json.js';

/** Decimals of lengths in the record: a nanometer, so that rounding never shows. */
const DECIMALS = 6;

/** Plain data; `jigFiles` gives the names of a jig's files, one a printed part. */
export function buildRecord(
  build: Build,
  tool: string,
  jigFiles: (jig: ReadyJig) => readonly string[],
): unknown {
  const { job, products, nest, cutPlans, sheets, shop } = build;
  const { workshop } = job;
  return {
    schemaVersion: 1,
    tool,
    kind: job.kind,
    name: job.name,
    note: job.note,
    units: 'mm, g, degrees; lure frame: x aft from the nose along the datum line, y to port, z up',
    patterns: products.map(patternRecord),
    nest: nest && {
      saw: workshop && {
        guidance: workshop.saw.guidance,
        kerfMm: workshop.saw.kerfMm,
        cutsLipSlot: workshop.saw.cutsLipSlot,
      },
      clearNoseRatio: workshop?.clearNoseRatio,
      largestTiltDeg: workshop?.largestTiltDeg,
      faces: nest.faces.map((face, i) => ({
        ...faceRecord(face, cutPlans[i]),
        latticeLimitRatio: faceLimitRatio(face, nest.limitRatios),
      })),
      made: nest.made,
      ordered: nest.ordered,
      ...nestTotals(nest),
    },
    sheets: sheets.map(sheetRecord),
    shop,
    paper: paperRecord(build.papers),
    jigs: products.flatMap((p) => p.jigs.map((jig) => jigRecord(jig, jigFiles(jig)))),
  };
}

function patternRecord(product: Product): unknown {
  const { pattern, count, body, blank, floating, sawnMass, wire } = product;
  const { note, coats, ...resolved } = pattern;
  return {
    name: pattern.name,
    version: pattern.version,
    note,
    scaleRatio: pattern.scaleRatio,
    lengthMm: pattern.lengthMm,
    orderedCount: count,
    timber: pattern.timber,
    blockThicknessMm: pattern.blockThicknessMm,
    sandingAllowanceMm: pattern.sandingAllowanceMm,
    volumeMm3: body.properties.volumeMm3,
    areaMm2: body.properties.areaMm2,
    centroidMm: body.properties.centroidMm,
    inertiaMm5: body.properties.inertiaMm5,
    sawnBlank: sawnMass,
    outline: points(blank.outlineRing),
    profile: points(blank.profileRing),
    lipAngleDeg: pattern.lip?.angleDeg ?? null,
    lipSlot: blank.slot,
    holes: blank.holes.map((hole, i) => ({
      stationMm: hole.stationMm,
      tiltDeg: hole.tiltDeg,
      diameterMm: hole.diameterMm,
      depthMm: hole.depthMm,
      tipDepthMm: floating.holes[i].tipDepthMm,
      pointAngleDeg: hole.pointAngleDeg,
      bellyMm: hole.bellyMm,
      metal: hole.metal,
    })),
    coats,
    wire: wire && wireRecord(wire),
    ...(product.gauged ? gaugesRecord(product.gauged) : { gauges: null, roundOverMap: null }),
    float: floatData(floating),
    resolved,
  };
}

/** Bulges as in a DXF polyline; each twist from the neck of its eye inward. */
const wireRecord = ({ spec, path, twists, lengthMm, lengthToCutMm }: BentWire): unknown => ({
  diameterMm: spec.diameterMm,
  bendInsideMm: spec.bendInsideMm,
  loopMm: spec.loopMm,
  centerLine: path.vertices.map(({ x, y, bulge }) => [x, y, bulge]),
  twists: twists.map(({ eye, turns, from, to, lengthMm }) => ({ eye, turns, from, to, lengthMm })),
  lengthMm,
  holdMm: spec.holdMm,
  lengthToCutMm,
});

/** The stations of the gauges, and what each edge takes where the strips have figures. */
const gaugesRecord = ({ gauges, map }: NonNullable<Product['gauged']>): object => ({
  gauges: gauges.sections.map(({ number, stationMm, reason, halfBreadthMm, backMm, bellyMm }) => ({
    number,
    stationMm,
    reason,
    halfBreadthMm,
    backMm,
    bellyMm,
  })),
  roundOverMap: {
    edgeMm: map.edgeMm,
    ...Object.fromEntries(
      [map.back, map.belly].map((edge) => [
        edge.side,
        {
          lengthMm: edge.lengthMm,
          least: edge.least,
          places: spaced(edge, FIGURE_PITCH_MM),
          marks: edge.marks,
        },
      ]),
    ),
  },
});

const points = (ring: readonly Point2[]): unknown => ring.map(([x, y]) => [x, y]);

/** A face as the record tells it, with the plan of its cuts where there is one: outsiders read it in this shape. */
export const faceRecord = (face: NestFace, plan?: CutPlan): object => ({
  id: face.id,
  lengthMm: face.lengthMm,
  widthMm: face.widthMm,
  thicknessMm: face.thicknessMm,
  marginMm: face.marginMm,
  gapMm: face.gapMm,
  layers: face.layers,
  copies: face.copies,
  stacks: face.stacks,
  stackHeightMm: face.stackHeightMm,
  knots: face.knots,
  splits: face.splits,
  poorZones: face.poorZones,
  usedRatio: face.usedRatio,
  offcut: face.offcut,
  placements: face.placements.map(placementRecord),
  ...(plan && cutRecord(plan)),
});

const cutRecord = (plan: CutPlan): object => ({
  entryPaths: plan.entryPaths.map(points),
  cutOrder: plan.cutOrder,
  partingCuts: plan.partingCuts.map(points),
  pieces: plan.pieces,
  reliefCuts: plan.reliefCuts.map(({ placement, path }) => ({ placement, path: points(path) })),
  sharedLines: plan.sharedLines.map(({ path, ...rest }) => ({ ...rest, path: points(path) })),
  sawnMm: plan.sawnMm,
  travelMm: plan.travelMm,
});

const placementRecord = ({ part, xMm, yMm, turnDeg, outline }: Placement): unknown => ({
  pattern: part,
  xMm,
  yMm,
  turnDeg,
  outline: points(outline),
});

const sheetRecord = ({ kind, id, material, layout, outlines }: MadeSheet): unknown => ({
  kind,
  id,
  material,
  lengthMm: layout.lengthMm,
  widthMm: layout.widthMm,
  thicknessMm: layout.thicknessMm,
  marginMm: layout.marginMm,
  gapMm: layout.gapMm,
  copies: layout.copies,
  usedRatio: layout.usedRatio,
  outlines: Object.fromEntries(Object.entries(outlines).map(([k, ring]) => [k, points(ring)])),
  placements: layout.placements.map(placementRecord),
});

function jigRecord(
  { jig, parts, dowels, measured, proof }: ReadyJig,
  files: readonly string[],
): unknown {
  const { csg: _csg, mesh: _mesh, letters, pattern, kind, ...rest } = jig;
  return {
    pattern,
    kind,
    file: files[0],
    ...rest,
    letters: letters.map((l) => l.text),
    parts: parts.map(({ piece, sizeMm, volumeMm3, massG }, i) => ({
      piece,
      file: files[i],
      sizeMm,
      volumeMm3,
      massG,
    })),
    dowels,
    measured,
    proof,
  };
}

/** JSON with two-space indent, numbers to six decimals, points on one line, no negative zero. */
export function recordText(value: unknown): string {
  return `${written(value, '')}\n`;
}

function written(value: unknown, indent: string): string {
  if (typeof value === 'number') return number(value);
  if (value === null || value === undefined) return 'null';
  if (typeof value !== 'object') return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    if (value.every((v) => typeof v === 'number')) return `[${value.map(number).join(', ')}]`;
    return `[\n${value.map((v) => inner + written(v, inner)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, v]) => v !== undefined);
  if (entries.length === 0) return '{}';
  const lines = entries.map(([k, v]) => `${inner}${JSON.stringify(k)}: ${written(v, inner)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}

/** Not the drawings' formatter: moments in mm⁵ are larger than any coordinate. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new Fault(`number ${value} in the record`);
  return String(Number(value.toFixed(DECIMALS)) + 0);
}
