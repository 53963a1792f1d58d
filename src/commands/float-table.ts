/** A lure in its water as a few short tables for the terminal. Nothing is computed here. */

import type { Floating } from '../afloat/floating.js';
import { toldSpeed } from '../afloat/told-speed.js';
import { wishSeen } from '../afloat/wish.js';
import type { Sensitivity } from '../ballast/sensitivity.js';
import type { Attitude } from '../float/attitude.js';
import { waterG } from '../float/water.js';
import { trimmed } from '../formats/number.js';
import { leanText, missedText, wishText } from './ballast-words.js';
import { signed } from './signed.js';
import { table } from './table.js';

export function floatTables(f: Floating): string {
  const { lure, load, solid } = f;
  const fullG = waterG(solid.volumeMm3, load.waterDensityKgM3);
  const [rest, ...others] = f.attitudes;
  return [
    `${f.pattern.name} ${f.pattern.version} ${f.verdict}: ${trimmed(lure.massG, 1)} ± ${trimmed(lure.spreadG, 1)} g; wholly under it keeps out ${trimmed(fullG, 1)} g of water of ${trimmed(load.waterDensityKgM3, 1)} kg/m³ (${trimmed(f.water.temperatureC, 1)} °C, ${trimmed(f.water.salinityPsu, 1)} psu).`,
    `${rest.dryRatio > 0 ? 'At rest' : 'Under water it hangs'}: ${lying(rest)}.${steadiness(f)}`,
    ...others.filter((a) => a.stable).map((a) => `It can also rest: ${lying(a)}.`),
    letGo(f),
    ...wishLine(f),
    stageTable(f),
    itemTable(f),
    ...(f.holes.length > 0 ? [holeTable(f)] : []),
    `Largest round-over bit: ${f.roundOver.bitMm > 0 ? `${trimmed(f.roundOver.bitMm, 2)} mm` : 'none is small enough'} (up to ${trimmed(f.roundOver.limitMm, 2)} mm stays clear of the finished body; closest at station ${trimmed(f.roundOver.stationMm, 0)} mm).`,
    ...(f.slips ? [slipTable(f)] : []),
  ].join('\n\n');
}

/** Metacentric height across below which a lure lolls at every ripple, mm: common practice, no source. */
const TENDER_MM = 0.5;

function steadiness({ attitudes: [rest] }: Floating): string {
  if (rest.neutral) return ' It stays at whatever roll it is turned to: nothing rights it.';
  if (!rest.stable) return ' No attitude is stable: it turns at a touch.';
  return Math.min(rest.gmAcrossMm, rest.gmAlongMm) < TENDER_MM
    ? ' It is tender: little rights it.'
    : '';
}

function wishLine(f: Floating): string[] {
  const seen = wishSeen(f);
  if (!seen) return [];
  const off = seen.missed && missedText(seen.missed);
  const far = off === null ? ' (it rolls over)' : off === '' ? '' : ` (off by ${off})`;
  return [
    `Its wish, ${wishText(seen.wish)}, is ${seen.met ? 'met' : 'not met'}${far}.${seen.met ? '' : ' `blankwright ballast` looks for holes for it.'}`,
  ];
}

const ON_END_DEG = 60; // beyond, upright says nothing

/** How it lies, in words. */
export function lying(a: Attitude): string {
  const trim =
    Math.abs(a.trimDeg) < 0.05
      ? 'level'
      : `nose ${trimmed(Math.abs(a.trimDeg), 1)}° ${a.trimDeg > 0 ? 'up' : 'down'}`;
  const heel = Math.abs(a.heelDeg);
  const side = a.heelDeg > 0 ? 'port' : 'starboard';
  const upright =
    Math.abs(a.trimDeg) > ON_END_DEG
      ? 'on end'
      : heel < 0.05
        ? 'upright'
        : heel > 179.95
          ? 'belly up'
          : `heeled ${trimmed(heel, 1)}° ${side} down`;
  const height = (what: string, mm: number) =>
    `${what} ${trimmed(Math.abs(mm), 1)} mm ${mm < 0 ? 'under' : 'out'}`;
  const afloat =
    a.dryRatio > 0
      ? [
          `${trimmed(100 * a.dryRatio, 1)} % dry`,
          height('nose', a.freeboardNoseMm),
          height('tail', a.freeboardTailMm),
          height('highest point', a.freeboardMm),
        ]
      : [];
  return [
    trim,
    upright,
    ...afloat,
    `GM ${trimmed(a.gmAcrossMm, 1)} mm across, ${trimmed(a.gmAlongMm, 1)} mm along`,
  ].join(', ');
}

function letGo(f: Floating): string {
  const speed = toldSpeed(f.speed, f.pattern);
  return speed.cmS < SLOWEST_CM_S
    ? 'Let go under water it stays where it is.'
    : `Let go under water it ${speed.kind} ${trimmed(speed.cmS, 1)} cm/s (${trimmed(speed.lowCmS, 1)} to ${trimmed(speed.highCmS, 1)} by what is known of its drag and attitude)${speed.trimDeg === null ? '' : `, ${noseWords(speed.trimDeg)}`}.`;
}

const SLOWEST_CM_S = 0.05;

const noseWords = (trimDeg: number): string =>
  Math.abs(trimDeg) < 0.5
    ? 'level'
    : `nose ${trimmed(Math.abs(trimDeg), 0)}° ${trimDeg > 0 ? 'up' : 'down'}`;

const stageTable = ({ stages }: Floating): string =>
  table(
    ['stage', 'g', '±', 'cm³', 'center of gravity'],
    stages.map((s) => [
      s.name,
      s.scaleG.toFixed(1),
      trimmed(s.spreadG, 1),
      trimmed(s.volumeMm3 / 1000, 2),
      `station ${trimmed(s.cgMm[0], 1)} mm, height ${signed(s.cgMm[2], 1)} mm`,
    ]),
  );

const itemTable = ({ lure }: Floating): string =>
  table(
    ['item', 'g', '%', 'station mm', 'height mm'],
    [...lure.items]
      .sort((a, b) => b.massG - a.massG)
      .map((i) => [
        i.name,
        trimmed(i.massG, 2),
        trimmed((100 * i.massG) / lure.massG, 0),
        trimmed(i.cgMm[0], 1),
        signed(i.cgMm[2], 1),
      ]),
  );

const holeTable = ({ holes }: Floating): string =>
  table(
    ['hole at', 'bit', 'drill', 'to the tip', 'metal left', 'weighs'],
    holes.map((h) => [
      `${trimmed(h.stationMm, 1)} mm${leanText(h)}`,
      `${trimmed(h.diameterMm, 2)} mm`,
      `${trimmed(h.drilledMm, 1)} mm`,
      `${trimmed(h.tipDepthMm, 1)} mm`,
      `${trimmed(h.plugMm, 1)} mm ${h.metal}`,
      `${trimmed(h.plugMassG, 2)} g`,
    ]),
  );

function slipTable({ slips, holes }: Floating): string {
  if (!slips) return '';
  const { perHole, perTimber, perC, freshToSalt } = slips;
  const row = (what: string, s: Sensitivity): string[] => [
    what,
    signed(s.massG, 2),
    s.trimDeg === null ? '–' : signed(s.trimDeg, 2),
    signed(s.freeboardNoseMm, 2),
    signed(s.freeboardTailMm, 2),
  ];
  return table(
    ['what a slip changes', 'g', 'nose up °', 'nose out mm', 'tail out mm'],
    [
      ...holes.flatMap(({ stationMm }, i) => [
        row(`hole at ${trimmed(stationMm, 1)}: 1 mm aft`, perHole[i].perStationMm),
        row(`hole at ${trimmed(stationMm, 1)}: 1 mm deeper`, perHole[i].perDepthMm),
      ]),
      row('timber 10 kg/m³ heavier', perTimber.per10KgM3),
      row('water 1 °C warmer', perC),
      ...(freshToSalt ? [row('from fresh to sea water', freshToSalt)] : []),
    ],
  );
}
