import type { Situation } from "./situation.ts";
import type { Suspicion, SuspicionKind } from "./suspicion.ts";

/** What a watch sees, before it is named. */
export type Seen = Omit<Suspicion, "kind">;

/** One thing the watch can recognise. `look` is a pure function and stays silent while it knows too little. */
export interface Watch {
  readonly kind: SuspicionKind;
  look(situation: Situation): Seen | undefined;
}
