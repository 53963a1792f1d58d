import { expect, test } from 'vitest';
import { waterDensityKgM3 } from '../../src/float/water.js';
import { Fault } from '../../src/problem.js';

// UNESCO check set (A. E. Gill, Atmosphere-Ocean Dynamics, 1982, app. A3.2; UNESCO Technical Papers
// in Marine Science 44, p. 22), printed to 1e-5.
test.each([
  [0, 5, 999.96675],
  [0, 25, 997.04796],
  [35, 5, 1027.67547],
  [35, 25, 1023.34306],
  [0, 0, 999.842594],
  [0, 30, 995.65113],
  [35, 0, 1028.10633],
  [35, 30, 1021.72864],
])('EOS-80 at salinity %d and %d °C', (salinity, t, density) => {
  expect(Math.abs(waterDensityKgM3(t, salinity) - density)).toBeLessThan(6e-6);
});

// Computed from the formula by other means, printed to 1e-5.
test.each([
  [0, 4, 999.97496],
  [10, 10, 1007.50114],
  [20, 20, 1013.36199],
  [35, 15, 1025.97275],
  [40, 25, 1027.12747],
])('EOS-80 between: salinity %d, %d °C', (salinity, t, density) => {
  expect(Math.abs(waterDensityKgM3(t, salinity) - density)).toBeLessThan(6e-6);
});

test('fresh water is densest at 3.981679 °C, 999.974961', () => {
  const top = waterDensityKgM3(3.981679, 0);
  expect(Math.abs(top - 999.974961)).toBeLessThan(1e-6); // printed so
  expect(waterDensityKgM3(3.97, 0)).toBeLessThan(top);
  expect(waterDensityKgM3(3.99, 0)).toBeLessThan(top);
});

// Another equation of state, TEOS-10, at absolute salinity 35.16504 g/kg (practical 35): the two
// families agree to 0.004. ITTC 7.5-02-01-03 (2011) prints a sea density that is 0.048 higher.
test.each([
  [0, 15, 999.10261, 0.004],
  [0, 20, 998.20715, 0.004],
  [35, 5, 1027.6756, 0.004],
  [35, 20, 1024.766, 0.004],
  [0, 15, 999.1026, 0.004],
  [0, 20, 998.2072, 0.004],
  [35, 15, 1026.021, 0.06],
  [35, 25, 1023.3873, 0.06],
])('other tables: salinity %d, %d °C', (salinity, t, density, tolerance) => {
  expect(Math.abs(waterDensityKgM3(t, salinity) - density)).toBeLessThan(tolerance);
});

test.each([
  [-0.1, 0],
  [40.1, 0],
  [20, -1],
  [20, 43.1],
  [Number.NaN, 0],
])('nothing is extrapolated: %d °C, salinity %d', (t, salinity) => {
  expect(() => waterDensityKgM3(t, salinity)).toThrow(Fault);
});
