/** Typed readings of a piece above a limit, confirmed by a second person. */
export const secondPerson = {
  title: "A second person reads",
  due: (above: string) =>
    `This piece is above ${above} and its readings were typed. A second person reads and types them before the record is written, without seeing what stands here.`,
  handOver: "Hand over to a second person",
  lead: "Read the mass yourself: off the display, or weigh the piece again. What was typed first is not shown here.",
  piece: (ticket: string) => `Piece ${ticket}`,
  reading: (role: string) => `Your ${role} reading`,
  allDecimals: "all decimals the scale shows, zeros too",
  unit: (role: string) => `Unit of the ${role} reading`,
  by: "Your initials",
  typedBy: "Initials of whoever typed the first readings",
  typedByIs: (who: string) => `The first readings were typed by ${who}.`,
  send: "Hold both against each other",
  back: "Back without reading",
  differs: (by: string) =>
    `What ${by} read does not agree. Both are kept. Set the wrong reading aside with its reason and type it again; then a second person reads anew.`,
  differsBack: "Put the readings right on the Bench",
  confirmed: (by: string, when: string) => `Readings typed, confirmed by ${by} at ${when}.`,
  heading: "Second person",
  caption: "What was typed first and what a second person read, without seeing it",
  columns: { what: "Reading", first: "First", second: "Second person", state: "Held against each other" },
  agrees: (grams: string) => `agree within ${grams} g`,
  unlike: (grams: string) => `differ by more than ${grams} g`,
  readBy: (by: string, typedBy: string, when: string, above: string) =>
    `${by} read at ${when} what ${typedBy} had typed, since the piece is above ${above}.`,
  settings: "Second person",
  settingsLead:
    "Typed readings of a piece above a limit are confirmed by a second person before its record is written. In a lot with a locked price counts what the piece is worth at that price if it is what it is said to be, or as fine metal where nothing is said; elsewhere its dry mass, since nothing else is known before it is weighed.",
  massG: "Dry mass above",
  worth: "In a lot with a locked price: worth more than",
  worthUnit: "in the currency of that price",
  never: "empty: never",
};
