import type { ToldPair } from "../../told.ts";

/** Why an assay was not written down. */
export const assays: readonly ToldPair[] = [
  ["Which laboratory? Write its name.", "Welches Labor? Seinen Namen schreiben."],
  [
    "A laboratory result needs the number of its report, so that it can be found again.",
    "Ein Laborergebnis braucht die Nummer seines Berichts, damit es wiederzufinden ist.",
  ],
  [
    "By which method? Write it as it stands on the report, such as cupellation.",
    "Nach welchem Verfahren? So schreiben, wie es auf dem Bericht steht, etwa Kupellation.",
  ],
  [
    '"{day}" is no day. Right: the date of the report, such as 2026-03-02.',
    "„{day}“ ist kein Tag. Richtig: das Datum des Berichts, etwa 2026-03-02.",
  ],
  [
    "{day} has not come yet. Right: the date of the report, up to {today}.",
    "{day} liegt noch in der Zukunft. Richtig: das Datum des Berichts, bis {today}.",
  ],
  [
    "A laboratory result stands already. Write why another one is entered.",
    "Ein Laborergebnis steht schon. Schreiben, warum ein weiteres eingetragen wird.",
  ],
];
