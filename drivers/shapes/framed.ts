import { agreeing, type CheckSum, checkSums } from "../check-byte.ts";
import { digitsPattern, signPattern } from "../number.ts";
import { lineEvent } from "../reading.ts";
import { unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   ␂ "+0311034g" ␃ "x"     start, sign, digits with the point left out, unit, end, check byte
const frame = /^ *\x02([^\x02\x03]*)\x03([\s\S]*)$/;
const inside = new RegExp(`^ *(${signPattern}?) *(${digitsPattern}) *(${unitPattern})? *$`);

/**
 * The check must follow a sum that also fits every earlier frame. Digits without a point are no weight until the
 * decimals of the display are known.
 */
export const framed: Shape = {
  id: "framed",
  reader({ comma, impliedDecimals }) {
    let sums: readonly CheckSum[] = checkSums;
    return (text) => {
      const [, payload, check = ""] = frame.exec(text) ?? [];
      if (payload === undefined) return null;
      if (check !== "") {
        const fitting = agreeing(sums, payload, check);
        if (fitting.length === 0) return lineEvent("line.damaged.check", { line: payload });
        sums = fitting;
      } else if (sums !== checkSums) return lineEvent("line.damaged.check", { line: payload });
      const [, sign, digits, unit = ""] = inside.exec(payload) ?? [];
      if (sign === undefined || digits === undefined) return null;
      if (/[.,]/.test(digits)) return weight({ sign, digits, unit, stability: "unknown" }, comma);
      if (impliedDecimals === undefined) return lineEvent("line.unclear.point", { line: payload });
      return weight({ sign, digits: withPoint(digits, impliedDecimals), unit, stability: "unknown" }, comma);
    };
  },
};

function withPoint(digits: string, decimals: number): string {
  const padded = digits.padStart(decimals + 1, "0");
  return decimals === 0 ? padded : `${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`;
}
