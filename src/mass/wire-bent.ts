/** A pattern's through-wire as it is to be bent, and what keeps it from that. */
import type { BodyShape } from '../body/shape.js';
import type { Pattern } from '../pattern/pattern.js';
import { type KeyPath, type Problem, problem } from '../problem.js';
import type { Materials } from '../tables/materials.js';
import { type Bent, bentWire } from '../wire/bent.js';
import type { WireFlaw } from '../wire/flaw.js';
import type { WireSpec } from '../wire/spec.js';
import { type EyePlace, endSurface, eyePlaces, wireLoop } from './eyes.js';

/** Null for a pattern without a through-wire. */
export function bentFor(pattern: Pattern, shape: BodyShape, materials: Materials): Bent | null {
  const spec = specFor(pattern, shape, materials);
  return spec && bentWire(spec);
}

function specFor(pattern: Pattern, shape: BodyShape, materials: Materials): WireSpec | null {
  const { throughWire, towEye, tailEye } = pattern;
  if (!throughWire) return null;
  const { diameterMm, twistTurns } = throughWire;
  const { bendRatio, holdMm } = materials.wire;
  return {
    diameterMm,
    bendInsideMm: bendRatio * diameterMm,
    loopMm: wireLoop(diameterMm, materials).loopMm,
    twistTurns,
    holdMm,
    nose: {
      at: endSurface(shape, towEye?.heightMm ?? 0, 'nose'),
      eye: towEye?.kind === 'wire',
    },
    tail: {
      at: endSurface(shape, tailEye?.heightMm ?? 0, 'tail'),
      eye: tailEye?.kind === 'wire',
    },
    hangers: wireHangers(pattern, shape).map((p) => p.surface),
  };
}

/** From nose to tail, as the wire comes to them. */
const wireHangers = (pattern: Pattern, shape: BodyShape): EyePlace[] =>
  eyePlaces(pattern, shape)
    .filter(({ eye, path }) => eye.kind === 'wire' && path[0] === 'hangers')
    .sort((a, b) => a.surface[0] - b.surface[0]);

/** What keeps a pattern's wire from being bent. */
export function wireProblems(pattern: Pattern, shape: BodyShape, materials: Materials): Problem[] {
  const bent = bentFor(pattern, shape, materials);
  if (!bent || !pattern.throughWire) return [];
  const { diameterMm } = pattern.throughWire;
  const hangers = wireHangers(pattern, shape);
  return bent.flaws.map((flaw) => told(flaw, { pattern, diameterMm, hangers }));
}

type Told = {
  readonly pattern: Pattern;
  readonly diameterMm: number;
  readonly hangers: readonly EyePlace[];
};

function told(flaw: WireFlaw, { pattern, diameterMm, hangers }: Told): Problem {
  switch (flaw.kind) {
    case 'ends-too-close': {
      const { betweenMm, needMm } = flaw;
      const twistTurns = pattern.throughWire?.twistTurns ?? 0;
      // Each turn of either winding takes a diameter.
      const ends = [pattern.towEye, pattern.tailEye].filter((e) => e?.kind === 'wire').length;
      const fewer = Math.ceil((needMm - betweenMm) / (ends * diameterMm));
      const mostTurns = Math.max(0, twistTurns - fewer);
      const path: KeyPath = ['throughWire', twistTurns > 0 ? 'twistTurns' : 'diameterMm'];
      return problem('wire-ends-too-close', path, { betweenMm, needMm, mostTurns });
    }
    case 'too-close': {
      const { betweenMm, needMm, other } = flaw;
      const { path, surface } = hangers[flaw.hanger];
      const named =
        other === 'tow' || other === 'tail' ? `${other} end of the wire` : hangers[other].name;
      const aft = flaw.nearestMm > surface[0];
      // To the next tenth that works.
      const nearestMm = (aft ? Math.ceil : Math.floor)(flaw.nearestMm * 10) / 10;
      const facts = { stationMm: surface[0], betweenMm, other: named, needMm, diameterMm };
      return problem('wire-bends-too-close', path, { ...facts, nearestMm });
    }
    case 'leg-too-short': {
      const { depthMm, needMm } = flaw;
      const { path, surface } = hangers[flaw.hanger];
      const facts = { stationMm: surface[0], depthMm, needMm, diameterMm };
      return problem('wire-leg-too-short', path, facts);
    }
  }
}
