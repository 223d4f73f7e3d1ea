import type { Words } from "../en/index.ts";

export const share: Words["share"] = {
  link: "Eine Seite zum Weitergeben: Bild und Text",
  pageTitle: "Eine Seite zum Weitergeben",
  lead: "Genau das verlässt den Messplatz, und nur wenn Sie es mitnehmen. Vom Kunden steht nichts darin, was Sie nicht ankreuzen.",
  tick: "Hinzufügen",
  ticket: "den Beleg",
  piece: "wie das Stück aussieht",
  day: "den Tag der Wägung",
  show: "So zeigen",
  asPicture: "Bild (SVG)",
  asPng: "Bild (PNG)",
  asText: "Textdatei",
  copy: "Text kopieren",
  copied: "Kopiert.",
  notCopied: "Der Browser lässt die Seite nicht kopieren. Den Text markieren und von Hand kopieren.",
  textLabel: "Dasselbe als Text",
  pictureLabel: "Das Bild; seine Worte stehen darunter als Text",
  heading: "Dichteprüfung eines Stücks",
  demo: "Vorführung: ein erfundenes Stück auf einer simulierten Waage, nichts Echtes wurde gewogen.",
  voided: "Der Eintrag dieser Prüfung wurde für ungültig erklärt. Er gilt nicht mehr.",
  weighed: "Gewogen",
  readings: "Ablesungen",
  typed: "eingetippt",
  simulated: "simulierte Waage",
  fromBalance: "von der Waage",
  setAside: (count) =>
    count === 1
      ? "1 weitere Ablesung wurde für ungültig erklärt; sie wird nicht verwendet."
      : `${count} weitere Ablesungen wurden für ungültig erklärt; sie werden nicht verwendet.`,
  density: "Dichte",
  uncertainty: (expanded, k, percent) => `U = ${expanded} g/cm³ mit k = ${k}, für ${percent} % Überdeckung`,
  interval: (interval) => `Intervall ${interval} g/cm³, bei der Temperatur der Flüssigkeit`,
  saidToBe: (name, state) => `Angegeben als ${name}: ${state}.`,
  nothingClaimed: "Nichts ist angegeben.",
  notExcluded: "Was diese Dichte nicht ausschließt",

  nothingAlive:
    "Keines der verglichenen Metalle passt; eine Mischung oder ein geschlossener Hohlraum kann passen.",
  foot: "Ein Hinweis, keine Analyse. Eine Dichte gehört zum ganzen Volumen und beweist keine Zusammensetzung; was oben als nicht ausgeschlossen steht, bleibt möglich.",
};
