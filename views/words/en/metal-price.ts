/** What the fine metal in one recorded piece comes to at a price somebody enters. */
export const metalPrice = {
  title: (ticket: string) => `Metal price of ${ticket}`,
  link: "What the metal in it comes to at a price you enter",
  problems: "These entries need another look",
  lead: "Enter a price of the fine metal as you found it. Nothing is looked up and nothing is stored.",
  ifItIs: "If it is",
  colour: "Its colour, if gold",
  sourceHint: "such as the page or the board you read it on",
  go: "Show low and high",
  heading: "Low and high",
  range: (low: string, high: string, currency: string) => `${low} to ${high} ${currency}`,
  conditions: {
    gold: "if it is sound gold alloy all through",
    silver: "if it is sound silver alloy all through",
  },
  facts: {
    mass: "Mass",
    fineness: "Fineness by density",
    finenessIs: (low: string, high: string) => `${low} to ${high} ‰`,
    fine: "Fine metal",
    price: "Price entered",
    priceIs: (price: string, currency: string, per: string) =>
      `${price} ${currency} per ${per} of fine metal`,
    source: "Read from",
    sourceIs: (source: string, at: string) => `${source}, as of ${at}`,
    laboratory: "By the laboratory's fineness",
    laboratoryIs: (permille: string, money: string, currency: string) =>
      `${permille} ‰: ${money} ${currency}`,
  },
  impossible: "No sound alloy of this metal has the density measured, so there is nothing to multiply.",
  disagrees: (claim: string) =>
    `The density disagrees with what the piece is said to be (${claim}). Find out what it is before you think of a price.`,
  meaning: "What this is, and what it is not",
  notValuation:
    "This is fine mass times a price, not a valuation and not an offer. A coin, a maker or an age can be worth more than the metal.",
  deductions:
    "What a dealer deducts is not known here: refining, a margin, a fee, stones and other parts. So an offer below the low end is not unfair by that alone; ask what is taken off and why.",
  notProof: "The density does not prove the metal.",
  alive: (names: string) => `What else has this density and is still alive: ${names}.`,
  andMore: (names: string, count: number) => `${names} and ${count} more`,
  noneKnown:
    "Nothing else the bench knows has this density, yet a core or a mixture may; other tests narrow it.",
  narrow: "Other tests that narrow it",
  hollow: "With stones in it, hollow or filled, the range does not hold at all.",
  voided: "The record is voided: what was measured does not count, and neither does this.",
};
