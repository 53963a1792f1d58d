/** One thread of a team: runs a strip search round by round, as it is told. */
import { parentPort, workerData } from 'node:worker_threads';
import { seededDraws } from '../geometry/random.js';
import { type StripGuide, stripSearch } from './strip.js';
import type { Answer, Brief, Round } from './team.js';

const { problem, seed } = workerData as Brief;
const guide: StripGuide = { spent: 0, other: null };
const search = stripSearch(problem, guide, seededDraws(seed));

parentPort?.on('message', ({ looks, spent, other }: Round) => {
  guide.spent = spent;
  guide.other = other;
  const hasEnded = search.run(looks);
  const answer: Answer = { best: search.best(), hasEnded };
  parentPort?.postMessage(answer);
});
