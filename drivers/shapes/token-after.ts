import { digitsPattern, signPattern } from "../number.ts";
import { stabilityWord } from "../plain-words.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "  31.1035 g stable"     "+00031.103g,R"     "31.10 g ?"     A word or sign last. Only plain words tell about rest.
const line = new RegExp(
  `^ *(${signPattern}?) *(${digitsPattern}) *(${unitPattern})(?:[ ,:;]+([A-Za-z]{1,10}\\??)|[ ,:;]*([?*#!])) *$`,
);

export const tokenAfter: Shape = {
  id: "token-after",
  reader:
    ({ comma }) =>
    (text) => {
      const [, sign, digits, unit, word, mark] = line.exec(text) ?? [];
      const token = word ?? mark;
      if (sign === undefined || digits === undefined || unit === undefined || token === undefined)
        return null;
      return weight({ sign, digits, unit, stability: stabilityWord(token) }, comma);
    },
};
