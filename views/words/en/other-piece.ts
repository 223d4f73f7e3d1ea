/** The dry mass is not the one announced for the ticket. */
export const otherPiece = {
  heading: "Is this the piece of the ticket?",
  lead: "Stop before anything gets wet: the dry mass is not the one announced for this ticket.",
  announced: { told: "Announced for the ticket", earlier: "Weighed earlier under this ticket" },
  weighed: "On the pan, dry",
  apart: "Apart",
  apartBy: (apart: string, within: string) => `${apart} g; both displays explain ${within} g at most`,
  right: "It is the right piece",
  why: "Why it weighs otherwise",
  whyExample: "the list rounds to whole grams",
  by: "Your initials",
  goOn: "Go on with it",
  other: (ticket: string) => `It is another piece: set it aside and open ${ticket} again`,
  otherHint:
    "What was weighed stays in the ledger with its reason; then lay the piece of the ticket on the pan.",
  noPhoto: "No photo of the ticket's piece is kept.",
  note: (weighed: string, announced: string, reason: string) =>
    `Weighs ${weighed}, announced ${announced}; taken as the right piece: ${reason}`,
};
