/**
 * 3MF: solids with their unit, names and places on the bed in one file (3MF Core Specification of
 * the 3MF Consortium; namespace of 2015/02). A ZIP package by the Open Packaging Conventions
 * (ECMA-376 part 2) with three members, by fflate.
 */
import { strToU8, type Zippable, zipSync } from 'fflate';
import type { Mesh } from '../geometry/mesh.js';
import { welded } from '../geometry/weld.js';
import { Fault } from '../problem.js';
import { assertRigid, type Matrix } from '../solid/placement.js';
import { fixed, trimmed } from './number.js';
import { escaped } from './xml.js';

export type ThreemfPart = {
  readonly name: string;
  readonly mesh: Mesh;
  /** From coordinates of the mesh to those of the bed, mm. Readers want nothing below zero there. */
  readonly at: Matrix;
};

export type ThreemfSet = {
  readonly title: string;
  readonly description: string;
  /** Name and version of what wrote it. */
  readonly application: string;
  readonly parts: readonly ThreemfPart[];
};

/**
 * Decimals of a coordinate, mm. A reader that keeps 32-bit floats finds the very corners of our STL
 * from 1 mm on, where those are 1.2e-7 apart or more; nearer to zero corners this close are joined.
 */
const DECIMALS = 7;

/** The earliest time a ZIP can hold. ZIP tells time in the machine's own zone, so it is made there. */
const zipTime = (): Date => new Date(1980, 0, 1);

const XML = '<?xml version="1.0" encoding="UTF-8"?>\n';
const MODEL_PATH = '3D/3dmodel.model';

const CONTENT_TYPES = `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
`;

const RELATIONSHIPS = `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Target="/${MODEL_PATH}" Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
`;

/**
 * The parts as one 3MF file: unit millimeter, one object and one build item a part, in their order.
 * The same set gives the same bytes on any machine.
 * @throws Fault without parts, on a part without a name, on text XML cannot hold, on a placement
 * that is not rigid, and on a mesh that is no longer closed when its corners are rounded.
 */
export function threemf(set: ThreemfSet): Uint8Array {
  if (set.parts.length === 0) throw new Fault('3MF without parts');
  const members: Zippable = {
    '[Content_Types].xml': strToU8(CONTENT_TYPES),
    '_rels/.rels': strToU8(RELATIONSHIPS),
    [MODEL_PATH]: strToU8(model(set)),
  };
  return zipSync(members, { mtime: zipTime(), level: 4 });
}

function model({ title, description, application, parts }: ThreemfSet): string {
  const metadata = Object.entries({
    Title: title,
    Description: description,
    Application: application,
  });
  return [
    `${XML}<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`,
    ...metadata.map(([name, text]) => `<metadata name="${name}">${escaped(text)}</metadata>`),
    '<resources>',
    ...parts.map((part, i) => object(part, i + 1)),
    '</resources>',
    '<build>',
    ...parts.map(({ at }, i) => `<item objectid="${i + 1}" transform="${transform(at)}"/>`),
    '</build>',
    '</model>\n',
  ].join('\n');
}

function object({ name, mesh }: ThreemfPart, id: number): string {
  if (name === '') throw new Fault('3MF part without a name');
  const { positions: p, triangles: t } = welded(mesh.positions, mesh.triangles, written);
  const lines = [
    `<object id="${id}" type="model" name="${escaped(name)}">`,
    '<mesh>',
    '<vertices>',
  ];
  for (let v = 0; v < p.length; v += 3) {
    lines.push(`<vertex x="${mm(p[v])}" y="${mm(p[v + 1])}" z="${mm(p[v + 2])}"/>`);
  }
  lines.push('</vertices>', '<triangles>');
  for (let k = 0; k < t.length; k += 3) {
    lines.push(`<triangle v1="${t[k]}" v2="${t[k + 1]}" v3="${t[k + 2]}"/>`);
  }
  lines.push('</triangles>', '</mesh>', '</object>');
  return lines.join('\n');
}

/** The number that a reader finds: that of the STL, to the decimals written. */
const written = (value: number): number => Number(fixed(Math.fround(value), DECIMALS));

const mm = (value: number): string => trimmed(value, DECIMALS);

/** Points are rows there and stand before the matrix, so each row is a column of ours; the fourth of ones and zeros is left out. */
function transform(matrix: Matrix): string {
  assertRigid(matrix);
  return matrix
    .filter((_, i) => i % 4 < 3)
    .map(mm)
    .join(' ');
}
