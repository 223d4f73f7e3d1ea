import { type Message, message, type Param } from "../../../calibration/message.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import { plainNames } from "../plain-names.ts";
import type { Plan } from "./planned-result.ts";

/** So many finenesses of the claim's own metal are asked about, the nearest in density. */
const neighbours = 4;

/**
 * What one asks first about a claim: the metals false pieces are mostly made of, and its neighbours in fineness; where
 * none of those can be told, also the nearest fineness that can, so that the answer says how far it reaches.
 */
export function askedFirst(
  claimed: Metal,
  library: Library,
  notExcluded: ReadonlySet<string> = new Set(),
): Metal[] {
  const others = Object.keys(plainNames)
    .filter((id) => library.has(id))
    .map((id) => library.metal(id));
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - claimed.densityGPerCm3.nominal);
  const byDistance = library.metals
    .filter((m) => m.family === claimed.family && m.recipes !== undefined && m.id !== claimed.id)
    .filter((m) => !m.recipes?.includes(claimed.id))
    .sort((a, b) => away(a) - away(b));
  const finenesses = byDistance.slice(0, neighbours);
  const toldFineness = byDistance.find(({ id }) => !notExcluded.has(id));
  if (toldFineness && finenesses.every(({ id }) => notExcluded.has(id))) finenesses.push(toldFineness);
  return [...others.filter((m) => m.family !== claimed.family && !isElementOf(m, claimed)), ...finenesses];
}

const isElementOf = (m: Metal, claimed: Metal) =>
  m.family === "elements" && (claimed.composition[Object.keys(m.composition)[0] ?? ""]?.[0] ?? 0) > 0.5;

/** The plan in one plain sentence or two: what this scale can tell the claim from, and what it cannot. */
export function plainAnswer(plan: Plan, library: Library): readonly Message[] {
  return plan.possible ? [toldApart(library.metal(plan.claim), plan.fitting, library)] : plan.message;
}

/** The plain answer from what a density does not exclude, expected or measured: what is told from the claim, what is not. */
function toldApart(claimed: Metal, notExcluded: readonly string[], library: Library): Message {
  const left = new Set(notExcluded);
  const asked = askedFirst(claimed, library, left);
  const separated = asked.filter((m) => !isLeft(m, left, library)).map(plainName);
  const untold = asked.filter((m) => isLeft(m, left, library)).map(plainName);
  const claim = called(claimed);
  if (separated.length === 0) return message("plan.answer.tells-none", { claim, untold });
  if (untold.length === 0) return message("plan.answer.tells-all", { claim, told: separated });
  return message("plan.answer.tells-some", { claim, told: separated, untold });
}

/** A fineness is left while one of its recipes is that is met; where only rare ones are, it is told. */
function isLeft({ id, recipes = [] }: Metal, left: ReadonlySet<string>, library: Library): boolean {
  const listed = recipes.filter((recipe) => left.has(recipe));
  if (listed.length === 0) return left.has(id);
  return listed.some((recipe) => library.metal(recipe).likelihood !== "rare");
}

function plainName(metal: Metal): Param {
  const code = plainNames[metal.id];
  return code === undefined ? called(metal) : message(code);
}
