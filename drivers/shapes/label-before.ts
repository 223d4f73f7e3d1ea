import { labelMeaning, labelPattern } from "../labels.ts";
import { digitsPattern, signPattern } from "../number.ts";
import { lineEvent } from "../reading.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "N      31.103 g "     "gross: 131.10 g"     "T     100.00 g"  (the tare is not the weight of the piece)
const line = new RegExp(
  `^ *(${labelPattern})(?:[ :]+|(?=${signPattern}))(${signPattern}?) *(${digitsPattern}) *(${unitPattern})? *$`,
);

export const labelBefore: Shape = {
  id: "label-before",
  reader:
    ({ comma }) =>
    (text) => {
      const [, word, sign = "", digits, unit = ""] = line.exec(text) ?? [];
      if (word === undefined || digits === undefined) return null;
      const label = labelMeaning(word);
      if (label === undefined) return null;
      if (label === "tare") return lineEvent("line.housekeeping.tare", { tare: `${sign}${digits}`, unit });
      return weight({ sign, digits, unit, stability: "unknown", label }, comma);
    },
};
