import { digitsPattern, signPattern } from "../number.ts";
import { besidePattern, besideWord, stabilityWord } from "../plain-words.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "  31.1035 g stable"     "+00031.103g, moving"     A plain word last. A word nobody knows stops the line.
const line = new RegExp(
  `^ *(${signPattern}?) *(${digitsPattern}) *(${unitPattern})[ ,:;]+(${besidePattern}) *$`,
);

export const tokenAfter: Shape = {
  id: "token-after",
  reader:
    ({ comma }) =>
    (text) => {
      const [, sign, digits, unit, token] = line.exec(text) ?? [];
      if (sign === undefined || digits === undefined || unit === undefined || token === undefined)
        return null;
      const stability = stabilityWord(token);
      if (stability === null) return besideWord(token, text.trim());
      return weight({ sign, digits, unit, stability }, comma);
    },
};
