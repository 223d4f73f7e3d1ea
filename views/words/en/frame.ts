/** The frame around every page. */
export const frame = {
  skip: "Skip to the content",
  places: "Places",
  bench: "Bench",
  records: "Records",
  lots: "Lots",
  balances: "Balances",
  checks: "Checks",
  metals: "Metals",
  plan: "Plan",
  settings: "Settings",
  demo: "Demonstration: invented pieces, a simulated balance, nothing real is weighed here.",
  demoEnd: "Clear the demonstration",
  stale: "The bench has gone quiet. What you see may be old; it catches up by itself.",
  footer:
    "A density test is evidence, not an assay. It neither replaces hallmarking nor the licensed laboratory.",
  gramsPerCm3: "g/cm³",
  table: "The same as a table",
  required: "needed",
  notDone: "Not done",
  backToBench: "Back to the bench",
};

/** What the page's own script says; {text} and {unit} are filled in by it. */
export const typedByBalance = {
  noWeight: "The balance typed “{text}”, which is no weight. Nothing was entered.",
  noField:
    "The balance typed “{text}” and no field waits for a weight. Nothing was entered: choose the field, then press the key of the balance again.",
  manyFields:
    "The balance typed “{text}” and several fields wait for a weight. Nothing was entered: choose the field, then press the key of the balance again.",
  unknownUnit: "The balance typed “{text}”; the unit {unit} is not known here. Nothing was entered.",
};
