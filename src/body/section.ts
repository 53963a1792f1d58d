/**
 * The cross-section of a body: a superellipse half above and a half below the widest line, which lies
 * on the datum line, |y/b|ⁿ + |z/h|ⁿ = 1. Exponent 2 is an ellipse; larger is slab-sided with round
 * corners.
 *
 * Closed forms (standard; from memory, held against published values in the tests): with
 * G(n) = Γ(1+1/n)²/Γ(1+2/n) a half has area 2bh·G, ∫z dA = (b h²/n)·B(1/n, 1+2/n) and
 * ∫z² dA = (2 b h³/3n)·B(1/n, 1+3/n).
 */
import { beta, gamma } from '../geometry/quadrature.js';

/** Half a section: half-breadth b, height h of this half (both ≥ 0), exponent n ≥ 1. mm. */
export type HalfSection = { readonly b: number; readonly h: number; readonly n: number };

/** Area (mm²) and moments about the datum axes of half a section; z counted positive away from the datum line. */
export type SectionMoments = {
  readonly area: number;
  readonly z: number;
  readonly zz: number;
  readonly yy: number;
};

export function halfSectionMoments({ b, h, n }: HalfSection): SectionMoments {
  const third = ((2 / 3) * beta(1 / n, 1 + 3 / n)) / n;
  return {
    area: (2 * b * h * gamma(1 + 1 / n) ** 2) / gamma(1 + 2 / n),
    z: ((b * h * h) / n) * beta(1 / n, 1 + 2 / n),
    zz: b * h ** 3 * third,
    yy: h * b ** 3 * third,
  };
}

/** Point of the unit superellipse at an angle from the y axis: smooth all round, exact circle for n = 2. */
export function unitSection(angle: number, n: number): readonly [y: number, z: number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const r = (Math.abs(c) ** n + Math.abs(s) ** n) ** (-1 / n);
  return [r * c, r * s];
}
