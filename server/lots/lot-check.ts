import type { Message } from "../../calibration/message.ts";

/** Flags the bench raises by itself; an operator may raise others in own words. */
export const raisedFlags = [
  "voided",
  "typed",
  "same mass",
  "water inside",
  "mass lost",
  "other piece",
  "swapped",
  "light for its claim",
  "no valid reading",
] as const;
export type RaisedFlag = (typeof raisedFlags)[number];

/** Something in a lot that does not fit together, and what to do about it. */
export interface LotCheck {
  /** the flag it puts on its tickets; a check whose flag was cleared on every ticket is not told again */
  flag?: RaisedFlag;
  message: Message;
  remedy: Message;
  tickets: readonly string[];
}
