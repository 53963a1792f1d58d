/** Random blanks with random set-ups: no false alarm, and nothing beyond what the printer can do. */
import { describe, expect, test } from 'vitest';
import { checkJig } from '../../../src/jig/check.js';
import { drillStopJig } from '../../../src/jig/drill-stop/make.js';
import { lipSlotGuide } from '../../../src/jig/lip-slot-guide/make.js';
import { checkPrinting, printing } from '../../../src/jig/proof/printing.js';
import { loadKernel } from '../../../src/solid/kernel.js';
import { randomLure } from '../random-lures.js';
import { printer } from '../set-ups.js';

const SEEDS = Array.from({ length: 12 }, (_, i) => 300 + i);

describe('random lures of 40 to 250 mm', async () => {
  const kernel = await loadKernel();
  const made = { 'drill-stop': 0, 'lip-slot-guide': 0 };

  test.each(SEEDS)('seed %i', (seed) => {
    const { blank, drillStop, lipSlotGuide: lip } = randomLure(seed);
    const jigs = [
      ...drillStopJig(kernel, blank, { setup: drillStop, printer }).jigs,
      ...lipSlotGuide(kernel, { blank }, { setup: lip, printer }).jigs,
    ];
    for (const jig of jigs) {
      made[jig.kind]++;
      const { flaws, held } = checkJig(kernel, jig, { blank });
      // A wall left thin is the set-up's doing, and told as such.
      expect(flaws.filter((f) => f.code !== 'wall-thin')).toEqual([]);
      expect(held.length).toBeGreaterThan(3);
      const told = printing(jig.mesh, printer);
      expect(checkPrinting(told).flaws).toEqual([]);
      expect(told.supportAtMm).toBeNull();
    }
  });

  test('most of them have both jigs', () => {
    expect(made['drill-stop']).toBeGreaterThan(SEEDS.length / 2);
    expect(made['lip-slot-guide']).toBeGreaterThan(SEEDS.length / 2);
  });
});
