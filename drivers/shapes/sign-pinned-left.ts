import { digitsPattern, signPattern } from "../number.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "+   31.1035 g  "     "-     1.611 g "     The sign keeps the first column, the number is pushed to the right.
const line = new RegExp(`^ ?(${signPattern}) +(${digitsPattern}) *(${unitPattern})? *$`);

export const signPinnedLeft: Shape = {
  id: "sign-pinned-left",
  reader:
    ({ comma }) =>
    (text) => {
      const [, sign, digits, unit] = line.exec(text) ?? [];
      if (sign === undefined || digits === undefined) return null;
      return weight({ sign, digits, unit: unit ?? "", stability: "unknown" }, comma);
    },
};
