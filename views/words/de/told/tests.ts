import type { ToldPair } from "../../told-pair.ts";

/** Was andere Prüfungen ausschließen, und warum. */
export const tests: readonly ToldPair[] = [
  [
    "Weigh it: of all harmless tests the density strikes out most.",
    "Wiegen: Von allen schonenden Prüfungen schließt die Dichte am meisten aus.",
  ],
  [
    "Not weighed yet: the other tests leave {n} of the {all} metals of the library.",
    "Noch nicht gewogen: Die anderen Prüfungen lassen {n} der {all} Metalle der Sammlung übrig.",
  ],
  ["{because}: this strikes out {claim}.", "{because}: das schließt {claim} aus."],
  [
    "Density and the other tests leave {claim} and nothing else that is known.",
    "Dichte und andere Prüfungen lassen {claim} übrig und sonst nichts Bekanntes.",
  ],
  [
    "Density and the other tests do not exclude {claim}; still alive beside it: {names}.",
    "Dichte und andere Prüfungen schließen {claim} nicht aus; daneben noch möglich: {names}.",
  ],
  [
    "Nothing was claimed, so nothing is tested: density and the other tests leave {n} of the {all} candidates of the density.",
    "Nichts wurde angegeben, also wird nichts geprüft: Dichte und andere Prüfungen lassen {n} der {all} Kandidaten der Dichte übrig.",
  ],
  [
    "The {one} and the {other} contradict each other: nothing known fits both. Repeat both before believing either; a piece of two bodies is the other reading.",
    "Diese beiden widersprechen einander: {one} und {other}. Nichts Bekanntes passt zu beiden. Beide wiederholen, ehe einer geglaubt wird; ein Stück aus zwei Körpern ist die andere Deutung.",
  ],
  [
    "Nothing known fits the {test} alone: look at the reading again.",
    "Nichts Bekanntes passt zu dieser Prüfung allein: {test}. Den Wert noch einmal ansehen.",
  ],
  [
    "A dull ring strikes nothing out: a crack, a core, a thin piece or a finger on the edge all deaden it.",
    "Ein dumpfer Klang schließt nichts aus: Ein Riss, ein Kern, ein dünnes Stück oder ein Finger am Rand dämpfen ihn alle.",
  ],
  [
    "A weak pull fits no sound gold, silver or platinum-ruthenium: look for a steel pin or spring, a nickel plate, or iron dirt.",
    "Ein schwacher Zug passt zu keinem gesunden Gold, Silber oder Platin-Ruthenium: nach Stahlstift oder Feder, Nickelschicht oder Eisenschmutz sehen.",
  ],
  [
    "a strong pull needs iron, nickel or cobalt, and {metal} has too little",
    "ein starker Zug braucht Eisen, Nickel oder Kobalt, und davon hat {metal} zu wenig",
  ],
  ["{metal} is pulled strongly, even under a skin", "{metal} wird stark angezogen, auch unter einer Haut"],
  [
    "{metal} conducts {low} to {high} % IACS at {celsius} °C, the coil reads {value} ± {u}",
    "{metal} leitet bei {celsius} °C {low} bis {high} % IACS, die Spule zeigt {value} ± {u}",
  ],
  [
    "{metal} carries sound at {speed} m/s, measured {value} ± {u}",
    "{metal} leitet Schall mit {speed} m/s, gemessen {value} ± {u}",
  ],
  ["{metal} deadens sound and does not ring", "{metal} dämpft den Schall und klingt nicht"],
  ["the touch shows neither gold nor silver", "der Strich zeigt weder Gold noch Silber"],
  [
    "{mass} g of {metal} would not fit the outline: it needs at least {density} g/cm³",
    "{mass} g {metal} passen nicht in den Umriss: Er verlangt mindestens {density} g/cm³",
  ],
];

/** Die Arten von Prüfungen beim Namen. */
export const testNames: readonly ToldPair[] = [
  ["mass and outline", "Masse und Umriss"],
  ["magnet", "Magnet"],
  ["ring", "Klang"],
  ["conductivity", "Leitfähigkeit"],
  ["sound speed", "Schallgeschwindigkeit"],
  ["colour under a scratch", "Farbe unter einem Kratzer"],
  ["touch or acid", "Strich oder Säure"],
  ["density", "Dichte"],
  ["below 0.01", "unter 0,01"],
];
