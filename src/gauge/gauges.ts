/** All gauges of a pattern: section gauges, profile gauges, and the round-over map beside them. */
import type { Blank } from '../blank/blank.js';
import type { BodyShape } from '../body/shape.js';
import type { PlateSizes } from './plate.js';
import { type ProfileGauge, profileGauges } from './profile.js';
import { type SectionGauge, sectionGauges } from './section.js';
import { gaugeStations, LEAST_RATIO, type StationWish } from './stations.js';

export type GaugeWish = StationWish & PlateSizes;

export type Gauges = {
  readonly sections: readonly SectionGauge[];
  readonly profiles: readonly [back: ProfileGauge, belly: ProfileGauge];
};

/** A listed station where there is no section to hold a plate against. */
export type StationOutside = {
  readonly stationMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
};

export type GaugesResult =
  | { readonly gauges: Gauges; readonly outside: readonly [] }
  | { readonly gauges: null; readonly outside: readonly StationOutside[] };

export function makeGauges(
  shape: BodyShape,
  blank: Pick<Blank, 'name' | 'version' | 'holes' | 'hangers' | 'slot'>,
  wish: GaugeWish,
): GaugesResult {
  const { lengthMm } = shape;
  const [leastMm, mostMm] = [LEAST_RATIO * lengthMm, (1 - LEAST_RATIO) * lengthMm];
  const stations = gaugeStations(shape, blank, wish);
  const outside = stations
    .filter(({ stationMm }) => !(stationMm >= leastMm && stationMm <= mostMm))
    .map(({ stationMm }) => ({ stationMm, leastMm, mostMm }));
  if (outside.length > 0) return { gauges: null, outside };
  const sections = sectionGauges(shape, stations, wish, blank);
  const profiles = profileGauges({ shape, slot: blank.slot, sections, sizes: wish, name: blank });
  return { gauges: { sections, profiles }, outside: [] };
}
