import type { OpenContribution } from "./density-trials.ts";
import type { Expression, Inputs } from "./input.ts";
import type { Liquid } from "./liquid.ts";
import type { Series } from "./series.ts";

/** How the piece hangs in the liquid. */
export interface Hanger {
  /** diameter of the one wire through the surface, 0 for none */
  wireMillimetres: number;
  /** part of the wire's meniscus force that may differ between zero and reading, half-width; see meniscusChange */
  meniscusChange?: number;
  /** how far the depth may differ between zero and reading, mm, half-width */
  depthMillimetres?: number;
  /** the hanger alone at its depth in the liquid, where it was weighed in instead of zeroed (hung only) */
  inLiquid?: Series;
  /** the hanger alone in air, where the dry readings hold it too (hung only) */
  inAir?: Series;
}

/** A meniscus changes by a tenth to a half between zero and reading (common practice); a clean wire by a fifth. */
const meniscusChange = 0.2;
/** Depth kept by a mark on the wire, and the water's own rise, mm (common practice). */
const depthMillimetres = 1;

/** Standard gravity, m/s², exact by definition (3rd CGPM 1901). */
const gravity = 9.80665;

/**
 * Surface tension of pure water, N/m, 0–40 °C: IAPWS R1-76(2014) [coefficients from memory, checked against its table].
 */
export function surfaceTension(celsius: number): number {
  const tau = 1 - (celsius + 273.15) / 647.096;
  return 0.2358 * tau ** 1.256 * (1 - 0.625 * tau);
}

/** With a wetting agent, N/m: 25 to 40 mN/m in practice (common practice). */
const wettedSurfaceTension = 0.03;
/** Of a liquid that nobody described, N/m: between alcohol and water. */
const unknownSurfaceTension = 0.05;

/** Weight of the meniscus a wire carries, g: π·diameter·surface tension/g. */
function meniscusGrams(wireMillimetres: number, newtonsPerMetre: number): number {
  return (Math.PI * wireMillimetres * newtonsPerMetre) / gravity;
}

/** Buoyancy of a length of immersed wire, g. */
function wireBuoyancyGrams(wireMillimetres: number, depth: number, liquidGPerCm3: number): number {
  return (((Math.PI / 4) * wireMillimetres ** 2 * depth) / 1000) * liquidGPerCm3;
}

function surfaceOf(liquid: Liquid): { newtonsPerMetre: number; gPerCm3: number } {
  if (liquid.kind === "stated") return { newtonsPerMetre: unknownSurfaceTension, gPerCm3: liquid.gPerCm3 };
  if (liquid.kind === "measured" || liquid.kind === "none")
    return { newtonsPerMetre: unknownSurfaceTension, gPerCm3: 1 };
  return {
    newtonsPerMetre: liquid.wettingAgent ? wettedSurfaceTension : surfaceTension(liquid.temperature.celsius),
    gPerCm3: 1,
  };
}

/** Change of the pull on the hanger between zero and reading, g, expected zero: meniscus and depth of the wire. */
export function wireChange(
  inputs: Inputs,
  hanger: Hanger,
  liquid: Liquid,
): { grams: Expression; open: OpenContribution[] } {
  const { newtonsPerMetre, gPerCm3 } = surfaceOf(liquid);
  const wire = hanger.wireMillimetres;
  const change = hanger.meniscusChange ?? meniscusChange;
  const meniscus = inputs.rectangular("wire meniscus", "g", 0, change * meniscusGrams(wire, newtonsPerMetre));
  const depth = hanger.depthMillimetres ?? depthMillimetres;
  const immersion = inputs.rectangular("wire immersion", "mm", 0, wire > 0 ? depth : 0);
  const perMillimetre = wireBuoyancyGrams(wire, 1, gPerCm3);
  return {
    grams: (a, of) => a.plus(of(meniscus), a.times(of(immersion), a.of(perMillimetre))),
    open: [
      { input: meniscus, factor: -1 },
      { input: immersion, factor: -perMillimetre },
    ],
  };
}
