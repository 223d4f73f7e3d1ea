/** How long records are kept. */
export const retention = {
  title: "How long records are kept",
  standing: (years: number, since: string) => `Kept at least ${years} years from their date, since ${since}.`,
  standingNone: "There is no setting: every record is kept for good.",
  rules:
    "A longer time counts for records that exist, too. A shorter one counts only for records made from then on: a time that was promised is not shortened. Records made before the first setting are kept for good. Nothing is deleted by the program, neither before nor after its time.",
  persons:
    "Who brought a piece stands in its record and in the chain, and so is kept as long as the record: nothing can be taken out of one entry alone. Write a reference of your own there, and keep names in a buying book that follows its own rules.",
  law: "How long you must keep records, and when you must not keep them longer, is ruled by local law.",
  change: "A new setting",
  years: "Keep records at least",
  yearsAfter: "years",
  by: "Your name or initials",
  reason: "Why",
  reasonHint: "a law, a contract, a rule of the house",
  keep: "Keep from now on",
  refused: "This entry needs another look; nothing was changed",
  wrong: (typed: string) =>
    `“${typed}” is no number of years. Right: a number above 0 and up to 200, such as 10.`,
  kept: "Kept. It counts from now on.",
  list: "Time over, or over within a year",
  none: "No record's time is over within a year.",
  more: "More records than these are concerned; the newest of them are shown.",
  columns: { ticket: "Ticket", measured: "Measured", until: "Kept at least until", standing: "Standing" },
  over: "time is over; still here",
  ending: "time is ending",
  history: "Settings so far, oldest first",
  historyColumns: { since: "Since", years: "Years", by: "By", reason: "Why" },
};
