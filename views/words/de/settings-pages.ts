import type { Words } from "../en/index.ts";

/** Was neben den Einstellungen eine eigene Seite hat. */
export const settingsPages: Words["settingsPages"] = {
  heading: "Mehr einzustellen und zu sehen",
  ledger: "Das Hauptbuch: prüfen, unterschreiben, übergeben",
  customer: "Fenster zum Kunden",
  imports: "Eine Liste übernehmen: alte Wägungen, Belege, Sollwerte, Metalle",
  tickets: "Wartende Belege",
  tokens: "Zugangsschlüssel für Laborsysteme",
  retention: "Wie lange Protokolle aufbewahrt werden",
};
