/** A commented file to start from: values of a plain, buildable example, comments from the schema. */
import { type Parameter, parametersOf } from '../pattern/manual.js';
import { runSections } from '../pattern/run-schema.js';
import { patternSections } from '../pattern/schema.js';
import { type StarterStock, TAPE_MM } from './starter-stock.js';

type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value };

/** `schemaPath`: where an editor finds the JSON Schema, from the file's folder. */
export function patternStarter(name: string, schemaPath: string): string {
  return starter(patternSections, schemaPath, {
    schema: 1,
    kind: 'pattern',
    name,
    version: '0.1',
    note: 'First sketch.',
    scaleRatio: 1,
    body: {
      lengthMm: 90,
      noseRadiusMm: 4,
      tailRadiusMm: 2,
      offsets: [
        { stationMm: 5, backMm: 5.5, bellyMm: 6, halfBreadthMm: 4.5 },
        { stationMm: 15, backMm: 9, bellyMm: 10, halfBreadthMm: 7 },
        { stationMm: 35, backMm: 11, bellyMm: 13, halfBreadthMm: 9 },
        { stationMm: 55, backMm: 9.5, bellyMm: 10.5, halfBreadthMm: 8 },
        { stationMm: 80, backMm: 5, bellyMm: 5, halfBreadthMm: 4 },
      ],
      fullness: [{ stationRatio: 0.5, upperExponent: 2.5, lowerExponent: 2.3 }],
    },
    lip: {
      widthMm: 20,
      lengthMm: 30,
      thicknessMm: 1.5,
      angleDeg: 40,
      slot: { stationMm: 7, depthMm: 10, fitMm: 0.1 },
    },
    ballast: [{ stationMm: 33, diameterMm: 8, depthMm: 13, pointAngleDeg: 118, metal: 'lead' }],
    towEye: { kind: 'screw', heightMm: 0 },
    hangers: [{ stationMm: 45, kind: 'screw', ring: 'ring-6', treble: 'treble-6' }],
    tailEye: { kind: 'screw', heightMm: 0, ring: 'ring-6', treble: 'treble-6' },
    timber: 'western-redcedar',
    sandingAllowanceMm: 1.5,
    blockThicknessMm: 20,
    coats: [
      { name: 'sealer', thicknessMm: 0.05, count: 1 },
      { name: 'epoxy', thicknessMm: 0.15, count: 3 },
    ],
    water: { temperatureC: 12, salinityPsu: 0 },
    wish: { buoyancy: 'floats', dryRatio: 0.12, noseDownDeg: 5 },
  });
}

/** `pattern` is the file to order, `stock` what it is made from. */
export function runStarter(
  name: string,
  pattern: string,
  stock: StarterStock,
  schemaPath: string,
): string {
  return starter(runSections, schemaPath, {
    schema: 1,
    kind: 'run',
    name,
    note: '',
    orders: [{ pattern, count: 8 }],
    blocks: [
      {
        name: 'pile-a',
        timber: stock.timber,
        lengthMm: stock.lengthMm,
        widthMm: stock.widthMm,
        thicknessMm: stock.thicknessMm,
        count: 4,
        marginMm: 4,
      },
    ],
    stack: {
      layers: stock.layers,
      tapeThicknessMm: TAPE_MM,
      largestHeightMm: stock.largestHeightMm,
    },
    saw: { guidance: 'steered', kerfMm: 1.2, wanderMm: 0.8, bladeWidthMm: 6 },
    webMm: 0,
    templateSheet: {
      material: 'birch plywood',
      lengthMm: stock.sheetLengthMm,
      widthMm: 200,
      thicknessMm: 3,
      marginMm: 5,
      webMm: 2,
      cutter: { guidance: 'steered', kerfMm: 0.6 },
      hangHoleMm: 5,
      pencilHoleMm: 2.5,
      leastWallMm: 2,
    },
    lipSheets: [
      {
        material: 'clear polycarbonate',
        lengthMm: 300,
        widthMm: 200,
        thicknessMm: stock.lipThicknessMm,
        marginMm: 5,
        webMm: 2,
        cutter: { guidance: 'steered', kerfMm: 1 },
      },
    ],
    paper: { size: 'A4', marginMm: 8, overlapMm: 10 },
    shop: { inches: false, benchHoursPerDay: 6 },
  });
}

function starter(
  sections: Parameters<typeof parametersOf>[0],
  schemaPath: string,
  values: { readonly [key: string]: Value },
): string {
  const manual = new Map(parametersOf(sections).map((p) => [p.key, p]));
  const lines = Object.entries(values).flatMap(([key, value]) =>
    entry(key, value, key, '', manual),
  );
  return `# yaml-language-server: $schema=${schemaPath}\n${lines.join('\n')}\n`;
}

/** One key with its comment above it; rows of a list keep to one line, and the list's keys are told once. */
function entry(
  key: string,
  value: Value,
  path: string,
  indent: string,
  manual: ReadonlyMap<string, Parameter>,
): string[] {
  const about = comment(manual.get(path), indent);
  if (Array.isArray(value)) {
    const rowKeys = [...manual.values()].filter(
      (p) => p.key.startsWith(`${path}[].`) && !p.key.slice(path.length + 3).includes('.'),
    );
    const first = value[0];
    const told = rowKeys.filter(
      (p) => typeof first === 'object' && p.key.slice(path.length + 3) in first,
    );
    const help = told.flatMap((p) =>
      wrap(`${p.key.slice(path.length + 3)}: ${p.about}`, `${indent}#   `),
    );
    return [
      ...about,
      ...help,
      `${indent}${key}:`,
      ...value.map((row) => `${indent}  - ${flow(row)}`),
    ];
  }
  if (typeof value === 'object') {
    const inner = Object.entries(value).flatMap(([k, v]) =>
      entry(k, v, `${path}.${k}`, `${indent}  `, manual),
    );
    return [...about, `${indent}${key}:`, ...inner];
  }
  return [...about, `${indent}${key}: ${flow(value)}`];
}

function comment(parameter: Parameter | undefined, indent: string): string[] {
  return parameter?.about ? wrap(parameter.about, `${indent}# `) : [];
}

function flow(value: Value): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (typeof value === 'object')
    return `{ ${Object.entries(value)
      .map(([k, v]) => `${k}: ${flow(v)}`)
      .join(', ')} }`;
  return typeof value === 'string' && !/^[a-z][a-z0-9 -]*$/.test(value)
    ? JSON.stringify(value)
    : String(value);
}

const WIDTH = 96;

function wrap(text: string, prefix: string): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== '' && prefix.length + last.length + 1 + word.length > WIDTH) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines.map((l) => prefix + l);
}
