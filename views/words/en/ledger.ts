/** The ledger: where it is, whether it is whole, signed checkpoints, handing over. */
export const ledger = {
  title: "The ledger",
  entries: (count: number, place: string) => `${count} entries in ${place}.`,
  key: "Key that signs it",
  noKey: "This ledger is not signed from here.",
  found: "Found when it was opened",
  check: {
    heading: "Is every entry as it was written?",
    lead: "Walks the whole chain of entries and every signature. A checkpoint kept elsewhere makes the check stronger: whoever rewrote the chain, even with the key in hand, cannot make it fit.",
    kept: "Checkpoints kept elsewhere",
    keptHint: "one a line, as printed or sent; may be left empty",
    go: "Check the ledger",
    good: (entries: number, checkpoints: number, signedUpTo: number) =>
      `Good: ${entries} entries, ${checkpoints} checkpoints, signed up to row ${signedUpTo}.`,
    fitting: (count: number) =>
      count === 1 ? "The checkpoint kept elsewhere fits." : `The ${count} checkpoints kept elsewhere fit.`,
    listGood: (records: number) => `The list of ${records} records says what the entries say.`,
    listBad: "The entries are good, but not the list made from them:",
    bad: (row: number) => `Not good. The first row that is wrong is row ${row}.`,
    noLine: (line: string) =>
      `“${line}” is no checkpoint. Right: the whole line, checkpoint ROW HASH KEY SIGNATURE.`,
  },
  checkpoint: {
    heading: "A checkpoint to print or send",
    lead: "A line signed by this bench that vouches for every entry up to now. Print it and lay it in a drawer, or send it to somebody who keeps it: from then on nobody can rewrite what was recorded before without being found out.",
    make: "Sign the ledger as it stands",
    line: "The line, whole",
    made: (row: number) => `Vouches for every entry up to row ${row}.`,
    send: "Send it by mail",
    subject: "Checkpoint of a ledger",
    print: "To print it, use the browser's own print command on this page.",
    use: "To check the ledger against it later, put it into the field below, or run",
  },
  notes: {
    nothingStored: "Nothing can be stored at present.",
    goesOn:
      "The balance is read and shown as before, and every record can be read; but no reading counts until it can be stored. What you typed stays in its field: send it again once the cause is gone.",
    opened: "Found when the bench was opened",
  },
  handOver: {
    heading: "Handing over to the shared ledger",
    none: "This bench keeps its own ledger only. With DATABASE_URL set at start it also hands every entry over to a shared one in PostgreSQL.",
    "up-to-date": (at: string) => `Everything is in the shared ledger, as of ${at}.`,
    waiting:
      "The shared ledger cannot be reached. The bench goes on with its own ledger and hands over later; nothing is lost and nothing is doubled.",
    last: (at: string) => `Everything was last handed over at ${at}.`,
    never: "Nothing has been handed over yet.",
  },
};
