import type { Words } from "../en/index.ts";

/** The frame around every page. */
export const frame: Words["frame"] = {
  skip: "Zum Inhalt springen",
  places: "Bereiche",
  bench: "Messplatz",
  records: "Protokolle",
  lots: "Partien",
  balances: "Waagen",
  checks: "Prüfungen",
  metals: "Metalle",
  plan: "Planung",
  settings: "Einstellungen",
  demo: "Vorführung: erfundene Stücke, eine simulierte Waage, hier wird nichts Echtes gewogen.",
  demoEnd: "Vorführung entfernen",
  stale: "Der Messplatz ist verstummt. Die Anzeige kann alt sein; sie holt von selbst auf.",
  footer:
    "Eine Dichteprüfung ist ein Hinweis, keine Feingehaltsbestimmung. Sie ersetzt weder Punzierung noch zugelassenes Labor.",
  gramsPerCm3: "g/cm³",
  table: "Dasselbe als Tabelle",
  required: "nötig",
  notDone: "Nicht getan",
  backToBench: "Zurück zum Messplatz",
};

/** Was das Skript der Seite sagt; {text} und {unit} setzt es ein. */
export const typedByBalance: Words["typedByBalance"] = {
  noWeight: "Die Waage tippte „{text}“, das ist kein Gewicht. Nichts wurde eingetragen.",
  noField:
    "Die Waage tippte „{text}“, und kein Feld wartet auf ein Gewicht. Nichts wurde eingetragen: das Feld wählen, dann die Taste der Waage noch einmal drücken.",
  manyFields:
    "Die Waage tippte „{text}“, und mehrere Felder warten auf ein Gewicht. Nichts wurde eingetragen: das Feld wählen, dann die Taste der Waage noch einmal drücken.",
  unknownUnit:
    "Die Waage tippte „{text}“; die Einheit {unit} ist hier nicht bekannt. Nichts wurde eingetragen.",
};
