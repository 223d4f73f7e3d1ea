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
};
