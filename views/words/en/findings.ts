/** A finding and what surrounds it. */
export const finding = {
  heading: "Finding",
  saidToBe: "Said to be",
  noClaim: "Nothing is claimed: ",
  first: "Rule these out first",
  stillAlive: "Still alive beside it",
  more: (count: number) => (count === 1 ? "and one more" : `and ${count} more`),
  wouldDecide: "What would decide:",
  opinion: "The density is the result; what it means for the metal is an opinion drawn from it.",
};
