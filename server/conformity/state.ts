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

/** A recorded answer with its state as it is called now. */
export function withStateNow<R extends RecordedAnswer>(response: R): R {
  const { finding } = response;
  if (!finding) return response;
  const state = stateNow(finding.state, (finding.claim ?? null) !== null);
  return { ...response, finding: { ...finding, state } };
}

interface RecordedAnswer {
  finding?:
    | { claim?: string | null | undefined; state: State | (typeof statesBefore)[number] }
    | null
    | undefined;
}

/** The state of a recorded answer; "no-claim" where nothing was found. */
export function stateOf(response: RecordedAnswer): State {
  return response.finding
    ? stateNow(response.finding.state, (response.finding.claim ?? null) !== null)
    : "no-claim";
}
