import type { ToldPair } from "../../told.ts";

/** Names and turns of phrase that stand inside sentences and tables. */
export const names: readonly ToldPair[] = [
  // readings and methods
  ["dry", "trocken"],
  ["immersed", "eingetaucht"],
  ["rise of the beaker", "Anstieg des Bechers"],
  ["flask full of water", "Kolben voll Wasser"],
  ["flask with the piece, topped up", "Kolben mit dem Stück, aufgefüllt"],
  ["hung from the balance", "an der Waage hängend"],
  ["beaker on the pan", "Becher auf der Schale"],
  ["flask", "Kolben"],
  ["the {role} reading", "die Ablesung {role}"],
  ["the water temperature", "die Wassertemperatur"],
  ["The reading", "Die Ablesung"],
  ["The water temperature", "Die Wassertemperatur"],
  ["ticket", "Beleg"],
  // waters
  ["distilled", "destilliert"],
  ["deionised", "entsalzt"],
  ["boiled", "abgekocht"],
  ["tap", "Leitung"],
  // balances
  ["simulated balance", "simulierte Waage"],
  ["The simulated balance", "Die simulierte Waage"],
  ["balance on {port}", "Waage an {port}"],
  ["balance at {place}", "Waage bei {place}"],
  ["USB scale on {port}", "USB-Waage an {port}"],
  ["typed", "getippt"],
  ["{unit} in steps of {step}", "{unit} in Schritten von {step}"],
  // parts of the words of a finding
  ["{n} more", "{n} weitere"],
  ["pieces made of two, such as {name}", "aus zweien gemachte Stücke wie {name}"],
  ["fall a little below {n}", "ein wenig sinken, unter {n}"],
  ["fall from {n} to below {n1}", "sinken, von {n} auf unter {n1}"],
  ["a readability of {step} or finer", "eine Ablesbarkeit von {step} oder feiner"],
  ["a readability {n} times finer", "eine {n}-mal feinere Ablesbarkeit"],
  ["a piece of {mass} or more", "ein Stück von {mass} oder mehr"],
  ["a piece {n} times heavier", "ein {n}-mal schwereres Stück"],
  ["about {n} m/s", "etwa {n} m/s"],
  ["all", "alle"],
  ["{n} of the {n1}", "{n} der {n1}"],
];
