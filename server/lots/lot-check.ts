import type { Message } from "../../calibration/message.ts";

/** Flags that tell what the ledger says of a piece; nobody sets or clears them. */
const factFlags = ["voided", "typed", "no valid reading"] as const;

/** Flags of a doubt that the bench raises; a person may set or clear them too, and may raise others in own words. */
export const doubtFlags = [
  "same mass",
  "water inside",
  "mass lost",
  "other piece",
  "swapped",
  "light for its claim",
  "heavy for its claim",
  "tests against it",
] as const;

export type RaisedFlag = (typeof factFlags)[number] | (typeof doubtFlags)[number];

const raisedFlags: ReadonlySet<string> = new Set<RaisedFlag>([...factFlags, ...doubtFlags]);
const facts: ReadonlySet<string> = new Set<RaisedFlag>(factFlags);

export function isRaisedFlag(flag: string): flag is RaisedFlag {
  return raisedFlags.has(flag);
}

export function isFactFlag(flag: string): flag is (typeof factFlags)[number] {
  return facts.has(flag);
}

/** Something in a lot that does not fit together, and what to do about it. */
export interface LotCheck {
  /** the flag it puts on its tickets; a check whose flag was cleared on every ticket is not told again */
  flag?: RaisedFlag;
  message: Message;
  remedy: Message;
  tickets: readonly string[];
}
