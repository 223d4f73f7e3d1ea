import type { Words } from "../en/index.ts";

/** Was ein Bericht außer der Messung sagt, gefragt, wenn ein Stück auf den Messplatz kommt. */
export const forTheReport: Words["forTheReport"] = {
  summary: "Für den Bericht: Kunde, Zustand, Bearbeiter",
  fields: {
    customer: "Kunde",
    condition: "Zustand bei der Annahme",
    operator: "Bearbeiter",
    statedMass: "Masse, wie der Kunde sie angibt",
    marks: "Stempel, wie der Kunde sie liest",
    stones: "Steine und Fassungen, wie der Kunde sie angibt",
  },
  customerHint: "ein Beleg genügt; ein Name nur, wenn ein Bericht ihn braucht",
  conditionHint: "sauber, Stöße, Reparaturen, Überzug",
  theirs: "Was der Kunde sagt, steht im Bericht als seine Angabe, getrennt vom Gemessenen.",
};
