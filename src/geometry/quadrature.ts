/** Numerical integration by Gauss–Legendre points, and the gamma function the superellipse needs. */

/** Points and weights on −1..1; exact for polynomials up to degree 2n − 1. Roots by Newton from the usual cosine start. */
function gaussLegendre(n: number): {
  readonly x: readonly number[];
  readonly w: readonly number[];
} {
  const [x, w]: [number[], number[]] = [[], []];
  for (let i = 0; i < n; i++) {
    let root = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let derivative = 1;
    for (let step = 0; step < 100; step++) {
      let [p0, p1] = [1, root];
      for (let k = 2; k <= n; k++) [p0, p1] = [p1, ((2 * k - 1) * root * p1 - (k - 1) * p0) / k];
      derivative = (n * (root * p1 - p0)) / (root * root - 1);
      const change = p1 / derivative;
      root -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    x.push(root);
    w.push(2 / ((1 - root * root) * derivative * derivative));
  }
  return { x, w };
}

/** The 20 Gauss–Legendre points of 0..1 with weights that add to 1. */
export const UNIT_RULE: readonly { readonly t: number; readonly weight: number }[] = (() => {
  const { x, w } = gaussLegendre(20);
  return x.map((root, i) => ({ t: (1 + root) / 2, weight: w[i] / 2 }));
})();

/** ∫ f from a to b by 20 Gauss–Legendre points; f must be smooth inside. */
export function integrate(f: (t: number) => number, a: number, b: number): number {
  let sum = 0;
  for (const { t, weight } of UNIT_RULE) sum += weight * f(a + (b - a) * t);
  return sum * (b - a);
}

/**
 * Γ(z) for z > 0 to about 1e-14 relative. Source: C. Lanczos (1964), coefficients for g = 7, n = 9
 * as tabulated by P. Godfrey (from memory; held against factorials and Γ(1/2) = √π in the tests).
 */
export function gamma(z: number): number {
  const c = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
    -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
    1.5056327351493116e-7,
  ];
  if (z < 0.5) return Math.PI / (Math.sin(Math.PI * z) * gamma(1 - z));
  const x = z - 1;
  const t = x + 7.5;
  let sum = c[0];
  for (let i = 1; i < c.length; i++) sum += c[i] / (x + i);
  return Math.sqrt(2 * Math.PI) * t ** (x + 0.5) * Math.exp(-t) * sum;
}

/** Euler's beta function B(a, b) for positive a, b. */
export const beta = (a: number, b: number): number => (gamma(a) * gamma(b)) / gamma(a + b);
