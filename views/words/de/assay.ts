import type { Words } from "../en/index.ts";

export const assay: Words["assay"] = {
  title: (ticket) => `Laboranalyse von ${ticket}`,
  heading: "Laboranalyse",
  problems: "Diese Einträge müssen noch einmal angesehen werden",
  none: "Noch keine. Die Dichte lässt den Feingehalt offen; zwischen ihren Enden entscheidet ein Labor.",
  enter: "Eine Laboranalyse eintragen",
  follow: "Berichtigen oder eine spätere eintragen",
  all: "Alle Analysen dieses Stücks",
  fineness: "Feingehalt nach dem Labor",
  finenessIs: (permille, metal) => `${permille} ‰ ${metal}`,
  finenessWithU: (permille, u, k, metal) =>
    `${permille} ± ${u} ‰ ${metal} (k = ${k}, wie vom Labor angegeben)`,
  laboratory: "Labor",
  report: "Sein Bericht",
  method: "Sein Verfahren",
  written: "Eingetragen",
  reportIs: (number, date) => `${number}, ${date}`,
  writtenIs: (when, by) => (by === "" ? when : `${when} von ${by}`),
  byDensity: "Feingehalt nach der Dichte",
  byDensityIs: (low, high) => `${low} bis ${high} ‰`,
  impossible: "keine gesunde Legierung dieses Metalls hat die gemessene Dichte",
  lies: "Die Analyse liegt",
  place: {
    inside: (permille) => `innerhalb, ${permille} ‰ vom näheren Ende`,
    below: (permille) => `außerhalb, ${permille} ‰ unter dem unteren Ende`,
    above: (permille) => `außerhalb, ${permille} ‰ über dem oberen Ende`,
  },
  withinItsU: (place) => `${place}; nicht mehr als die eigene Unsicherheit des Labors`,
  fineByAssay: "Feinmasse nach der Analyse",
  fineByDensity: "Feinmasse nach der Dichte",
  fineRange: (low, high) => `${low} bis ${high} g`,
  againstLow: "Gegen das untere Ende",
  more: (grams) => `${grams} g mehr, als das untere Ende sagte`,
  less: (grams) => `${grams} g weniger, als das untere Ende sagte`,
  rest: "Rest der Legierung",
  split: (silver, copper, u) =>
    `Silber zu Kupfer ${silver} : ${copper} ergibt die Dichte (± ${u}, zwei Standardunsicherheiten); Zink zählt hier als Kupfer`,
  end: {
    copper: "nur Kupfer, innerhalb der Unsicherheit; Zink zählt hier als Kupfer",
    silver: "nur Silber, innerhalb der Unsicherheit",
  },
  noneLight:
    "keine Aufteilung in Silber und Kupfer ergibt die Dichte: mit diesem Goldgehalt wäre selbst ein Rest nur aus Kupfer dichter. Das deutet auf Poren oder einen Hohlraum im Stück, auf Zink oder ein anderes leichtes Metall im Rest, oder auf eine Probe, die dem Ganzen nicht gleicht",
  noneHeavy:
    "keine Aufteilung in Silber und Kupfer ergibt die Dichte: mit diesem Goldgehalt wäre selbst ein Rest nur aus Silber leichter. Das deutet auf Palladium, Platin, Blei oder ein anderes schweres Metall im Rest, oder auf eine Probe, die dem Ganzen nicht gleicht",
  hardlyARest: "so wenig ist nicht Gold, dass die Dichte keine Aufteilung davon erkennen lässt",
  hint: "Die Dichte war eine Dichteprüfung und bleibt, was sie war. Eine Probe muss für das ganze Stück stehen: gerührte Schmelze oder Bohrspäne von beiden Seiten eines Barrens.",
  form: {
    metal: "Untersucht auf",
    permille: "Gefundener Feingehalt",
    expanded: "Erweiterte Messunsicherheit",
    expandedHint: "falls der Bericht eine angibt",
    k: "Erweiterungsfaktor",
    kHint: "wie angegeben, meist 2",
    laboratory: "Labor",
    report: "Nummer seines Berichts",
    method: "Verfahren",
    methodHint: "etwa Kupellation, ISO 11426; Silber durch Potentiometrie, ISO 11427",
    date: "Datum des Berichts",
    reason: "Warum eine weitere Analyse eingetragen wird",
    reasonHint: "etwa: zweite Probe oder eine Zahl vertippt",
    by: "Eingetragen von",
    go: "Eintragen",
    stays: "Was vorher eingetragen wurde, bleibt im Hauptbuch.",
  },
  list: {
    heading: "Alle eingetragenen Analysen",
    counts: "gilt",
    earlier: "von einer späteren gefolgt",
    setAside: (reason) => `beiseitegelegt: ${reason}`,
    open: "Diese Analyse beiseitelegen",
    reason: "Warum",
    go: "Beiseitelegen",
  },
  house: {
    heading: "Bisherige Schmelzen dieses Hauses",
    few: (melts, needed) =>
      `${melts} von ${needed} Goldschmelzen mit Laboranalyse, die nötig sind, bevor sie den Rest der Legierung eingrenzen.`,
    silent: (count) =>
      count === 1
        ? "1 analysierte Schmelze lässt keine Aufteilung in Silber und Kupfer erkennen und zählt nicht mit."
        : `${count} analysierte Schmelzen lassen keine Aufteilung in Silber und Kupfer erkennen und zählen nicht mit.`,
    typical: (melts, mean, s, low, high) =>
      `${melts} Goldschmelzen mit Laboranalyse, von ${low} bis ${high} ‰: Silber war im Mittel ${mean} von Silber und Kupfer, mit einer Standardabweichung von ${s} von Schmelze zu Schmelze.`,
    next: (confidence, low, high) =>
      `In einer weiteren Schmelze wie diesen liegt der Anteil des Silbers zwischen ${low} und ${high}, mit ${confidence} Vertrauen (Vorhersagebereich nach Students t).`,
    narrower: (low, high) =>
      `Mit diesem Rest liegt der Feingehalt zwischen ${low} und ${high} ‰, neben dem vollen Bereich oben, nicht an seiner Stelle.`,
    impossible: "Keine Schmelze mit diesem Rest hat diese Dichte.",
    lot: (fine) =>
      `Sind die Goldstücke dieser Partie zusammen eine solche Schmelze, enthalten sie ${fine} Gold, neben dem, was oben steht, nicht an seiner Stelle.`,
    lotPaid: (fine, low, high, currency) =>
      `Sind die Goldstücke dieser Partie zusammen eine solche Schmelze, enthalten sie ${fine} Gold, ausgezahlt ${low} bis ${high} ${currency} vor der Gebühr, neben dem, was oben steht, nicht an seiner Stelle.`,
    only: "Das gilt für eine Schmelze aus Altmetall derselben Art, wenn sie gesund ist. Über ein einzelnes Stück vor dem Schmelzen oder über Altmetall von anderswo sagt es nichts.",
    recipe: "wie die Schmelzen dieses Hauses",
  },
};
