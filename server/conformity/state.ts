import type { Occurrence } from "../metals/worth-table.ts";
import type { EvidenceKind } from "./evidence/evidence.ts";

/** Where a claim stands after everything that is known of a piece. */
export const states = [
  "consistent",
  "consistent-not-unique",
  "excluded",
  "inconclusive",
  "no-claim",
  "no-valid-reading",
] as const;

export type State = (typeof states)[number];

/** The words of entries written before these; they stay valid in the ledger. */
export const statesBefore = ["agrees", "agrees-not-alone", "disagrees", "undecided"] as const;

const since: Readonly<Record<(typeof statesBefore)[number], State>> = {
  agrees: "consistent",
  "agrees-not-alone": "consistent-not-unique",
  disagrees: "excluded",
  undecided: "inconclusive",
};

/** A state as it is called now. Without a claim an earlier "undecided" is "no-claim". */
export function stateNow(state: State | (typeof statesBefore)[number], claimed: boolean): State {
  if (state === "undecided" && !claimed) return "no-claim";
  return state in since ? since[state as keyof typeof since] : (state as State);
}

/** Harmless tests that see through a skin or tell a mixture: they exclude a body tuned to a density. */
const seeingThrough: ReadonlySet<EvidenceKind> = new Set(["conductivity", "sound"]);

/** Of the alternatives those that keep a claim from standing alone; what is rarely met does not. */
export function leftBeside<C extends { occurrence: Occurrence }>(
  alternatives: readonly C[],
  tests: readonly EvidenceKind[],
): C[] {
  const tested = tests.some((kind) => seeingThrough.has(kind));
  return alternatives.filter(
    ({ occurrence }) => occurrence !== "rare" && !(occurrence === "purpose-made" && tested),
  );
}
