import type { ToldPair } from "../../told.ts";

/** What a plan answers, and what fineness and two bodies come to. */
export const plan: readonly ToldPair[] = [
  // fineness
  [
    "If this is sound gold alloyed with {rest}, its fineness lies between {n} and {n1} ‰. It does not show that it is gold.",
    "Ist das gesundes Gold, legiert mit {rest}, liegt sein Feingehalt zwischen {n} und {n1} ‰. Es zeigt nicht, dass es Gold ist.",
  ],
  [
    "If this is sound silver alloyed with {rest}, its fineness lies between {n} and {n1} ‰. It does not show that it is silver.",
    "Ist das gesundes Silber, legiert mit {rest}, liegt sein Feingehalt zwischen {n} und {n1} ‰. Es zeigt nicht, dass es Silber ist.",
  ],
  [
    "No gold alloyed with {rest} has this density: they reach from {n} to {n1} g/cm³. Look for stones, hollows, a core, or another metal.",
    "Kein Gold, legiert mit {rest}, hat diese Dichte: sie reicht von {n} bis {n1} g/cm³. Nach Steinen, Hohlräumen, einem Kern oder einem anderen Metall sehen.",
  ],
  [
    "No silver alloyed with {rest} has this density: they reach from {n} to {n1} g/cm³. Look for stones, hollows, a core, or another metal.",
    "Kein Silber, legiert mit {rest}, hat diese Dichte: sie reicht von {n} bis {n1} g/cm³. Nach Steinen, Hohlräumen, einem Kern oder einem anderen Metall sehen.",
  ],
  // two bodies
  [
    "{first} of the first body in {second} of the second.",
    "{first} des ersten Körpers in {second} des zweiten.",
  ],
  ["The other body has a density of {density}.", "Der andere Körper hat eine Dichte von {density}."],
];

/** Labels, remedies and short reasons of the plan. */
export const planNames: readonly ToldPair[] = [
  ["Density", "Dichte"],
  ["any", "beliebig"],
  ["Mass", "Masse"],
  // fineness and two bodies
  ["Fineness", "Feingehalt"],
  ["Fine {metal}, if so", "Feinmasse {metal}, wenn es so ist"],
  ["gold", "Gold"],
  ["silver", "Silber"],
  ["Width left by the measurement", "Breite aus der Messung"],
  ["Width left by the mixture law", "Breite aus dem Mischungsgesetz"],
  ["Width left by the freedom of the rest", "Breite aus der Freiheit des Rests"],
  ["With plainly added volumes", "Mit einfach addierten Volumen"],
  ["any colour", "jede Farbe"],
  ["with copper", "mit Kupfer"],
  ["any: {list}", "beliebig: {list}"],
  ["yellow: {list}", "gelb: {list}"],
  ["pink: {list}", "rosa: {list}"],
  ["red: {list}", "rot: {list}"],
  ["green: {list}", "grün: {list}"],
  ["yellow", "gelb"],
  ["pink", "rosa"],
  ["red", "rot"],
  ["green", "grün"],
  [
    "silver, copper and up to a fifth of zinc in any ratio",
    "Silber, Kupfer und bis zu einem Fünftel Zink in jedem Verhältnis",
  ],
  ["silver and copper both present, some zinc", "Silber und Kupfer beide vorhanden, etwas Zink"],
  ["mostly copper, a little silver", "meist Kupfer, wenig Silber"],
  ["silver and copper as in this house's melts", "Silber und Kupfer wie in den Schmelzen dieses Hauses"],
  ["nearly all copper", "fast nur Kupfer"],
  ["nearly all silver", "fast nur Silber"],
  ["First body", "Erster Körper"],
  ["Second body", "Zweiter Körper"],
  ["Share of the first by mass", "Anteil des ersten an der Masse"],
  ["Density of the other body", "Dichte des anderen Körpers"],
  ["Its mass", "Seine Masse"],
  ["Density of the metal, at least", "Dichte des Metalls, mindestens"],
];
