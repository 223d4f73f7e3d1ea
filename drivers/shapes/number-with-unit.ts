import { digitsPattern, signPattern } from "../number.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "     31.1035 g"     "  -0.42g  "     "     31.1035  "  (no unit: not a weight)
const line = new RegExp(`^ *(${signPattern}?)(${digitsPattern}) *(${unitPattern})? *$`);

export const numberWithUnit: Shape = {
  id: "number-with-unit",
  reader:
    ({ comma }) =>
    (text) => {
      const [, sign, digits, unit] = line.exec(text) ?? [];
      if (sign === undefined || digits === undefined) return null;
      return weight({ sign, digits, unit: unit ?? "", stability: "unknown" }, comma);
    },
};
