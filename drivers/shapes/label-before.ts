import { labelMeaning, labelPattern } from "../labels.ts";
import { digitsPattern, signPattern } from "../number.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "N      31.103 g "     "gross: 131.10 g"     "T     100.00 g"  (the tare is not the weight of the piece)
const line = new RegExp(
  `^ *(${labelPattern})(?:[ :]+|(?=${signPattern}))(${signPattern}?) *(${digitsPattern}) *(${unitPattern})? *$`,
);

export const labelBefore: Shape = {
  id: "label-before",
  says: "net, gross or tare, then the number and the unit",
  reader:
    ({ comma }) =>
    (text) => {
      const [, word, sign = "", digits, unit = ""] = line.exec(text) ?? [];
      if (word === undefined || digits === undefined) return null;
      const label = labelMeaning(word);
      if (label === "tare")
        return {
          event: {
            kind: "housekeeping",
            says: `The balance says its tare: ${sign}${digits} ${unit}. It is not a weight of the piece.`,
          },
        };
      return weight({ sign, digits, unit, steady: "not-told", label }, comma);
    },
};
