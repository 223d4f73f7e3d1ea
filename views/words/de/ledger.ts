import type { Words } from "../en/index.ts";

/** Das Hauptbuch: wo es liegt, ob es heil ist, unterschriebene Prüfpunkte, Übergabe. */
export const ledger: Words["ledger"] = {
  title: "Das Hauptbuch",
  entries: (count: number, place: string) => `${count} Einträge in ${place}.`,
  key: "Schlüssel, der unterschreibt",
  noKey: "Dieses Hauptbuch wird von hier aus nicht unterschrieben.",
  found: "Beim Öffnen gefunden",
  check: {
    heading: "Ist jeder Eintrag, wie er geschrieben wurde?",
    lead: "Geht die ganze Kette der Einträge und jede Unterschrift durch. Ein anderswo aufbewahrter Prüfpunkt macht die Prüfung stärker: Wer die Kette umgeschrieben hat, selbst mit dem Schlüssel in der Hand, kann sie nicht passend machen.",
    kept: "Anderswo aufbewahrte Prüfpunkte",
    keptHint: "einer je Zeile, wie gedruckt oder verschickt; darf leer bleiben",
    go: "Hauptbuch prüfen",
    good: (entries: number, checkpoints: number, signedUpTo: number) =>
      `Gut: ${entries} Einträge, ${checkpoints} Prüfpunkte, unterschrieben bis Zeile ${signedUpTo}.`,
    fitting: (count: number) =>
      count === 1
        ? "Der anderswo aufbewahrte Prüfpunkt passt."
        : `Die ${count} anderswo aufbewahrten Prüfpunkte passen.`,
    listGood: (records: number) => `Die Liste der ${records} Protokolle sagt, was die Einträge sagen.`,
    listBad: "Die Einträge sind gut, nicht aber die daraus gemachte Liste:",
    bad: (row: number) => `Nicht gut. Die erste falsche Zeile ist Zeile ${row}.`,
    noLine: (line: string) =>
      `„${line}“ ist kein Prüfpunkt. Richtig: die ganze Zeile, checkpoint ZEILE PRÜFSUMME SCHLÜSSEL UNTERSCHRIFT.`,
  },
  checkpoint: {
    heading: "Ein Prüfpunkt zum Drucken oder Verschicken",
    lead: "Eine von diesem Messplatz unterschriebene Zeile, die für jeden Eintrag bis jetzt einsteht. Ausgedruckt in eine Schublade gelegt oder an jemanden geschickt, der sie aufbewahrt: Von da an kann niemand umschreiben, was vorher protokolliert wurde, ohne dass es auffällt.",
    make: "Hauptbuch unterschreiben, wie es steht",
    line: "Die ganze Zeile",
    made: (row: number) => `Steht für jeden Eintrag bis Zeile ${row} ein.`,
    send: "Per Mail verschicken",
    subject: "Prüfpunkt eines Hauptbuchs",
    print: "Zum Drucken den Druckbefehl des Browsers auf dieser Seite benutzen.",
    use: "Um das Hauptbuch später daran zu prüfen, die Zeile unten ins Feld setzen, oder ausführen",
  },
  notes: {
    nothingStored: "Zur Zeit kann nichts gespeichert werden.",
    goesOn:
      "Die Waage wird weiter gelesen und gezeigt, und jedes Protokoll lässt sich lesen; aber keine Ablesung zählt, ehe sie gespeichert werden kann. Das Getippte bleibt in seinem Feld: noch einmal senden, wenn die Ursache behoben ist.",
    opened: "Beim Öffnen des Messplatzes gefunden",
  },
  handOver: {
    heading: "Übergabe an das gemeinsame Hauptbuch",
    none: "Dieser Messplatz führt nur sein eigenes Hauptbuch. Mit DATABASE_URL beim Start übergibt er jeden Eintrag auch an ein gemeinsames in PostgreSQL.",
    "up-to-date": (at: string) => `Alles ist im gemeinsamen Hauptbuch, Stand ${at}.`,
    waiting:
      "Das gemeinsame Hauptbuch ist nicht erreichbar. Der Messplatz arbeitet mit seinem eigenen weiter und übergibt später; nichts geht verloren, nichts wird doppelt.",
    last: (at: string) => `Zuletzt wurde alles übergeben um ${at}.`,
    never: "Noch wurde nichts übergeben.",
  },
};
