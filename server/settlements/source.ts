/** Who says the fineness of a piece; the order in which they are believed unless a lot states another one. */
export const sources = ["laboratory", "melt", "density", "stamp", "customer"] as const;
export type Source = (typeof sources)[number];

/** Sources whose word a person writes down for one piece. */
export const statedSources = ["stamp", "laboratory", "customer"] as const;
export type StatedSource = (typeof statedSources)[number];

/** Which figure of an interval is paid. */
export const intervalEnds = ["low", "expected", "high"] as const;
export type IntervalEnd = (typeof intervalEnds)[number];

/** Which dry mass of a piece that was weighed again counts. */
export const weighings = ["first", "again"] as const;

/** Why a piece, or one metal of it, is not paid for. */
export const leftOutReasons = [
  "left-out",
  "voided",
  "no-valid-reading",
  "excluded",
  "tests-against",
  "mass-changed",
  "contradicted",
  "stones",
  "no-fineness",
  "no-metal",
  "no-price",
] as const;
export type LeftOutReason = (typeof leftOutReasons)[number];
