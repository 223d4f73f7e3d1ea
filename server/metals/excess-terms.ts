/** One excess term: B in cm³/g, so that a pair adds B·wᵢ·wⱼ to the specific volume, and its standard uncertainty. */
export interface ExcessTerm {
  pair: readonly [string, string];
  bCm3PerG: number;
  uCm3PerG: number;
  source: string;
}

/**
 * How real alloys depart from the plain mixture law. Fitted to the published pairs that the tests hold them to; a
 * positive B makes the alloy lighter than its metals, as ordering does in gold-copper, a negative B denser, as in brass.
 */
export const excessTerms: readonly ExcessTerm[] = [
  {
    pair: ["Au", "Cu"],
    bCm3PerG: 0.004,
    uCm3PerG: 0.001,
    source:
      "fitted to 17.48 and 17.16 for 916.7 and 900 ‰ (Rose, The Metallurgy of Gold) and to lattice constants of AuCu and AuCu₃: 0.0037, 0.0039, 0.0051, 0.0051",
  },
  {
    pair: ["Au", "Ag"],
    bCm3PerG: -0.0005,
    uCm3PerG: 0.001,
    source: "fitted to Rose, The Metallurgy of Gold, Table XIV, without its 333/667 row, a misprint",
  },
  {
    pair: ["Cu", "Zn"],
    bCm3PerG: -0.015,
    uCm3PerG: 0.001,
    source:
      "fitted to mill sheets of C26000 (8.53) and C36000 (8.50); inside a gold alloy it is an extrapolation",
  },
  {
    pair: ["Ag", "Cu"],
    bCm3PerG: 0,
    uCm3PerG: 0.0005,
    source: "two phases side by side: 925/75 prints 10.36, the plain law gives 10.364",
  },
];

/** The excess term of a pair in either order, or null where the plain law is used. */
export function excessTerm(a: string, b: string): ExcessTerm | null {
  return excessTerms.find(({ pair: [x, y] }) => (x === a && y === b) || (x === b && y === a)) ?? null;
}
