import { builtIn } from "../../metals/library.ts";
import type { Colour, Metal } from "../../metals/metal.ts";
import { shareOf } from "../../metals/share-of.ts";

/** A fineness family stands for all its recipes: a test must exclude every one of them to exclude it. */
export function recipesOf(m: Metal): readonly Metal[] {
  return m.recipes ? m.recipes.map((id) => builtIn.metal(id)) : [m];
}

/** What an eye may call each colour; two that share a word are not told apart by eye. */
const called: Readonly<Record<Colour, readonly string[]>> = {
  white: ["white"],
  grey: ["white"],
  yellow: ["yellow"],
  "greenish-yellow": ["yellow", "white"],
  "reddish-yellow": ["yellow", "red"],
  pink: ["yellow", "red"],
  red: ["red"],
  "reddish-grey": ["red", "white"],
};

/** True when an eye could take the one for the other. */
export function couldLook(a: Colour, b: Colour): boolean {
  return called[a].some((word) => called[b].includes(word));
}

/** Resistivity of a pure metal grows by about this share per kelvin; of an alloy by less, down to nothing. IEC 60028 gives 0.00393 for copper. */
const steepestPerKelvin = 0.0042;

/** Conductivity the metal may show at a temperature, % IACS: from its printed range at 20 °C. */
export function conductivityAt(
  [low, high]: readonly [number, number],
  celsius: number,
): readonly [number, number] {
  const change = 1 / (1 + steepestPerKelvin * (celsius - 20));
  return [low * Math.min(1, change), high * Math.max(1, change)];
}

/** A strong magnet slides slowly down a plate that conducts at least so well, % IACS (common practice; from memory). */
const leastOfDrag = 45;
/** and falls freely down one that conducts no better than this */
const mostWithoutDrag = 20;

/** True when a strong magnet is held back by a piece of it that is thick enough; of a family, by its first recipe. */
export function drags(m: Metal): boolean {
  if (m.family === "cored-and-plated") return false;
  const [usual = m] = m.recipes ? recipesOf(m) : [m];
  return (usual.conductivityIacsPercent?.[0] ?? 0) >= leastOfDrag;
}

/** True when it conducts too badly to hold a magnet back. */
export function tooPoorToDrag(m: Metal): boolean {
  return m.conductivityIacsPercent !== null && m.conductivityIacsPercent[1] <= mostWithoutDrag;
}

/** So much lead deadens a ring: solder with 37 % of it, the least of lead and tin, is dull (common practice; from memory). */
const leastLead = 0.37;

/**
 * True when it does not ring: lead in bulk or with tin, a core of lead under whatever skin, and metal powder in a polymer
 * (common practice).
 */
export function deadens(m: Metal): boolean {
  const [least] = m.family === "cored-and-plated" ? (m.composition.Pb ?? [0]) : shareOf(m, "Pb");
  return least >= leastLead || "polymer" in m.composition;
}
