/** `npm run bench:nest-boxes`: that part of the benchmark alone. */
import { shippedPath } from '../io.js';
import { produce } from '../produce.js';
import { printNestBoxes } from './nest-boxes-tables.js';

const { made } = await produce(shippedPath('templates/first-ice.yaml'));
if (!made) throw new Error('the shipped run does not build');
printNestBoxes(made.build);
