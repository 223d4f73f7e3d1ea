/** Balances that are heard although the bench takes from another one. */
export const beside = {
  heading: "Heard beside it",
  caption: "Balances that are open, while the bench takes from the one above",
  balance: "Balance",
  now: "Now",
  inWords: "In words",
  none: "No other balance is open.",
  hear: "Hear it too",
  state: "heard too",
  take: (balance: string) => `Take from the ${balance}`,
  end: (balance: string) => `Close the ${balance}`,
  keptFor: "Comma, request and profile are kept for",
  changeOver: "Take the next reading from another balance",
};
