/** Several balances at once, and what else the Balances page says of finding and keeping them. */
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
  listeningAt: (line: string, tried: number) =>
    `Now at ${line}; ${tried === 1 ? "one setting" : `${tried} settings`} tried before it.`,
  profileFile: "The exported file",
  profileText: "Or the whole text of the exported file",
  changeOver: "Take the next reading from another balance",
};
