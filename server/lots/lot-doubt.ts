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
] as const;
export type RaisedFlag = (typeof raisedFlags)[number];

/** Something in a lot that does not fit together, and what to do about it. */
export interface LotDoubt {
  /** the flag it puts on its tickets; a doubt whose flag was cleared on every ticket is not told again */
  flag?: RaisedFlag;
  says: string;
  todo: string;
  tickets: readonly string[];
}
