import { expect, test } from 'vitest';
import { parseReading } from '../../src/tub/reading.js';

test('a reading is keys with numbers', () => {
  expect(parseReading('trimDeg=-6, massG=21.4')).toEqual({ trimDeg: -6, massG: 21.4 });
  expect(parseReading('hungG=2,hungStationMm=40,freeboardNoseMm=-3')).toEqual({
    hungG: 2,
    hungStationMm: 40,
    freeboardNoseMm: -3,
  });
});

test.each([
  ['', 'cannot be read in the tub'],
  ['trim=3', 'Did you mean trimDeg?'],
  ['massG=21,4', 'with a point'],
  ['massG=heavy', 'not massG=NUMBER'],
  ['massG=', 'not massG=NUMBER'],
  ['massG=1=2', 'not massG=NUMBER'],
  ['trimDeg=120', 'must be -90 to 90'],
  ['massG=20,massG=21', 'twice'],
  ['hungG=2,trimDeg=1', 'go together'],
  ['hungG=2,hungStationMm=40', 'not what was read'],
])('%s is told: %s', (text, told) => {
  expect(parseReading(text)).toContain(told);
});
