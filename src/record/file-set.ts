/** A build → the set of files it is delivered as, with the manifest that lists them. */
import type { Drawing } from '../drawing/drawing.js';
import { dxf } from '../formats/dxf.js';
import { stl } from '../formats/stl.js';
import { svg } from '../formats/svg.js';
import { checkJigFile } from '../jig/check.js';
import type { PrintedPart } from '../jig/print.js';
import type { ReadyJig } from '../jig/set.js';
import type { Build } from '../pipeline.js';
import { Fault } from '../problem.js';
import { slab } from '../solid/csg.js';
import { evaluate } from '../solid/evaluate.js';
import type { SolidKernel } from '../solid/kernel.js';
import { buildRecord, recordText } from './build-json.js';
import { floatSvg } from './pictures.js';

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
  | 'picture'
  | 'build';

export type MadeFile = {
  readonly path: string;
  readonly kind: FileKind;
  readonly format: 'dxf' | 'svg' | 'stl' | 'json';
  readonly pattern?: string;
  readonly bytes: Uint8Array;
};

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Name, kind, which of several, which piece of a jig too long for the bed. */
const jigName = ({ jig }: ReadyJig, piece: string): string =>
  [jig.pattern, jig.kind, jig.part, piece].filter((word) => word !== '').join('-');

const jigPaths = (ready: ReadyJig): string[] =>
  ready.parts.map(({ piece }) => `jigs/${jigName(ready, piece)}.stl`);

/** All files but the manifest, in the order a maker would look at them. `tool` is name and version. */
export function fileSet(build: Build, kernel: SolidKernel, tool: string): MadeFile[] {
  const { products, faces, sheets } = build;
  const solid = (name: string, kind: FileKind, path: string, bytes: Uint8Array): MadeFile => ({
    path,
    kind,
    format: 'stl',
    pattern: name,
    bytes,
  });
  return [
    ...faces.flatMap(({ drawing }, i) => drawn(drawing, 'face', `faces/face-${i + 1}`)),
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
    ...products.map(
      ({ blank: { name }, floating }): MadeFile => ({
        path: `float/${name}.svg`,
        kind: 'picture',
        format: 'svg',
        pattern: name,
        bytes: utf8(floatSvg(floating)),
      }),
    ),
    ...products.flatMap(({ jigs }) =>
      jigs.flatMap((ready) =>
        ready.parts.map((part, i) =>
          solid(ready.jig.pattern, 'jig', jigPaths(ready)[i], jigStl(ready, part)),
        ),
      ),
    ),
    ...products.flatMap(({ blank: { name, thicknessMm, outlineRing }, body }) => {
      const half = thicknessMm / 2;
      const sawn = evaluate(kernel, slab(outlineRing, -half, half));
      return [
        solid(name, 'body', `solids/${name}-body.stl`, stl(body.mesh, `${name} body`)),
        solid(name, 'blank', `solids/${name}-blank.stl`, stl(sawn, `${name} sawn blank`)),
      ];
    }),
    {
      path: 'build.json',
      kind: 'build',
      format: 'json',
      bytes: utf8(recordText(buildRecord(build, tool, jigPaths))),
    },
  ];
}

/** A part's STL, read back by another reader before it is let out. */
function jigStl(ready: ReadyJig, part: PrintedPart): Uint8Array {
  const name = jigName(ready, part.piece);
  const bytes = stl(part.mesh, name);
  const { flaws } = checkJigFile(part, bytes);
  if (flaws.length > 0) throw new Fault(`${name}: ${JSON.stringify(flaws)}`);
  return bytes;
}

function drawn(drawing: Drawing, kind: FileKind, path: string, pattern?: string): MadeFile[] {
  const named = pattern === undefined ? {} : { pattern };
  return [
    { path: `${path}.dxf`, kind, format: 'dxf', ...named, bytes: utf8(dxf(drawing)) },
    { path: `${path}.svg`, kind, format: 'svg', ...named, bytes: utf8(svg(drawing)) },
  ];
}
