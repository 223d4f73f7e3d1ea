import { digitsPattern, signPattern } from "../number.ts";
import { besidePattern, besideWord, stabilityWord } from "../plain-words.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "stable  +  31.1035 g"     A plain word first. A word nobody knows stops the line.
const line = new RegExp(
  `^ *(${besidePattern})[ .,:;]*(${signPattern}?) *(${digitsPattern}) *(${unitPattern}) *$`,
);

export const tokenBefore: Shape = {
  id: "token-before",
  reader:
    ({ comma }) =>
    (text) => {
      const [, token, sign = "", digits, unit] = line.exec(text) ?? [];
      if (token === undefined || digits === undefined || unit === undefined) return null;
      const stability = stabilityWord(token);
      if (stability === null) return besideWord(token, text.trim());
      return weight({ sign, digits, unit, stability }, comma);
    },
};
