/** ln Γ(x) for x > 0: Lanczos approximation, g = 7, nine terms [coefficients from memory; tested against exact factorials]. */
function lnGamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const y = x - 1;
  const sum = terms.slice(1).reduce((total, term, place) => total + term / (y + place + 1), terms[0]!);
  const t = y + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Regularised incomplete beta I_x(a, b) by its continued fraction (NIST DLMF 8.17.22 [number from memory]), to 1e-12. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / Math.max(1 - ((a + b) * x) / (a + 1), tiny);
  let fraction = d;
  for (let m = 1; m < 500; m += 1) {
    for (const term of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      d = 1 / (1 + term * d || tiny);
      c = 1 + term / c || tiny;
      fraction *= c * d;
    }
    if (Math.abs(c * d - 1) < 1e-14) break;
  }
  const front = lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log(1 - x);
  return (Math.exp(front) * fraction) / a;
}

/**
 * Probability that the ratio of two sample variances of the same law is at least `ratio` (F distribution, upper tail).
 * Both dof above 0. Used to tell an unusually large scatter from the house's own (F-test).
 */
export function probabilityOfRatio(ratio: number, dof: number, ownDof: number): number {
  return incompleteBeta(ownDof / (ownDof + dof * ratio), ownDof / 2, dof / 2);
}
