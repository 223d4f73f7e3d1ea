import type { Metal } from "../metals/metal.ts";
import { principal } from "../metals/share-of.ts";
import type { Candidate } from "./candidate.ts";
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

/** Harmless tests that see through a skin or tell a mixture, and whether it is known what they show of a metal. */
const seeingThrough: Readonly<Partial<Record<EvidenceKind, (m: Metal) => boolean>>> = {
  conductivity: ({ conductivityIacsPercent }) => conductivityIacsPercent !== null,
  sound: ({ soundMPerS }) => soundMPerS !== null,
};

/**
 * Of the alternatives those that keep a claim from standing alone; what is rarely met does not. A body made for the density
 * does not either once a test has seen through it, but for a solid mixture of other metals that is known to show in that
 * test what the claim shows.
 */
export function leftBeside<C extends Candidate>(
  claimed: Metal,
  alternatives: readonly C[],
  tests: readonly EvidenceKind[],
): C[] {
  const seeing = tests.flatMap((kind) => seeingThrough[kind] ?? []);
  const main = principal(claimed);
  const alike = ({ metal }: C) =>
    metal.family === "mixtures" && principal(metal) !== main && seeing.some((isKnown) => isKnown(metal));
  return alternatives.filter(
    (one) =>
      one.occurrence !== "rare" && !(one.occurrence === "purpose-made" && seeing.length > 0 && !alike(one)),
  );
}
