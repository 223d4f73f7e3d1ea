import { type Message, message } from "../../../calibration/message.ts";
import type { Metal } from "../../metals/metal.ts";
import type { WorthTable } from "../../metals/worth-table.ts";
import type { Evidence, EvidenceKind } from "./evidence.ts";
import { excludedBy } from "./exclusion-by-test.ts";

/** What one test excluded, and why. */
export interface ExcludedByTest {
  id: string;
  by: EvidenceKind;
  says: Message;
}

/** Density and all other evidence side by side; nothing is averaged and nothing scored. */
export interface WeighedEvidence {
  /** what density leaves and no test excludes */
  notExcluded: Metal[];
  excluded: ExcludedByTest[];
  /** tests that cannot all be right */
  contradictions: Message[];
  /** what is odd but excludes nothing */
  remarks: Message[];
}

/** What evidence is weighed on. */
interface Weighed {
  /** the metals and made-up pieces that the density does not exclude */
  fits: readonly Metal[];
  /** those it does: they are needed to see that two tests contradict each other */
  others: readonly Metal[];
  claimed: Metal | undefined;
}

/**
 * Weighs evidence on what may be on the bench. A fineness family is left by a recipe that density and test leave both; the
 * claim by any of its recipes, since between two of them its maker may have chosen another.
 */
export function weighEvidence(
  { fits, others, claimed }: Weighed,
  evidence: readonly Evidence[],
  worth: WorthTable,
): WeighedEvidence {
  const excluded: ExcludedByTest[] = [];
  const ids = new Set(fits.map(({ id }) => id));
  const asFits = (m: Metal): Metal => {
    const recipes = m === claimed ? undefined : m.recipes?.filter((id) => ids.has(id));
    return recipes?.length ? { ...m, recipes } : m;
  };
  const notExcluded = fits.filter((m) => {
    const reasons = evidence.flatMap((e) => {
      const sentence = excludedBy(e, asFits(m), worth);
      return sentence === null ? [] : { id: m.id, by: e.kind, says: sentence };
    });
    excluded.push(...reasons);
    return reasons.length === 0;
  });
  return {
    notExcluded,
    excluded,
    contradictions: contradictions(fits, others, evidence, worth),
    remarks: evidence.flatMap(remark),
  };
}

/** Pairs of tests that leave nothing in common, density being one of the tests; or all together, where no pair does. */
function contradictions(
  fits: readonly Metal[],
  others: readonly Metal[],
  evidence: readonly Evidence[],
  worth: WorthTable,
): Message[] {
  if (evidence.length === 0) return [];
  const everything = [...fits, ...others];
  const tests = [
    { name: message("test.name.density"), leaves: new Set(fits) },
    ...evidence.map((e) => ({
      name: message(`test.name.${e.kind}`),
      leaves: new Set(everything.filter((m) => excludedBy(e, m, worth) === null)),
    })),
  ];
  const found: Message[] = [];
  for (const [i, a] of tests.entries()) {
    if (a.leaves.size === 0) found.push(message("test.check.fits-nothing", { test: a.name }));
    for (const b of tests.slice(i + 1))
      if (a.leaves.size > 0 && b.leaves.size > 0 && disjoint(a.leaves, b.leaves))
        found.push(message("test.check.contradict", { tests: [a.name, b.name] }));
  }
  if (found.length > 0) return found;
  return everything.some((m) => tests.every(({ leaves }) => leaves.has(m)))
    ? []
    : [message("test.check.contradict", { tests: tests.map(({ name }) => name) })];
}

function disjoint<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  for (const x of a) if (b.has(x)) return false;
  return true;
}

function remark(e: Evidence): Message[] {
  if (e.kind === "ring" && e.heard === "dull") return [message("test.check.dull-ring")];
  if (e.kind === "magnet" && e.shows === "weak") return [message("test.check.weak-pull")];
  return [];
}
