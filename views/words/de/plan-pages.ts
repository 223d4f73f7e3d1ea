import type { Words } from "../en/index.ts";

/** Feingehalt aus einer Dichte, und Stücke aus zwei Körpern. */
export const planPages: Words["planPages"] = {
  theseEntriesNeedAnother: "Diese Eingaben bitte noch einmal ansehen",
  density: "Dichte",
  standardUncertainty: "Standardunsicherheit",
  metal: "Metall",
  colourGold: "Farbe des Golds",
  whereWidthComesFrom: "Woher die Breite kommt",
  gold: "Gold",
  silver: "Silber",
  showInterval: "Das Intervall zeigen",
  colourRangeRecipesNever:
    "Eine Farbe ist ein Bereich von Rezepturen, nie eine. Weißgold fehlt: Palladium und Nickel brechen die Reihe.",
  densityEvidenceNotAssay:
    "Dichte ist ein Hinweis, keine Feingehaltsbestimmung: den Feingehalt für die Abrechnung bestimmt ein zugelassenes Labor (Gold ISO 11426, Silber ISO 11427).",
  whatAsked: "Was ist gefragt?",
  answer: "Antwort",
  whatOtherBody: "Was ist der andere Körper?",
  massAndDensityOne: "Masse und Dichte des einen sind bekannt: etwa des Steins in einem Ring",
  howMuchEach: "Wie viel von jedem?",
  bothDensitiesKnownGold: "beide Dichten sind bekannt: etwa Gold 19,3 und Quarz 2,65",
  mass: "Masse",
  densityFirst: "Dichte des ersten",
  densitySecond: "Dichte des zweiten",
  stoneInSettingGold:
    "Ein Stein in seiner Fassung, Gold in Quarz, ein Kern unter einer Haut: Volumen addieren sich, also beantwortet eine Wägung des Ganzen eine Frage nach seinen Teilen.",
  wholePiece: "Das ganze Stück",
  forFirstQuestionKnown: "Zur ersten Frage: der bekannte Körper",
  forSecondQuestionBoth: "Zur zweiten Frage: beide Körper",
  workOut: "Ausrechnen",
  densitiesStones: "Dichten von Steinen",
  finenessTitle: "Feingehalt aus der Dichte",
  twoBodiesTitle: "Zwei Körper in einem Stück",
  doNotWet: "nicht nass machen",
  stonesHint:
    "Übung des Handwerks. Die Mitte tippen; ein Viertel des Bereichs ist eine vernünftige Standardunsicherheit.",
};
