import type { Words } from "../en/index.ts";

/** Was ein Bericht außer der Messung sagt, gefragt, wenn ein Stück auf den Messplatz kommt. */
export const forTheReport: Words["forTheReport"] = {
  summary: "Wer es brachte, Zustand, Bearbeiter: für Bericht und Suche",
  fields: {
    customer: "Gebracht von",
    condition: "Zustand bei der Annahme",
    operator: "Bearbeiter",
    statedMass: "Masse, wie der Kunde sie angibt",
    marks: "Stempel, wie der Kunde sie liest",
    stones: "Steine und Fassungen, wie der Kunde sie angibt",
  },
  customerHint:
    "ein Verweis des Hauses, etwa eine Seite im Ankaufsbuch. Ein Name gehört zu den personenbezogenen Daten: Was festzuhalten ist und was nicht, sagen die örtlichen Regeln für Ankaufsbücher und der Datenschutz",
  conditionHint: "sauber, Stöße, Reparaturen, Überzug",
  statedMassHint: "die trockene Ablesung wird daran gehalten, bevor etwas nass wird",
  theirs: "Was der Kunde sagt, steht im Bericht als seine Angabe, getrennt vom Gemessenen.",
};
