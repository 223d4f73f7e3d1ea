import type { Words } from "../en/index.ts";

export const metalPrice: Words["metalPrice"] = {
  title: (ticket) => `Metallpreis von ${ticket}`,
  link: "Was das Metall darin zu einem Preis ergibt, den Sie eintragen",
  problems: "Diese Einträge müssen noch einmal angesehen werden",
  lead: "Tragen Sie einen Preis des Feinmetalls ein, wie Sie ihn gefunden haben. Nichts wird nachgeschlagen und nichts gespeichert.",
  ifItIs: "Wenn es ist",
  colour: "Seine Farbe, wenn Gold",
  sourceHint: "etwa die Seite oder die Tafel, auf der er stand",
  go: "Unteres und oberes Ende zeigen",
  heading: "Unteres und oberes Ende",
  range: (low, high, currency) => `${low} bis ${high} ${currency}`,
  conditions: {
    gold: "wenn es durch und durch gesunde Goldlegierung ist",
    silver: "wenn es durch und durch gesunde Silberlegierung ist",
  },
  facts: {
    mass: "Masse",
    fineness: "Feingehalt nach der Dichte",
    finenessIs: (low, high) => `${low} bis ${high} ‰`,
    fine: "Feinmetall",
    price: "Eingetragener Preis",
    priceIs: (price, currency, per) => `${price} ${currency} je ${per} Feinmetall`,
    source: "Gelesen bei",
    sourceIs: (source, at) => `${source}, vom ${at}`,
    laboratory: "Nach dem Feingehalt des Labors",
    laboratoryIs: (permille, money, currency) => `${permille} ‰: ${money} ${currency}`,
  },
  impossible: "Keine gesunde Legierung dieses Metalls hat die gemessene Dichte; es gibt nichts zu rechnen.",
  disagrees: (claim) =>
    `Die Dichte widerspricht dem, als was das Stück angegeben ist (${claim}). Erst herausfinden, was es ist, dann an einen Preis denken.`,
  meaning: "Was das ist und was nicht",
  notValuation:
    "Das ist Feinmasse mal Preis, keine Schätzung und kein Angebot. Eine Münze, ein Hersteller oder ein Alter kann mehr wert sein als das Metall.",
  deductions:
    "Was ein Händler abzieht, ist hier nicht bekannt: Scheiden, Spanne, Gebühr, Steine und andere Teile. Ein Angebot unter dem unteren Ende ist darum allein nicht unfair; fragen Sie, was abgezogen wird und warum.",
  notProof: "Die Dichte beweist das Metall nicht.",
  alive: (names) => `Was diese Dichte sonst noch hat und nicht ausgeschlossen ist: ${names}.`,
  andMore: (names, count) => `${names} und ${count} weitere`,
  noneKnown:
    "Nichts anderes, was hier bekannt ist, hat diese Dichte, doch ein Kern oder eine Mischung kann sie haben; andere Prüfungen grenzen es ein.",
  narrow: "Andere Prüfungen, die es eingrenzen",
  hollow: "Mit Steinen darin, hohl oder gefüllt gilt der Bereich gar nicht.",
  voided: "Das Protokoll ist ungültig: Was gemessen wurde, zählt nicht, und dies auch nicht.",
};
