/** Standard uncertainty of one rounding to the step d of a display: anywhere within ±d/2 (JCGM 100:2008, F.2.2.1). */
export function oneRounding(d: number): number {
  return d / Math.sqrt(12);
}

/** Standard deviation of one reading with its roundings at zero and at load (EURAMET cg-18, 7.1). */
export function withRoundings(scatter: number, d: number): number {
  return Math.hypot(scatter, d / Math.sqrt(6));
}

/**
 * What repeats never average out of a rounding, as a standard uncertainty: readings that scatter by σ move the display
 * over its steps, and their mean keeps only the part of the rounding error that all of them share. Its k-th harmonic,
 * amplitude d/(πk), is damped by exp(−2π²k²σ²/d²), so that
 * u² = ½ Σ (d/(πk))² exp(−4π²k²σ²/d²):
 * d/√12 whole at σ = 0, a tenth of it at σ = 0.34 d, nothing at σ = d. Fourier series of the rounding error with the
 * characteristic function of a Gaussian scatter (Widrow, Kollár: Quantization Noise, 2008 [from memory]).
 */
export function roundingLeft(scatter: number, d: number): number {
  if (scatter === 0) return oneRounding(d);
  let squares = 0;
  for (let k = 1; k <= 200; k++) {
    const term = (d / (Math.PI * k)) ** 2 * Math.exp(-4 * (Math.PI * k * (scatter / d)) ** 2);
    squares += term;
    if (term < 1e-12 * squares) break;
  }
  return Math.min(oneRounding(d), Math.sqrt(squares / 2));
}

/**
 * Probability that n readings of scatter σ all show the same figure of step d: ∫ (d·φ)ⁿ dx/d for a Gaussian,
 * (d/(σ√(2π)))ⁿ⁻¹/√n, and at most 1.
 */
export function sameByChance(n: number, scatter: number, d: number): number {
  if (n < 2 || scatter === 0) return 1;
  return Math.min(1, (d / (scatter * Math.sqrt(2 * Math.PI))) ** (n - 1) / Math.sqrt(n));
}
