/** Whose laboratory assays a melt; the umpire is asked where the two do not agree. */
export const sides = ["house", "seller", "umpire"] as const;
export type Side = (typeof sides)[number];

/** Whose figure the result of a melt is; "mean": that of both sides. */
export const resultsFrom = ["house", "seller", "mean", "umpire"] as const;
