import type { ToldPair } from "../../told-pair.ts";

/** Numbers that a form asks for, as a refusal names them. */
export const entryNames: readonly ToldPair[] = [
  ["The coverage factor", "Der Erweiterungsfaktor"],
  ["The density", "Die Dichte"],
  ["The fee", "Die Gebühr"],
  ["The fineness", "Der Feingehalt"],
  ["The mass of the known body", "Die Masse des bekannten Körpers"],
  ["The mass", "Die Masse"],
  ["The temperature", "Die Temperatur"],
  ["The time of flight", "Die Laufzeit"],
  ["What is taken off", "Was abgezogen wird"],
];

/** Their refusals: what was wrong stands behind the name. */
export const numberEntries: readonly ToldPair[] = [
  [
    "{what} {n} {unit} is out of range. Right: {n1} to {n2} {unit1}. Look at the entry and its unit.",
    "{what} {n} {unit} liegt außerhalb. Richtig: {n1} bis {n2} {unit1}. Auf Eingabe und Einheit sehen.",
  ],
];

/** What a price needs before it settles anything. */
export const prices: readonly ToldPair[] = [];
