import type { Words } from "../en/index.ts";

/** The three questions of a new bench. */
export const firstStart: Words["firstStart"] = {
  welcome: "Willkommen",
  firstQuestions: "Erste Fragen",
  lead: "Drei Fragen, dann das erste Stück. Alles lässt sich unter Einstellungen ändern.",
  water: "1. Wo steht das Wasser?",
  onScale: "Auf der Waage",
  onScaleHint: "geht mit jeder Waage: das Stück hängt an einem Ständer, die Waage zeigt den Anstieg",
  beside: "Daneben oder darunter",
  besideHint: "das Stück hängt an der Waage: an einem Haken unter der Schale oder an einem Bügel darauf",
  inFlask: "Im Kolben, mit dem Stück",
  inFlaskHint: "Feilspäne, Körner und kleiner Bruch",
  source: "2. Wie kommt die Ablesung hierher?",
  typed: "Ich tippe sie",
  typedHint: "Komma oder Punkt, jede Einheit",
  cable: "Über Kabel oder Netz",
  cableHint: "seriell, USB oder TCP; der Messplatz lernt die Zeilen der Waage",
  simulated: "Nur ausprobieren",
  simulatedHint: "eine simulierte Waage und erfundene Stücke, als solche bezeichnet",
  metal: "3. Welches Metall kommt meistens?",
  go: "Messplatz einrichten",
};

/** The three ways to weigh, as titles of their drawings. */
export const methods: Words["methods"] = {
  hung: "Hängend: das Stück hängt an der Waage in Wasser, das daneben steht",
  displaced: "Verdrängt: das Wasser steht auf der Waage, das Stück hängt an einem Ständer",
  flask: "Kolben: kleine Stücke in einem gefüllten Kolben",
};

/** Labels of the drawings. */
export const drawings: Words["drawings"] = {
  balance: "Waage",
  scale: "Waage",
  water: "Wasser",
  hanger: "Draht",
  stand: "Ständer",
  stopper: "Stopfen",
  grains: "Körner",
};
