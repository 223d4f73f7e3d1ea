import type { Words } from "../en/index.ts";

/** Was bei jedem Schritt zu tun ist, und was ihn verdirbt. Übung des Handwerks. */
export const steps: Words["steps"] = {
  dry: {
    title: "Trocken wiegen",
    does: "Das saubere, trockene Stück auf die Schale legen und die Ablesung nehmen.",
    minds: "Trocken kommt zuerst: ein Wasserfilm wiegt einige zehn Milligramm.",
  },
  immersed: {
    title: "Eingetaucht wiegen",
    does: "Mit der leeren Aufhängung, an ihrer Marke im Wasser, auf null stellen. Stück einhängen, Blasen abstreifen, Ablesung nehmen.",
    minds: "Ganz bedeckt, weder Wand noch Boden berührt, gleich tief wie beim Nullstellen.",
  },
  rise: {
    title: "Anstieg ablesen",
    does: "Becher auf die Schale, leere Aufhängung an ihrer Marke ins Wasser, auf null stellen. Stück an den Ständer hängen, den Anstieg nehmen.",
    minds:
      "Der Ständer darf die Waage nicht berühren; das Stück berührt weder Wand noch Boden und ist ganz bedeckt.",
  },
  "flask-full": {
    title: "Vollen Kolben wiegen",
    does: "Den Kolben nur mit Wasser bis zur Marke füllen, abtrocknen, die Ablesung nehmen.",
    minds: "Dasselbe Wasser, dieselbe Temperatur wie mit dem Stück darin; keine Luft unter dem Stopfen.",
  },
  "flask-with-piece": {
    title: "Kolben mit Stück wiegen",
    does: "Das Stück in den Kolben geben, die Luft austreiben, bis zur Marke auffüllen, abtrocknen, die Ablesung nehmen.",
    minds: "Klopfen und schwenken, bis keine Blase mehr steigt.",
  },
  water: {
    title: "Wassertemperatur",
    does: "Das Thermometer im Wasser ablesen.",
    minds: "Im Wasser, nicht an der Wand: ein Grad sind bei 20 °C 0,02 % der Dichte.",
  },
  record: {
    title: "Protokoll schreiben",
    does: "Den Befund lesen, weitere Ablesungen im Wasser nehmen, wenn er danach fragt, dann das Protokoll schreiben.",
    minds:
      "Zwischen zwei Wiederholungen das Stück herausheben und neu einhängen; ein zweiter Blick auf dieselbe Anzeige ist keine.",
  },
};
