import { describe, expect, test } from 'vitest';
import { checkPicture } from '../../src/drawing/picture/check.js';
import { choicesPicture } from '../../src/drawing/picture/choices-picture.js';
import type { Picture } from '../../src/drawing/picture/picture.js';
import type { Verdict } from '../../src/float/verdict.js';
import { sampleChoice, sampleChoices, sampleLure, sampleShape } from './picture-sample.js';

const lines = ({ shapes }: Picture): string[] =>
  shapes.filter((s) => s.kind === 'text').map(({ text }) => text);

describe('choices', () => {
  test('five stand side by side, a sixth is not drawn', () => {
    const said = lines(choicesPicture(sampleChoices(6)));
    for (const n of ['1', '5']) expect(said).toContain(n);
    expect(said).not.toContain('6');
    expect(said.filter((t) => t === '14.2 (16.6)')).toHaveLength(5 + 2);
  });

  test('none is said, with its reason in lines', () => {
    const unmet = 'The best holes give a GM of 0.31 mm; 0.5 mm are wished. '.repeat(4).trim();
    const said = lines(choicesPicture({ ...sampleChoices(0), unmet }));
    expect(said).toContain('No choice meets it.');
    expect(said.join(' ')).toContain(unmet);
  });

  /** Five choices of two holes, each with all rows there are. */
  const full = (verdict: Verdict, more = 0) => {
    const lure = sampleLure(sampleShape(), { holes: 2 });
    const changes = ['timber', '1 deeper', '1 aft', '2 deeper', '2 aft'];
    const [{ per: _, ...effect }] = sampleChoice(lure, -5).sensitivity;
    const sensitivity = [...changes, ...Array.from({ length: more }, (_, i) => `more ${i}`)].map(
      (per) => ({
        per,
        ...effect,
        trimDeg: -12.34,
        freeboardNoseMm: -11.56,
        freeboardTailMm: -10.31,
      }),
    );
    const choice = { ...sampleChoice(lure, -5, verdict), sensitivity };
    const choices = Array.from({ length: 5 }, () => choice);
    const picture = choicesPicture({ ...sampleChoices(0), choices });
    expect(checkPicture(picture)).toEqual([]);
    return { said: lines(picture), changes };
  };

  test.each(['floats', 'sinks'] as const)('no row of five with two holes is cut: %s', (verdict) => {
    const { said, changes } = full(verdict);
    for (const heading of ['hole 1, bit mm', 'hole 2, bit mm', ...changes])
      expect(said).toContain(heading);
    expect(said.filter((t) => t.includes('…') || t.includes('left out'))).toEqual([]);
    expect(said.filter((t) => t === '31.40 ± 1.8')).toHaveLength(5);
  });

  test('afloat a slip changes heights, under water mass; the speed and its trim are told', () => {
    const [afloat, under] = [full('floats').said, full('sinks').said];
    expect(afloat).toContain('freeboard nose, mm');
    expect(afloat).toContain('−12.3°, −11.6, −10.3');
    expect(afloat).not.toContain('speed, cm/s');
    expect(under).not.toContain('freeboard nose, mm');
    expect(under).toContain('−12.34°, +0.62 g');
    expect(under).toContain('sinks 12, 9 to 16');
    expect(under).toContain('10° nose down');
  });

  test('rows that do not fit are counted', () => {
    const { said } = full('floats', 9);
    const kept = said.filter((t) => t.startsWith('more ')).length;
    expect(said).toContain(`${9 - kept} more rows left out`);
  });
});
