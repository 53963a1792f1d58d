/** A pattern's jigs → what is drawn of them: each kind from two sides with the workpiece in place, and how the set goes together. */

import type { SolidsInput, SolidsView } from '../drawing/picture/solids-picture.js';
import type { Mesh } from '../geometry/mesh.js';
import type { Point3 } from '../geometry/vec.js';
import { along3, unit3 } from '../geometry/vec3.js';
import type { Jig } from '../jig/jig.js';
import { capital } from '../jig/wording.js';
import { drawnApart } from '../shade/apart.js';
import { type Body, type Scene, UNMOVED } from '../shade/scene.js';

/** What is pictured with the jigs: the blank as it is sawn, the body as it is shaped. */
export type PicturedWork = {
  readonly name: string;
  readonly version: string;
  readonly sawn: Mesh;
  /** Its sketch: no eye tells it from the fine one. */
  readonly shaped: Mesh;
};

/** The sheet of one kind; its jigs together where a pattern has several. */
export function kindSheet(jigs: readonly Jig[], called: string, work: PicturedWork): SolidsInput {
  const [jig] = jigs;
  const bodies = [...jigs.map(plastic), ...held(jig, work)];
  const scene: Scene = { bodies, ways: [] };
  const side = (caption: string, sign: 1 | -1): SolidsView => ({
    caption,
    scene,
    view: { toward: seenFrom(jigs, sign), up: upOf(jigs) },
    labels: [],
  });
  return {
    word: capital(called),
    about: `for ${work.name}`,
    name: work.name,
    small: `version ${work.version}`,
    views: [side('In use, from one side', 1), side('From the other side', -1)],
    captions: jig.words,
  };
}

/** Gap between jig and workpiece drawn apart, as a share of the jig's greatest measure. */
const APART = 0.35;

/** Two jigs with their workpiece on its way in, and where the tool goes. */
export function assemblySheet(
  pair: readonly [Jig, Jig],
  called: readonly [string, string],
  work: PicturedWork,
): SolidsInput {
  const view = (jig: Jig, word: string): SolidsView => {
    const toward = seenFrom([jig], 1);
    return {
      caption: `${capital(word)}: the way in and out`,
      scene: drawnApart([plastic(jig)], held(jig, work), {
        free: jig.freeDirection ?? [0, 1, 0],
        toward,
        gapMm: APART * Math.max(...jig.sizeMm),
      }),
      view: { toward, up: upOf([jig]) },
      labels: [],
    };
  };
  return {
    word: 'Assembly',
    about: `of the jigs for ${work.name}`,
    name: work.name,
    small: `version ${work.version}`,
    views: [view(pair[0], called[0]), view(pair[1], called[1])],
    captions: pair.flatMap((jig) => jig.words.slice(0, 2)),
  };
}

const plastic = ({ mesh, jigToBlank }: Jig): Body => ({
  mesh,
  matrix: jigToBlank,
  tone: 'plastic',
});

function held({ workpiece }: Jig, { sawn, shaped }: PicturedWork): Body[] {
  if (workpiece === null) return [];
  return [{ mesh: workpiece === 'sawn' ? sawn : shaped, matrix: UNMOVED, tone: 'wood' }];
}

/** A jig's own axis in the frame of the lure: 0 X, 1 Y, 2 Z. */
const axisOf = ({ jigToBlank: m }: Jig, k: 0 | 1 | 2): Point3 => [
  m[4 * k],
  m[4 * k + 1],
  m[4 * k + 2],
];

/** As it is printed; several jigs stand about the lure as it lies in the hand. */
const upOf = (jigs: readonly Jig[]): Point3 => (jigs.length > 1 ? [0, 0, 1] : axisOf(jigs[0], 2));

/** From over a corner: the corner of the far end and belly, or the one across from it. */
function seenFrom(jigs: readonly Jig[], sign: 1 | -1): Point3 {
  if (jigs.length > 1) return unit3([0.7 * sign, -1 * sign, 0.8]);
  const [jig] = jigs;
  const over = along3(axisOf(jig, 2), 0.7 * sign, axisOf(jig, 0));
  return unit3(along3(over, sign, axisOf(jig, 1)));
}
