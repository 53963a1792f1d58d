/** A build → the set of files it is delivered as, with the manifest that lists them. */
import type { Drawing } from '../drawing/drawing.js';
import { dxf } from '../formats/dxf.js';
import type { Faces } from '../formats/pdf.js';
import { stl } from '../formats/stl.js';
import { svg } from '../formats/svg.js';
import { utf8 } from '../formats/utf8.js';
import { asRegion } from '../geometry/clip.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Build, Product } from '../pipeline.js';
import { slab } from '../solid/csg.js';
import { evaluate } from '../solid/evaluate.js';
import type { SolidKernel } from '../solid/kernel.js';
import { buildRecord, recordText } from './build-json.js';
import { jigFiles, jigPaths } from './jig-files.js';
import { paperFiles } from './paper-files.js';
import { floatSvg } from './pictures.js';
import { sheetFiles } from './sheet-files.js';
import { viewFiles } from './view-files.js';

/** What a file is for. */
export type FileKind =
  | 'template'
  | 'face'
  | 'body'
  | 'blank'
  | 'jig'
  | 'sheet'
  | 'template-sheet'
  | 'lip-sheet'
  | 'gauge'
  | 'round-over-map'
  | 'wire'
  | 'lip'
  | 'printer-check'
  | 'picture'
  | 'view'
  | 'build';

export type MadeFile = {
  readonly path: string;
  readonly kind: FileKind;
  readonly format: 'dxf' | 'svg' | 'stl' | '3mf' | 'pdf' | 'html' | 'json';
  readonly pattern?: string;
  readonly bytes: Uint8Array;
};

/**
 * All files but the manifest, in the order a maker would look at them. `tool` is name and version;
 * `faces` are what text on paper is set in.
 */
export async function fileSet(
  build: Build,
  kernel: SolidKernel,
  tool: string,
  faces: Faces,
): Promise<MadeFile[]> {
  const { products, faces: cutFaces, sheets, papers } = build;
  const recorded = recordText(buildRecord(build, tool, jigPaths));
  return [
    ...(await sheetFiles(build, recorded, faces)),
    ...cutFaces.flatMap(({ drawing }, i) => drawn(drawing, 'face', `faces/face-${i + 1}`)),
    ...products.flatMap(({ blank, template }) =>
      drawn(template.drawn.drawing, 'template', `templates/${blank.name}`, blank.name),
    ),
    ...sheets.flatMap(({ kind, id, drawn: { drawing } }) =>
      drawn(drawing, kind, `sheets/${kind}-${id}`),
    ),
    ...products.flatMap(({ blank: { name }, gauged }) =>
      gauged
        ? [
            ...drawn(gauged.plates.drawing, 'gauge', `gauges/${name}-gauges`, name),
            ...drawn(gauged.strips.drawing, 'round-over-map', `gauges/${name}-round-over`, name),
          ]
        : [],
    ),
    ...(await paperFiles(papers, faces)),
    ...products.map(
      ({ blank: { name }, floating }): MadeFile => ({
        path: `float/${name}.svg`,
        kind: 'picture',
        format: 'svg',
        pattern: name,
        bytes: utf8(floatSvg(floating)),
      }),
    ),
    ...(await viewFiles(build, tool, faces)),
    ...products.flatMap((product) => solidsOf(product, build, kernel, tool)),
    {
      path: 'build.json',
      kind: 'build',
      format: 'json',
      bytes: utf8(recorded),
    },
  ];
}

/** A pattern's jigs with their pictures, its body and its sawn blank. */
function solidsOf(
  { blank, body, jigs }: Product,
  { job: { setups } }: Build,
  kernel: SolidKernel,
  tool: string,
): MadeFile[] {
  const { name, version, thicknessMm, outlineRing } = blank;
  const half = thicknessMm / 2;
  const sawn = evaluate(kernel, slab([asRegion(outlineRing)], -half, half));
  const work = { name, version, sawn, shaped: body.sketch };
  const solid = (kind: 'body' | 'blank', mesh: Mesh, called: string): MadeFile => ({
    path: `solids/${name}-${kind}.stl`,
    kind,
    format: 'stl',
    pattern: name,
    bytes: stl(mesh, `${name} ${called}`),
  });
  return [
    ...jigFiles(jigs, { work, printer: setups.printer, tool }).map((file) => ({
      ...file,
      pattern: name,
    })),
    solid('body', body.mesh, 'body'),
    solid('blank', sawn, 'sawn blank'),
  ];
}

function drawn(drawing: Drawing, kind: FileKind, path: string, pattern?: string): MadeFile[] {
  const named = pattern === undefined ? {} : { pattern };
  return [
    { path: `${path}.dxf`, kind, format: 'dxf', ...named, bytes: utf8(dxf(drawing)) },
    { path: `${path}.svg`, kind, format: 'svg', ...named, bytes: utf8(svg(drawing)) },
  ];
}
