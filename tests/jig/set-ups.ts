/** The shipped set-ups and printer, read as plain data. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { DrillStopSetup } from '../../src/jig/drill-stop/setup.js';
import type { GaugesSetup } from '../../src/jig/gauges/setup.js';
import type { LipSlotGuideSetup } from '../../src/jig/lip-slot-guide/setup.js';
import type { Printer } from '../../src/jig/printer.js';

const read = (name: string): unknown =>
  parse(readFileSync(new URL(`../../jigs/${name}.yaml`, import.meta.url), 'utf8'));

export const drillStopSetup = read('drill-stop') as DrillStopSetup;
export const lipSlotSetup = read('lip-slot-guide') as LipSlotGuideSetup;
export const gaugesSetup = {
  stationsMm: [],
  stationRatios: [],
  ...(read('gauges') as object),
} as unknown as GaugesSetup;
export const printer = read('printer') as Printer;
