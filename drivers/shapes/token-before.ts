import { digitsPattern, signPattern } from "../number.ts";
import { stabilityWord } from "../plain-words.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "stable  +  31.1035 g"     "q+00031.103 g"     A word or letter first. Only plain words tell about rest.
const line = new RegExp(
  `^ *([A-Za-z]{1,10}\\??|[?*#!])[ ,:;]*(${signPattern}?) *(${digitsPattern}) *(${unitPattern}) *$`,
);

export const tokenBefore: Shape = {
  id: "token-before",
  reader:
    ({ comma }) =>
    (text) => {
      const [, token, sign = "", digits, unit] = line.exec(text) ?? [];
      if (token === undefined || digits === undefined || unit === undefined) return null;
      return weight({ sign, digits, unit, stability: stabilityWord(token) }, comma);
    },
};
