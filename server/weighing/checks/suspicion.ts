/** Everything the watch can recognise; one file each in this folder, listed in index.ts. */
export const suspicionKinds = [
  "units-mixed",
  "decimals-changed",
  "fahrenheit",
  "water-unlike-room",
  "mass-not-expected",
  "display-stuck",
  "dry-readings-differ",
  "boxes-swapped",
  "displaced-for-immersed",
  "displacement-negative",
  "floats",
  "nothing-on-hook",
  "rests-on-bottom",
  "not-covered",
  "hanger-in-dry",
  "hanger-in-immersed",
  "tare-while-immersed",
  "zero-moved",
  "still-climbing",
  "climbed",
  "bubbles-growing",
  "drift-immersed",
  "dry-mass-changed",
  "void-or-lighter",
  "lower-than-claim",
  "higher-than-claim",
  "repeats-exhausted",
] as const;

export type SuspicionKind = (typeof suspicionKinds)[number];

/**
 * Something a page may offer to do at one touch once the person agrees. The watch itself changes nothing: an offer
 * taken up becomes an amendment or a voiding with its reason, and the original stays.
 */
export type Offer =
  | { do: "swap-dry-and-wet" }
  | { do: "read-as-displaced" }
  | { do: "read-as-immersed" }
  | { do: "set-celsius"; celsius: number }
  | { do: "set-aside"; role: "dry" | "wet"; places: readonly number[] }
  | { do: "repeat"; role: "dry" | "wet" | "zero" };

export interface Remedy {
  /** what to do, as one sentence */
  says: string;
  offer?: Offer;
}

/** A named doubt about the procedure, put as a question. It never changes a number. */
export interface Suspicion {
  kind: SuspicionKind;
  /** what was seen, with its values */
  says: string;
  /** the question to the person at the bench */
  ask: string;
  /** most likely remedy first */
  remedies: readonly Remedy[];
  /** true: the Bench writes no record before somebody says what was found; in a lot the piece is flagged */
  blocking: boolean;
}
