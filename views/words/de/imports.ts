import type { Words } from "../en/index.ts";

/** Listen, die übernommen werden, und Belege, die warten. */
export const imports: Words["imports"] = {
  title: "Eine Liste übernehmen",
  lead: "Aus einer Tabelle als CSV speichern und die Datei wählen, oder die Zeilen einfügen. Komma, Strichpunkt oder Tabulator zwischen den Spalten, Punkt oder Komma in den Zahlen; Tage als 2024-03-31. Zuerst ist zu sehen, was übernommen würde, und jede Zelle, die es nicht würde; gespeichert wird erst auf Ihr Wort.",
  list: "Was die Liste enthält",
  lists: {
    weighings: "Wägungen aus der Zeit vor diesem Hauptbuch",
    tickets: "Stücke, die auf die Wägung warten",
    specifications: "was Münzen, Barren und andere Stücke wiegen und messen sollen",
    metals: "eigene Metalle und Legierungen",
  },
  columns: "Ihre erste Zeile",
  needed: "nötig",
  mayBeMissing: "darf fehlen",
  file: "Datei",
  text: "Oder ihre Zeilen einfügen",
  from: "Woher sie kommt",
  fromHint: "steht bei allem, was übernommen wird, etwa: altes Buch 2019, Lagersystem",
  look: "Zeigen, was übernommen würde",
  refused: "Die Liste wurde nicht gelesen",
  noText:
    "Es ist keine Datei gewählt und nichts eingefügt. Die Datei der Liste wählen oder ihre Zeilen einfügen.",
  noFrom: "Bitte angeben, woher die Liste kommt, etwa: altes Buch 2019.",
  gone: "Die Liste liegt nicht mehr vor; der Messplatz wurde neu gestartet, oder seither wurden andere Listen angesehen. Bitte noch einmal wählen.",
  preview: (list: string) => `Was übernommen würde: ${list}`,
  good: (count: number) => (count === 1 ? "1 Zeile ist richtig." : `${count} Zeilen sind richtig.`),
  bad: (count: number) =>
    count === 1
      ? "1 Zelle ist abgewiesen; ihre Zeile bleibt weg."
      : `${count} Zellen sind abgewiesen; ihre Zeilen bleiben weg.`,
  leftOut: (names: string) => `Spalten, nach denen niemand fragt, bleiben weg: ${names}.`,
  refusedCells: "Abgewiesene Zellen",
  moreRefused: (count: number) => `und ${count} weitere`,
  line: "Zeile",
  column: "Spalte",
  stands: "Was dort steht",
  why: "Warum sie abgewiesen ist",
  empty: "(leer)",
  rows: "Die ersten richtigen Zeilen",
  takeOver: (count: number) => (count === 1 ? "Diese Zeile übernehmen" : `Diese ${count} Zeilen übernehmen`),
  nothingRight:
    "Keine Zeile ist richtig, also gibt es nichts zu übernehmen. Die Liste berichtigen und noch einmal wählen.",
  correct: "Eine andere Liste wählen",
  taken: (count: number, list: string) => `Übernommen: ${count}, ${list}.`,
  stoodAlready: "Was hier schon stand, wurde nicht doppelt geschrieben.",
};

/** Belege, die auf die Wägung warten. */
export const tickets: Words["tickets"] = {
  title: "Wartende Belege",
  lead: "Stücke, die eine Liste angekündigt hat. Was die Liste über ein Stück sagt, sagt der Kunde; es wird als seine Angabe berichtet, nie als gemessen.",
  none: "Kein Beleg wartet. Eine Liste von Belegen übernehmen, dann stehen sie hier.",
  columns: { ticket: "Beleg", piece: "Stück", claim: "Angegeben als", lot: "Partie", from: "Aus", weigh: "" },
  weigh: "Auf den Messplatz nehmen",
  noClaim: "nichts",
  unknown: "Dieser Beleg wartet hier nicht mehr. Bitte die Liste noch einmal ansehen.",
};

/** Die Seite einer Wägung, die aus einer Liste übernommen wurde. */
export const imported: Words["imported"] = {
  lead: "Diese Wägung wurde nicht an diesem Messplatz gemessen. Sie wurde aus einer Liste übernommen; hinter ihr stehen keine Ablesungen und kein Unsicherheitsbudget.",
  from: "Übernommen aus:",
  when: "Gemessen, wie angegeben",
  piece: "Stück",
  claim: "Angegeben als",
  mass: "Masse, wie angegeben",
  density: "Dichte, wie angegeben",
  uncertainty: "Ihre Standardunsicherheit, wie angegeben",
  entry: "Eintrag",
  hash: "Seine Prüfsumme",
};
