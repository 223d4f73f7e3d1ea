import type { Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import type { Plan } from "./plan.ts";

/** What false pieces are mostly made of, in the words a counter would use (common practice). */
const mostlyMet: Readonly<Record<string, string>> = {
  "el-cu": "copper",
  "brass-c260": "brass",
  nisilver: "nickel silver",
  "cuni-25": "cupronickel",
  "el-pb": "lead",
  "w-pure": "tungsten",
  "steel-c": "steel",
  "el-ag": "fine silver",
};
/** So many finenesses of the claim's own metal are asked about, the nearest in density. */
const neighbours = 3;

/**
 * What one asks first about a claim: the metals false pieces are mostly made of, and its neighbours in fineness; where
 * none of those can be told, also the nearest fineness that can, so that the answer says how far it reaches.
 */
export function usualSuspects(
  claimed: Metal,
  library: Library,
  alive: ReadonlySet<string> = new Set(),
): Metal[] {
  const others = Object.keys(mostlyMet)
    .filter((id) => library.has(id))
    .map((id) => library.metal(id));
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - claimed.densityGPerCm3.nominal);
  const byDistance = library.metals
    .filter((m) => m.family === claimed.family && m.recipes !== undefined && m.id !== claimed.id)
    .filter((m) => !m.recipes?.includes(claimed.id))
    .sort((a, b) => away(a) - away(b));
  const finenesses = byDistance.slice(0, neighbours);
  const toldFineness = byDistance.find(({ id }) => !alive.has(id));
  if (toldFineness && finenesses.every(({ id }) => alive.has(id))) finenesses.push(toldFineness);
  return [...others.filter((m) => m.family !== claimed.family && !isElementOf(m, claimed)), ...finenesses];
}

const isElementOf = (m: Metal, claimed: Metal) =>
  m.family === "elements" && (claimed.composition[Object.keys(m.composition)[0] ?? ""]?.[0] ?? 0) > 0.5;

/** The plan in one plain sentence: what this scale can tell the claim from, and what it cannot. */
export function inOneSentence(plan: Plan, library: Library): string {
  return plan.possible ? toldApart(library.metal(plan.claim), plan.finding?.alive ?? [], library) : plan.says;
}

/** The plain answer from what a density leaves alive, expected or measured: what is told from the claim, what is not. */
export function toldApart(claimed: Metal, aliveIds: readonly string[], library: Library): string {
  const alive = new Set(aliveIds);
  const suspects = usualSuspects(claimed, library, alive);
  const told = suspects.filter(({ id }) => !alive.has(id));
  const untold = suspects.filter(({ id }) => alive.has(id));
  if (told.length === 0) return `This scale cannot tell ${claimed.name} from ${list(untold)} here.`;
  const not = untold.length > 0 ? `, not from ${list(untold)}` : "";
  return `This scale can tell ${claimed.name} from ${list(told)} here${not}.`;
}

/** The same for a measured piece; undefined when nothing was claimed, or the claim itself is ruled out. */
export function toldApartHere(
  claim: string | null | undefined,
  alive: readonly string[],
  library: Library,
): string | undefined {
  if (claim == null || !library.has(claim) || !alive.includes(claim)) return undefined;
  return toldApart(library.metal(claim), alive, library);
}

function list(metals: readonly Metal[]): string {
  const names = metals.map(({ id, name }) => mostlyMet[id] ?? name);
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}
