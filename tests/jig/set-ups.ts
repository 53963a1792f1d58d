/** The shipped set-ups, read as plain data. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { DrillStopSetup, LipSlotGuideSetup } from '../../src/jig/setup.js';

const read = (name: string): unknown =>
  parse(readFileSync(new URL(`../../jigs/${name}.yaml`, import.meta.url), 'utf8'));

export const drillStopSetup = read('drill-stop') as DrillStopSetup;
export const lipSlotSetup = read('lip-slot-guide') as LipSlotGuideSetup;
