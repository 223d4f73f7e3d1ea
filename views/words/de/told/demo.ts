import type { ToldPair } from "../../told-pair.ts";

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
  ["Plain band, yellow, marked 585", "Glatter Reif, gelb, gestempelt 585"],
  ["Signet with a ship, yellow, marked 750", "Siegel mit einem Schiff, gelb, gestempelt 750"],
  ["Short spoon from a galley, marked 800", "Kurzer Löffel aus einer Kombüse, gestempelt 800"],
  ["Harbour dollar, said to be silver 900", "Hafentaler, angegeben als Silber 900"],
  ["Cast buckle with a lighthouse, marked 925", "Gegossene Schnalle mit einem Leuchtturm, gestempelt 925"],
  ["The pilot's heavy white ring, marked Pt 950", "Der schwere weiße Ring des Lotsen, gestempelt Pt 950"],
  ["fine silver, as marked", "Feinsilber, wie gestempelt"],
  ["brass under a silver skin", "Messing unter einer Silberhaut"],
  ["gold 750, yellow", "Gold 750, gelb"],
  [
    "a tungsten core under gold: density alone cannot tell it from fine gold",
    "ein Wolframkern unter Gold: die Dichte allein unterscheidet ihn nicht von Feingold",
  ],
  ["lead under gilding", "Blei unter Vergoldung"],
  ["silver 925, as marked", "Silber 925, wie gestempelt"],
  ["gold 585, as marked", "Gold 585, wie gestempelt"],
  ["silver 925 under gilding", "Silber 925 unter Vergoldung"],
  ["silver 800, as marked", "Silber 800, wie gestempelt"],
  ["white copper-nickel", "weißes Kupfernickel"],
  [
    "silver 925, as marked, around a closed void: the density of the whole is not that of its metal",
    "Silber 925, wie gestempelt, um einen geschlossenen Hohlraum: die Dichte des Ganzen ist nicht die seines Metalls",
  ],
  ["platinum 950, as marked", "Platin 950, wie gestempelt"],
];
