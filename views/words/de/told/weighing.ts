import { codes, textOf } from "../../../messages/catalogue.ts";
import type { ToldPair } from "../../told-pair.ts";

/** Was die Eingaben zu einer Wägung zurückweist. */
export const weighing: readonly ToldPair[] = [
  [
    "{what} {n} is out of range. Right: {n1} to {n2}. Look at the entry and its unit.",
    "{what} {n} liegt außerhalb. Richtig: {n1} bis {n2}. Auf Eingabe und Einheit sehen.",
  ],
  [
    "{what} {n} is out of range. Right: {n1} to {n2} {unit}. Look at the entry and its unit.",
    "{what} {n} liegt außerhalb. Richtig: {n1} bis {n2} {unit}. Auf Eingabe und Einheit sehen.",
  ],
  [
    "{what} {n} is no whole number. Right: a count such as 5.",
    "{what} {n} ist keine ganze Zahl. Richtig: eine Anzahl wie 5.",
  ],
  [
    "{what} is empty. Right: a short name such as stone.",
    "{what} ist leer. Richtig: ein kurzer Name wie Stein.",
  ],
  [
    "{what} is empty. Right: a short name such as ethanol.",
    "{what} ist leer. Richtig: ein kurzer Name wie Ethanol.",
  ],
];

/** Namen der Felder, wie sie in Zurückweisungen stehen. */
export const weighingNames: readonly ToldPair[] = codes
  .filter((code) => code.startsWith("weighing.fields."))
  .map((code) => [textOf(code, "en")!.fill({}), textOf(code, "de")!.fill({})]);
