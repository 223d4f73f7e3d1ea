import type { OpenContribution } from "./density-law.ts";
import type { Expression, Inputs } from "./input.ts";

/** How the piece hangs in the liquid. */
export interface Hanger {
  /** diameter of the one wire through the surface, 0 for none */
  wireMillimetres: number;
  /** part of the wire's meniscus force that may differ between zero and reading, half-width; see meniscusChange */
  meniscusChange?: number;
  /** how far the depth may differ between zero and reading, mm, half-width */
  depthMillimetres?: number;
}

/** A meniscus changes by a tenth to a half between zero and reading (common practice); a clean wire by a fifth. */
export const meniscusChange = 0.2;
/** Depth kept by a mark on the wire, and the water's own rise, mm (common practice). */
export const depthMillimetres = 1;

/** Standard gravity, m/s², exact by definition (3rd CGPM 1901). */
export const gravity = 9.80665;

/**
 * Surface tension of pure water, N/m, 0–40 °C: IAPWS R1-76(2014) [coefficients from memory, checked against its table].
 */
export function surfaceTension(celsius: number): number {
  const tau = 1 - (celsius + 273.15) / 647.096;
  return 0.2358 * tau ** 1.256 * (1 - 0.625 * tau);
}

/** With a wetting agent, N/m: 25 to 40 mN/m in practice (common practice). */
export const wettedSurfaceTension = 0.03;

/** Weight of the meniscus a wire carries, g: π·diameter·surface tension/g. */
export function meniscusGrams(wireMillimetres: number, surfaceNewtonsPerMetre: number): number {
  return (Math.PI * wireMillimetres * surfaceNewtonsPerMetre) / gravity;
}

/** Buoyancy of a length of immersed wire, g. */
export function wireBuoyancyGrams(wireMillimetres: number, depth: number, liquidGPerCm3: number): number {
  return (((Math.PI / 4) * wireMillimetres ** 2 * depth) / 1000) * liquidGPerCm3;
}

/** Change of the pull on the hanger between zero and reading, g, expected zero: meniscus and depth of the wire. */
export function wireChange(
  inputs: Inputs,
  hanger: Hanger,
  surfaceNewtonsPerMetre: number,
  liquidGPerCm3: number,
): { grams: Expression; open: OpenContribution[] } {
  const wire = hanger.wireMillimetres;
  const meniscus = inputs.rectangular(
    "wire meniscus",
    "g",
    0,
    (hanger.meniscusChange ?? meniscusChange) * meniscusGrams(wire, surfaceNewtonsPerMetre),
  );
  const depth = hanger.depthMillimetres ?? depthMillimetres;
  const immersion = inputs.rectangular("wire immersion", "mm", 0, wire > 0 ? depth : 0);
  const perMillimetre = wireBuoyancyGrams(wire, 1, liquidGPerCm3);
  return {
    grams: (a, of) => a.plus(of(meniscus), a.times(of(immersion), a.of(perMillimetre))),
    open: [
      { input: meniscus, factor: -1 },
      { input: immersion, factor: -perMillimetre },
    ],
  };
}
