/** A run with all that a sheet must bear: markup, both directions, letters no face has, inches, glued weights, a through-wire. */
import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readFaces } from '../../src/io.js';
import type { Build } from '../../src/pipeline.js';
import type { Problem } from '../../src/problem.js';
import { produce } from '../../src/produce.js';
import { buildRecord, recordText } from '../../src/record/build-json.js';
import { jigPaths } from '../../src/record/jig-files.js';
import { type SheetFile, sheetFiles } from '../../src/record/sheet-files.js';
import type { SheetRecord } from '../../src/sheet/record.js';

const ROOT = join(import.meta.dirname, '../..');
export const template = (name: string): string =>
  readFileSync(join(ROOT, 'templates', `${name}.yaml`), 'utf8');

export const MARKUP = '<script>alert("1")</script> & \'varnish\'';
/** Hebrew: "sea lacquer (clear) 5". */
export const HEBREW = 'לכת ים (שקופה) 5';
/** Chinese for lacquer, which DejaVu Sans Condensed does not have. */
export const CHINESE = '漆 lacquer';
/** Arabic for "hook". */
export const ARABIC = 'خطاف';

const SKERRY = template('skerry')
  .replace('Round-bellied shallow diver', `${MARKUP}. Round-bellied`)
  .replace(
    /coats:[\s\S]*?water:/,
    `coats:
  - { name: sealer, thicknessMm: 0.05, count: 1 }
  - { name: ${JSON.stringify(MARKUP)}, thicknessMm: 0.05, count: 1 }
  - { name: ${JSON.stringify(HEBREW)}, thicknessMm: 0.03, count: 1 }
  - { name: ${JSON.stringify(CHINESE)}, thicknessMm: 0.03, count: 1 }
  - { name: epoxy, thicknessMm: 0.15, count: 2 }
water:`,
  )
  .replaceAll('treble-4', JSON.stringify(ARABIC));

const HOLM = template('holm').replace(
  /ballast:[\s\S]*?towEye/,
  'ballast:\n  - { stationMm: 31, diameterMm: 8, depthMm: 18, metal: lead, weight: lead-5g }\ntowEye',
);

const RUN = `
schema: 1
kind: run
name: thaw
note: ${JSON.stringify(`Two benches. ${HEBREW}\n${MARKUP}`)}
orders:
  - { pattern: skerry.yaml, count: 6 }
  - { pattern: ghyll.yaml, count: 4 }
  - { pattern: holm.yaml, count: 4 }
blocks:
  - { name: roof, timber: western-redcedar, lengthMm: 420, widthMm: 92, thicknessMm: 20, count: 4, marginMm: 4 }
  - { name: bass, timber: american-basswood, lengthMm: 300, widthMm: 80, thicknessMm: 20, count: 4, marginMm: 3 }
stack: { layers: 2, tapeThicknessMm: 0.2, largestHeightMm: 60 }
saw: { guidance: steered, kerfMm: 1.2, wanderMm: 0.8 }
templateSheet:
  material: birch plywood
  lengthMm: 300
  widthMm: 200
  thicknessMm: 3
  cutter: { guidance: follows, kerfMm: 0.2 }
materials:
  fittings:
    ${JSON.stringify(ARABIC)}: { kind: treble, massG: 1.6, densityKgM3: 7850, source: "weighed" }
shop: { inches: true, benchHoursPerDay: 6 }
jigs: [drill-stop.yaml, gauges.yaml]
`;

export type Sample = {
  readonly build: Build;
  readonly problems: readonly Problem[];
  readonly files: readonly SheetFile[];
  readonly record: SheetRecord;
  /** Text of build.json. */
  readonly recorded: string;
  readonly html: string;
  readonly pdf: Uint8Array;
};

export async function sampleRun(): Promise<Sample> {
  const dir = mkdtempSync(join(tmpdir(), 'blankwright-sheet-'));
  const write = (name: string, text: string) => writeFileSync(join(dir, `${name}.yaml`), text);
  write('skerry', SKERRY);
  write('ghyll', template('ghyll'));
  write('holm', HOLM);
  write('run', RUN);
  for (const jig of ['drill-stop', 'gauges'])
    copyFileSync(join(ROOT, 'jigs', `${jig}.yaml`), join(dir, `${jig}.yaml`));
  return made(join(dir, 'run.yaml'));
}

export const sampleSingle = (): Promise<Sample> => made(join(ROOT, 'templates/holm.yaml'));

async function made(path: string): Promise<Sample> {
  const { made, problems } = await produce(path);
  if (!made) throw new Error(JSON.stringify(problems));
  const recorded = recordText(buildRecord(made.build, 'blankwright test', jigPaths));
  const files = await sheetFiles(made.build, recorded, readFaces());
  const bytes = (path: string): Uint8Array => {
    const file = files.find((f) => f.path === path);
    if (!file) throw new Error(`no ${path}`);
    return file.bytes;
  };
  return {
    build: made.build,
    problems,
    files,
    record: JSON.parse(recorded) as SheetRecord,
    recorded,
    html: new TextDecoder().decode(bytes('sheet/shop-sheet.html')),
    pdf: bytes('sheet/shop-sheet.pdf'),
  };
}
