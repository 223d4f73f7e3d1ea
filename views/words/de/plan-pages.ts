import type { Words } from "../en/index.ts";

/** Feingehalt aus einer Dichte, und Stücke aus zwei Körpern. */
export const planPages: Words["planPages"] = {
  problems: "Diese Eingaben bitte noch einmal ansehen",
  density: "Dichte",
  standardUncertainty: "Standardunsicherheit",
  metal: "Metall",
  goldColour: "Farbe des Golds",
  widthTitle: "Woher die Breite kommt",
  gold: "Gold",
  silver: "Silber",
  showInterval: "Das Intervall zeigen",
  colourIsARange:
    "Eine Farbe ist ein Bereich von Rezepturen, nie eine. Weißgold fehlt: Palladium und Nickel brechen die Reihe.",
  notAnAssay:
    "Dichte ist ein Hinweis, keine Feingehaltsbestimmung: den Feingehalt für die Abrechnung bestimmt ein zugelassenes Labor (Gold ISO 11426, Silber ISO 11427).",
  question: "Was ist gefragt?",
  answer: "Antwort",
  askOtherBody: "Was ist der andere Körper?",
  askOtherBodyHint: "Masse und Dichte des einen sind bekannt: etwa des Steins in einem Ring",
  askShares: "Wie viel von jedem?",
  askSharesHint: "beide Dichten sind bekannt: etwa Gold 19,3 und Quarz 2,65",
  mass: "Masse",
  firstDensity: "Dichte des ersten",
  secondDensity: "Dichte des zweiten",
  twoBodiesLead:
    "Ein Stein in seiner Fassung, Gold in Quarz, ein Kern unter einer Haut: Volumen addieren sich, also beantwortet eine Wägung des Ganzen eine Frage nach seinen Teilen.",
  wholePiece: "Das ganze Stück",
  knownBody: "Zur ersten Frage: der bekannte Körper",
  bothBodies: "Zur zweiten Frage: beide Körper",
  workOut: "Ausrechnen",
  stonesTitle: "Dichten von Steinen",
  finenessTitle: "Feingehalt aus der Dichte",
  twoBodiesTitle: "Zwei Körper in einem Stück",
  doNotWet: "nicht nass machen",
  stonesHint:
    "Übung des Handwerks. Die Mitte tippen; ein Viertel des Bereichs ist eine vernünftige Standardunsicherheit.",
};
