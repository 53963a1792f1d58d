/** What a build made, as a short table and as data. */

import type { Floating } from '../afloat/floating.js';
import { wishSeen } from '../afloat/wish.js';
import { trimmed } from '../formats/number.js';
import { isDrillStop } from '../jig/drill-stop/jig.js';
import type { ReadyJig } from '../jig/set.js';
import type { Build, Product } from '../pipeline.js';
import { FACE_COLUMNS, faceCells, timberWords } from './nest-words.js';
import { soMany } from './so-many.js';
import { table } from './table.js';

export function summary(build: Build, dir: string): string {
  const { job, products, nest, faces } = build;
  const patterns = table(
    ['pattern', 'length', 'body', 'sawn blank', 'ordered', 'made', 'drill', 'rigged'],
    products.map((p) => [
      p.blank.name,
      `${trimmed(p.blank.lengthMm, 0)} mm`,
      `${trimmed(p.body.properties.volumeMm3 / 1000, 1)} cm³`,
      mass(p),
      nest ? String(p.count) : '–',
      nest ? String(nest.made[p.blank.name]) : '–',
      drill(p.jigs),
      afloat(p.floating),
    ]),
  );
  const cuts =
    nest === null
      ? []
      : [
          table(
            [...FACE_COLUMNS, 'used'],
            nest.faces.map((f) => [...faceCells(f), `${trimmed(100 * f.usedRatio, 0)} %`]),
          ),
        ];
  const first = faces.length > 0 ? 'faces/face-1.svg' : `templates/${products[0].blank.name}.svg`;
  return [
    `${job.name}: ${made(build)} in ${dir}`,
    patterns,
    ...cuts,
    ...(nest === null ? [] : [timberWords(nest)]),
    `Look first at ${dir}/${first}, ${dir}/float (how each lure lies in the water) and ${dir}/views. Print ${dir}/sheet/shop-sheet.pdf for the bench${jigCount(build) > 0 ? `, and the jigs in ${dir}/jigs` : ''}; pages at true size are beside the drawings (PDF). build.json has every number.`,
    'Saws, molten lead, dust and epoxy hurt people: README, "Cautions". Local rules come first.',
    '',
  ].join('\n\n');
}

const jigCount = ({ products }: Pick<Build, 'products'>): number =>
  products.reduce((n, p) => n + p.jigs.length, 0);

function made({ products, nest, sheets }: Build): string {
  const jigs = jigCount({ products });
  const blanks = nest
    ? [
        soMany(
          Object.values(nest.made).reduce((a, b) => a + b, 0),
          'blank',
        ),
      ]
    : [];
  const stacks = nest ? [soMany(nest.stacks, 'stack'), soMany(nest.faces.length, 'face')] : [];
  const laid = sheets.reduce((sum, s) => sum + s.layout.copies, 0);
  return [
    soMany(products.length, 'pattern'),
    ...blanks,
    ...stacks,
    ...(laid > 0 ? [soMany(laid, 'sheet')] : []),
    ...(jigs > 0 ? [soMany(jigs, 'jig')] : []),
  ].join(', ');
}

const mass = ({ sawnMass: { massG, spreadG } }: Product): string =>
  spreadG === null
    ? `${trimmed(massG, 1)} g, by weight`
    : `${trimmed(massG, 1)} ± ${trimmed(spreadG, 1)} g`;

/** Bit and collar setting of each ballast hole. */
const drill = (jigs: readonly ReadyJig[]): string =>
  jigs
    .flatMap(({ jig }) => (isDrillStop(jig) ? jig.guides.filter((g) => g.for === 'ballast') : []))
    .map((g) => `${trimmed(g.bitDiameterMm, 2)} mm bit, collar ${trimmed(g.collarSettingMm, 1)} mm`)
    .join('; ') || '–';

/** What it weighs with everything on it, and how it then lies. */
function afloat(floating: Floating): string {
  const {
    lure,
    verdict,
    attitudes: [rest],
  } = floating;
  const trim = Math.round(rest.trimDeg);
  const nose = trim === 0 ? 'level' : `nose ${Math.abs(trim)}° ${trim > 0 ? 'up' : 'down'}`;
  const heel = Math.round(Math.abs(rest.heelDeg));
  const heeled = heel === 0 ? '' : heel === 180 ? ', BELLY UP' : `, HEELED ${heel}°`;
  const wish = wishSeen(floating)?.met === false ? '; wish not met' : '';
  return `${trimmed(lure.massG, 1)} g, ${verdict}, ${nose}${heeled}${wish}`;
}

export const summaryData = ({ products, nest }: Build) => ({
  patterns: products.map(({ blank, count, body, sawnMass }) => ({
    name: blank.name,
    ordered: count,
    made: nest?.made[blank.name] ?? null,
    volumeMm3: body.properties.volumeMm3,
    sawnBlankMassG: sawnMass.massG,
  })),
  stacks: nest?.stacks ?? null,
  usedRatio: nest?.usedRatio ?? null,
  timberUsedMm3: nest?.timberUsedMm3 ?? null,
  timberBoundMm3: nest?.timberBoundMm3 ?? null,
  timberBoundKind: nest?.timberBoundKind ?? null,
  limitReached: nest?.limitReached ?? null,
  interrupted: nest?.interrupted ?? null,
});
