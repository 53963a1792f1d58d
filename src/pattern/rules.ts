/** Rules between the fields of a pattern file: what no single field's range can tell. */
import { steepestEnd } from '../geometry/monotone.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { Materials } from '../tables/materials.js';
import type { Timbers } from '../tables/timbers.js';
import type { StationFields } from './fields.js';
import { keyText } from './form.js';
import { itemRules } from './item-rules.js';
import { nearest } from './nearest.js';
import { stationMm } from './pattern.js';
import type { PatternFile } from './schema.js';
import { wishProblems } from './wish-rules.js';

/** The sections that have the right form; rules run on those that are there. */
export type Sections = Partial<PatternFile>;

const TWISTED_DIAMETERS = 3; // a winding has one wire inside and one on either side
const LEAST_STATION_STEP_MM = 0.1; // closer rows give a curve nobody can draw

export function patternRules(sections: Sections, materials: Materials): Problem[] {
  const { body, timber } = sections;
  return [
    ...(body ? [...stationRules(sections, body), ...tableRules(body)] : []),
    ...wireRules(sections),
    ...(timber === undefined ? [] : timberRule(timber, materials.timbers, ['timber'])),
    ...itemRules(sections, materials),
    ...(sections.wish ? wishProblems(sections.wish) : []),
  ];
}

/** A timber must be in the table; the nearest name is offered. */
export function timberRule(name: string, timbers: Timbers, path: KeyPath): Problem[] {
  if (Object.hasOwn(timbers, name)) return [];
  const known = Object.keys(timbers).sort();
  // The trade says cedar or beech; the table says which.
  const words = name.toLowerCase().split(/[^a-z]+/);
  const kin = known.filter((k) => k.split('-').some((part) => words.includes(part)));
  const guess = nearest(name, known);
  const like = kin.length > 0 ? kin : guess ? [guess] : [];
  const fix =
    like.length > 0 ? `Did you mean ${like.join(' or ')}?` : `It knows: ${known.join(', ')}.`;
  return [
    problem('unknown-timber', path, {
      value: `"${name}"`,
      nearest: `${fix} For another timber take the one nearest in weight and give massG of its blocks.`,
    }),
  ];
}

function stationRules(sections: Sections, body: PatternFile['body']): Problem[] {
  const places: {
    readonly path: KeyPath;
    readonly at: StationFields;
    readonly mayBeEnd?: boolean;
  }[] = [
    ...body.offsets.map((row, i) => ({ path: ['body', 'offsets', i], at: row })),
    ...body.fullness.map((row, i) => ({ path: ['body', 'fullness', i], at: row, mayBeEnd: true })),
    ...(sections.lip ? [{ path: ['lip', 'slot'], at: sections.lip.slot }] : []),
    ...(sections.ballast ?? []).map((hole, i) => ({ path: ['ballast', i], at: hole })),
    ...(sections.hangers ?? []).map((h, i) => ({ path: ['hangers', i], at: h })),
  ];
  return places.flatMap(({ path, at, mayBeEnd }) => {
    const key = keyText(path);
    if (at.stationMm !== undefined && at.stationRatio !== undefined) {
      return [
        problem('station-twice', path, {
          key,
          stationMm: at.stationMm,
          stationRatio: at.stationRatio,
        }),
      ];
    }
    const s = stationMm(at, body.lengthMm);
    if (Number.isNaN(s)) return [problem('station-missing', path, { key })];
    const inside = mayBeEnd ? s >= 0 && s <= body.lengthMm : s > 0 && s < body.lengthMm;
    return inside
      ? []
      : [problem('station-outside', path, { key, stationMm: s, lengthMm: body.lengthMm })];
  });
}

function tableRules(body: PatternFile['body']): Problem[] {
  return [
    ...orderRule(body.offsets, ['body', 'offsets'], body.lengthMm),
    ...orderRule(body.fullness, ['body', 'fullness'], body.lengthMm),
    ...crossingRule(body),
    ...columnRules(body),
  ];
}

function orderRule(rows: readonly StationFields[], path: KeyPath, lengthMm: number): Problem[] {
  return rows.flatMap((row, i) => {
    const [before, here] = [
      i === 0 ? Number.NaN : stationMm(rows[i - 1], lengthMm),
      stationMm(row, lengthMm),
    ];
    if (!(here - before < LEAST_STATION_STEP_MM)) return [];
    const at = [...path, i];
    const facts = {
      key: keyText(at),
      stationMm: here,
      beforeMm: before,
      leastMm: LEAST_STATION_STEP_MM,
    };
    return [problem('stations-disordered', at, facts)];
  });
}

/** Row by row: neither side may cross the datum line, and the two must leave wood between them. */
function crossingRule(body: PatternFile['body']): Problem[] {
  return body.offsets.flatMap((row, i) => {
    const { backMm = 0, bellyMm = 0 } = row;
    const both = row.backMm !== undefined && row.bellyMm !== undefined;
    const wrong = backMm < 0 || bellyMm < 0 || (both && backMm + bellyMm <= 0);
    const facts = { stationMm: stationMm(row, body.lengthMm), backMm, bellyMm };
    return wrong ? [problem('offsets-cross', ['body', 'offsets', i], facts)] : [];
  });
}

const COLUMNS = ['backMm', 'bellyMm', 'halfBreadthMm'] as const;
type Column = (typeof COLUMNS)[number];
const CURVE: Readonly<Record<Column, string>> = {
  backMm: 'back',
  bellyMm: 'belly',
  halfBreadthMm: 'half-breadth',
};

/** Every column must have a value somewhere, and leave room for the rounds at nose and tail. */
function columnRules(body: PatternFile['body']): Problem[] {
  const empty = COLUMNS.filter((column) => body.offsets.every((row) => row[column] === undefined));
  return [
    ...empty.map((column) => problem('column-empty', ['body', 'offsets'], { column })),
    ...roundRule(body, 'noseRadiusMm', ['backMm', 'bellyMm']),
    ...roundRule(body, 'tailRadiusMm', ['backMm', 'bellyMm']),
    ...roundRule(body, 'planNoseRadiusMm', ['halfBreadthMm']),
    ...roundRule(body, 'planTailRadiusMm', ['halfBreadthMm']),
  ];
}

type RadiusKey = 'noseRadiusMm' | 'tailRadiusMm' | 'planNoseRadiusMm' | 'planTailRadiusMm';

/** The round must fit under the nearest offset of each curve that has it; the tighter curve is told. */
function roundRule(
  body: PatternFile['body'],
  key: RadiusKey,
  columns: readonly Column[],
): Problem[] {
  const radiusMm = body[key];
  if (radiusMm === undefined) return [];
  const end = /nose/i.test(key) ? 'nose' : 'tail';
  const limits = columns.flatMap((column) => {
    const rows = body.offsets.flatMap((row) => {
      const offset = row[column];
      const at = stationMm(row, body.lengthMm);
      return offset === undefined
        ? []
        : [{ at, offset, distance: end === 'nose' ? at : body.lengthMm - at }];
    });
    const near = rows[end === 'nose' ? 0 : rows.length - 1];
    const flat = rows.every((r) => r.offset === 0);
    if (!near || flat || !(near.distance > 0) || near.offset < 0) return [];
    // The square of the offset leaves the end with the slope 2R.
    return [
      {
        limit: steepestEnd(near.offset ** 2 / near.distance) / 2,
        at: near.at,
        curve: CURVE[column],
      },
    ];
  });
  const tightest = limits.sort((a, b) => a.limit - b.limit)[0];
  if (!tightest || radiusMm <= tightest.limit * (1 + 1e-9)) return [];
  const limitMm = Math.floor(tightest.limit * 100) / 100;
  const facts = { end, radiusMm, curve: tightest.curve, stationMm: tightest.at, limitMm };
  return [problem('end-radius-too-large', ['body', key], facts)];
}

function wireRules({ towEye, tailEye, hangers, throughWire }: Sections): Problem[] {
  const eyes: { readonly path: KeyPath; readonly kind: string | undefined }[] = [
    { path: ['towEye'], kind: towEye?.kind },
    { path: ['tailEye'], kind: tailEye?.kind },
    ...(hangers ?? []).map((h, i) => ({ path: ['hangers', i], kind: h.kind })),
  ];
  if (throughWire) {
    const { diameterMm, boreMm, twistTurns } = throughWire;
    const path = ['throughWire', 'boreMm'];
    if (boreMm <= diameterMm) return [problem('bore-too-small', path, { boreMm, diameterMm })];
    const wound = twistTurns > 0 && [towEye, tailEye].some((eye) => eye?.kind === 'wire');
    const limitMm = TWISTED_DIAMETERS * diameterMm;
    return wound && boreMm < limitMm
      ? [problem('bore-too-small-for-twist', path, { boreMm, diameterMm, limitMm })]
      : [];
  }
  return eyes.flatMap(({ path, kind }) =>
    kind === 'wire' ? [problem('wire-missing', path, { key: keyText(path) })] : [],
  );
}
