/** Patterns without a file, as the jigs take them: with the tables and set-ups that come with the program. */

import { makeBody } from '../body/body.js';
import { shippedPath } from '../io.js';
import type { JigWork } from '../jig/jig.js';
import type { JigSetups } from '../jig/set-ups.js';
import { load } from '../load.js';
import { afloat, designed } from '../lures.js';
import { resolvePattern } from '../pattern/pattern.js';
import type { PatternFile } from '../pattern/schema.js';
import { shapedCg } from '../pipeline.js';

export type WorkDoor = {
  /** Null when the pattern can not be made in wood. */
  readonly workOf: (file: PatternFile) => JigWork | null;
  readonly setups: JigSetups;
};

export function workDoor(): WorkDoor {
  const { job } = load(shippedPath('templates/skerry.yaml'));
  if (!job) throw new Error('a shipped pattern does not load');
  return {
    setups: job.setups,
    workOf: (file) => {
      const pattern = resolvePattern(file);
      const drawn = { ...job, orders: [{ pattern, count: 1 }] };
      const { designs, blanks } = designed(drawn);
      if (!blanks) return null;
      const body = makeBody(designs[0].shape);
      const [blank] = blanks;
      const { materials } = job;
      return {
        pattern,
        body,
        blank,
        materials,
        shapedCgMm: shapedCg(afloat(drawn, 0, { body, blank })),
      };
    },
  };
}
