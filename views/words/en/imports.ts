/** Lists that are taken over, and tickets that wait. */
export const imports = {
  title: "Take over a list",
  lead: "From a table program, save as CSV and choose the file, or paste the lines. Comma, semicolon or tab between the columns, point or comma in the numbers; dates as 2024-03-31. First you see what would be taken over and every cell that would not; nothing is stored before you say so.",
  list: "What the list holds",
  lists: {
    weighings: "weighings from before this ledger",
    tickets: "pieces that wait to be weighed",
    specifications: "what coins, bars and other pieces should weigh and measure",
    metals: "metals and alloys of one's own",
  },
  columns: "Its first line",
  needed: "needed",
  mayBeMissing: "may be missing",
  file: "File",
  text: "Or paste its lines",
  from: "Where it comes from",
  fromHint: "stands with everything that is taken over, such as: old book 2019, stock system",
  look: "Show what would be taken over",
  refused: "The list was not read",
  noText: "No file was chosen and nothing was pasted. Choose the list's file, or paste its lines.",
  noFrom: "Say where the list comes from, such as: old book 2019.",
  gone: "The list is no longer held; the bench was started anew, or other lists were looked at since. Choose it again.",
  preview: (list: string) => `What would be taken over: ${list}`,
  good: (count: number) => (count === 1 ? "1 row is right." : `${count} rows are right.`),
  bad: (count: number) =>
    count === 1
      ? "1 cell is refused; its row is left out."
      : `${count} cells are refused; their rows are left out.`,
  leftOut: (names: string) => `Columns nobody asks for, left out: ${names}.`,
  refusedCells: "Refused cells",
  moreRefused: (count: number) => `and ${count} more`,
  line: "Line",
  column: "Column",
  stands: "What stands there",
  why: "Why it is refused",
  empty: "(empty)",
  rows: "The first rows that are right",
  takeOver: (count: number) => (count === 1 ? "Take over this row" : `Take over these ${count} rows`),
  nothingRight: "No row is right, so there is nothing to take over. Correct the list and choose it again.",
  correct: "Choose another list",
  taken: (count: number, list: string) => `Taken over: ${count}, ${list}.`,
  stoodAlready: "What stood here already was not written twice.",
};

/** Tickets that wait to be weighed. */
export const tickets = {
  title: "Tickets that wait",
  lead: "Pieces announced in a list. What the list says of a piece is the customer's; it is reported as theirs, never as measured.",
  none: "No ticket waits. Take over a list of tickets to see them here.",
  columns: { ticket: "Ticket", piece: "Piece", claim: "Said to be", lot: "Lot", from: "From", weigh: "" },
  weigh: "Put it on the bench",
  noClaim: "nothing",
  unknown: "That ticket does not wait here any more. Look at the list again.",
};

/** The page of a weighing that was taken over from a list. */
export const imported = {
  lead: "This weighing was not measured at this bench. It was taken over from a list; there are no readings and no budget behind it.",
  from: "Taken over from:",
  when: "Measured, as stated",
  piece: "Piece",
  claim: "Said to be",
  mass: "Mass, as stated",
  density: "Density, as stated",
  uncertainty: "Its standard uncertainty, as stated",
  entry: "Entry",
  hash: "Its hash",
};
