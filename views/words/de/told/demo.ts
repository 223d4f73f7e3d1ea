import type { ToldPair } from "../../told.ts";

/** The invented counter and its pieces. */
export const demo: readonly ToldPair[] = [
  ["Merrowhaven quay counter", "Kaischalter von Merrowhaven"],
  ["Small poured bar with a gull, marked 999", "Kleiner Gussbarren mit einer Möwe, gestempelt 999"],
  [
    "The same bar again, same mark, from another seller",
    "Derselbe Barren noch einmal, gleicher Stempel, von einem anderen Verkäufer",
  ],
  ["Seal ring without stone, yellow, marked 750", "Siegelring ohne Stein, gelb, gestempelt 750"],
  ["Medal of the rope-makers, said to be fine gold", "Medaille der Seiler, angegeben als Feingold"],
  ["Anchor token, said to be 916 gold", "Ankermarke, angegeben als Gold 916"],
  ["Handle of a cup, solid, marked 925", "Griff eines Bechers, massiv, gestempelt 925"],
];
