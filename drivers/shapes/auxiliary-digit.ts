import { digitsPattern, signPattern } from "../number.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "+   31.10[3] g"     "   31.10(3) g"     The last digit is set apart: finer than the verified interval, still read.
const line = new RegExp(
  `^ *(${signPattern}?) *(${digitsPattern})(?:\\[(\\d)\\]|\\((\\d)\\)) *(${unitPattern})? *$`,
);

export const auxiliaryDigit: Shape = {
  id: "auxiliary-digit",
  reader:
    ({ comma }) =>
    (text) => {
      const [, sign, digits, square, round, unit = ""] = line.exec(text) ?? [];
      const last = square ?? round;
      if (sign === undefined || digits === undefined || last === undefined) return null;
      return weight({ sign, digits: digits + last, unit, stability: "unknown" }, comma);
    },
};
