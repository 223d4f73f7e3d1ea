import type { Words } from "../en/index.ts";

/** Warnungen auf den Seiten. Übung des Handwerks; örtliche Vorschriften und zugelassene Praxis gehen vor. */
export const cautions: Words["cautions"] = {
  wetting: "Bevor es nass wird",
  wettingLead: "Fragen und die Zustimmung des Eigentümers haben. Nicht eintauchen:",
  notToBeWetted: [
    "Perlen, Opal, Türkis, Koralle, Bernstein, Elfenbein",
    "geklebte, unterlegte oder aufgefädelte Steine",
    "hohle und gefüllte Stücke: Wasser dringt ein und bleibt",
    "versiegelte oder eingestufte Münzen, und Münzen, deren Patina zählt",
    "Uhren, und alles mit einer Feder oder Schließe aus Stahl",
  ],
  testing: "Säuren und starke Magnete",
  acid: "Säure ist hier nie die erste Probe, und sie zeichnet das Stück. Sie braucht Schutz für Augen, Hände und Atem und eine Schulung nach den örtlichen Regeln.",
  magnet:
    "Ein starker Magnet quetscht Finger, hält Herzschrittmacher an und stört Waagen: eine Armlänge von allen dreien fernhalten.",
  buying: "Wenn Geld den Besitzer wechselt",
  buyingWhat:
    "Eine Waage für den Ankauf muss geeicht sein, und ihre eigene Anzeige gilt; was hier berechnet wird, dient der Auskunft. Regeln für Handel und Punzierung sind örtlich. Den Feingehalt für die Abrechnung bestimmt ein zugelassenes Labor: Gold nach ISO 11426, Silber nach ISO 11427.",
};
