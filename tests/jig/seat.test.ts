import { expect, test } from 'vitest';
import { asRegion, subtract } from '../../src/geometry/clip.js';
import { circleRing, rectRing } from '../../src/geometry/ring.js';
import { holdOf, LEAST_RISE } from '../../src/jig/lip-slot-guide/seat.js';

const block = asRegion(rectRing(-30, -30, 30, 0));

test('a wheel in a hollow of its own radius turns freely', () => {
  const wheel = circleRing([0, 0], 20, { segments: 360 });
  const section = subtract([block], [asRegion(wheel)]);
  const { riseMm } = holdOf({ section, profile: wheel, press: [0, -10] });
  // Its corners are 20(1 − cos 0.5°) = 0.8 µm higher than its flats.
  expect(Math.abs(riseMm)).toBeLessThan(0.01);
  expect(riseMm).toBeLessThan(LEAST_RISE);
});

test('a box on a flat seat, pressed in its middle, rises by half its width times the turn', () => {
  const seat = asRegion(rectRing(-30, -30, 30, 0));
  const profile = rectRing(-20, 0, 20, 15);
  const { riseMm, pushDeg } = holdOf({ section: [seat], profile, press: [0, 7] });
  // Turned about the press: the low corner sinks 20 sin 1° − 7(1 − cos 1°).
  const exact = 20 * Math.sin(Math.PI / 180) - 7 * (1 - Math.cos(Math.PI / 180));
  expect(riseMm).toBeCloseTo(exact, 3);
  expect(pushDeg).toBe(0);
});
