import { describe, expect, test } from 'vitest';
import { summary } from '../../src/commands/summary.js';
import type { Build } from '../../src/pipeline.js';

/** All that a summary looks at where nothing is laid out. */
const build = (products: readonly object[]): Build =>
  ({ job: { name: 'skerry' }, products, nest: null, faces: [], sheets: [] }) as unknown as Build;

const product = (jigs: readonly object[]) => ({
  blank: { name: 'skerry', lengthMm: 100 },
  body: { properties: { volumeMm3: 26000 } },
  sawnMass: { massG: 15, spreadG: 1 },
  count: 1,
  jigs,
  floating: {
    lure: { massG: 20 },
    verdict: 'floats',
    attitudes: [{ trimDeg: 0, heelDeg: 0 }],
    pattern: { wish: null },
  },
});

describe('the summary of a build', () => {
  test('names the folder of jigs only where there are some', () => {
    const none = summary(build([product([])]), 'out');
    expect(none).toContain('skerry: 1 pattern in out');
    expect(none).toContain('shop-sheet.pdf for the bench; pages');
    expect(none).not.toContain('jig');
    const some = summary(build([product([{ jig: { kind: 'center-scribe' } }])]), 'out');
    expect(some).toContain('skerry: 1 pattern, 1 jig in out');
    expect(some).toContain('for the bench, and the jigs in out/jigs; pages');
  });
});
